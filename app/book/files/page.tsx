import type { Metadata } from "next";
import Link from "next/link";
import type { ReactNode } from "react";
import { Opening } from "@/app/_ui/finding";
import { Crumb } from "@/app/book/_parts/crumb";
import { OpenFile } from "@/app/book/_parts/open-file";
import { holdingsOf } from "@/app/book/_parts/opening-answer";
import { counted, inARow } from "@/lib/edge/counted";
import { booksForPage } from "../books-for-page";

export const metadata: Metadata = { title: "Files" };

/** The workshop as a file: saved, or replaced by another after a look at what is in it. */
export default async function FilesPage(): Promise<ReactNode> {
  const { books } = await booksForPage();
  const { name } = books.workshop.settings;
  const held = inARow(
    holdingsOf(books.workshop)
      .filter(({ count }) => count > 0)
      .slice(0, 5)
      .map(({ name: many, one, count }) => counted(count, one, many.toLowerCase())),
  );
  return (
    <>
      <Opening crumb={<Crumb />} title="Files">
        {held === "" ? `${name} holds nothing yet.` : `${name} holds ${held}.`} A file takes all that planning needs,
        and can be read, written by hand and opened again, here or elsewhere.
      </Opening>
      <section className="matters" aria-labelledby="save">
        <h2 id="save">
          Save <small>{name}</small>
        </h2>
        <div className="also">
          <p>
            Drafts of formulas, what is retired, your bench hours, how often you count, how batches are called and how
            figures are written stay in the app: a file does not hold them. All that the shelf has been through goes
            with it.
          </p>
          <a className="button first" href="/workshop-file" download>
            Save it as a file
          </a>
        </div>
      </section>
      <section className="matters" aria-labelledby="open">
        <h2 id="open">
          Open <small>another workshop</small>
        </h2>
        <div className="also">
          <p>You see what is in the file, and what it replaces, before anything changes.</p>
          <OpenFile name={name} holds={holdingsOf(books.workshop)} />
        </div>
      </section>
      <section className="matters" aria-labelledby="afresh">
        <h2 id="afresh">
          Start another workshop <small>in the place of {name}</small>
        </h2>
        <div className="also">
          <p>
            With an empty workshop, or with the invented one that comes with the app. A copy of the present workshop is
            kept in a file beside the store.
          </p>
          <Link className="button" href="/?begin=afresh">
            Start another workshop
          </Link>
        </div>
      </section>
    </>
  );
}
