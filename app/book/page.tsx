import type { Metadata } from "next";
import Link from "next/link";
import type { ReactNode } from "react";
import { RETIRABLE } from "@/lib/domain/desk";
import { dayShown } from "@/lib/edge/figures";
import { Opening } from "@/app/_ui/finding";
import { type Query, textIn } from "./_parts/addresses";
import { BookFinding } from "./_parts/book-finding";
import { Contents } from "./_parts/contents";
import { SECTIONS } from "./_parts/sections";
import { booksForPage } from "./books-for-page";

export const metadata: Metadata = { title: "The Book" };

/** The workshop's book: what it holds, section by section, and what the workshop is set to. */
export default async function BookPage({
  searchParams,
}: {
  readonly searchParams: Promise<Query>;
}): Promise<ReactNode> {
  const [{ books, today }, query] = await Promise.all([booksForPage(), searchParams]);
  const { workshop, desk } = books;
  const retired = Object.fromEntries(RETIRABLE.map((list) => [list, desk.retired[list].length]));
  const isEmpty = SECTIONS.every((section) => workshop[section].length === 0) && desk.drafts.length === 0;
  const set = workshop.settings.today;
  return (
    <>
      <Opening
        title="The Book"
        beside={
          isEmpty ? (
            <Link className="button first" href="/book/first">
              Write down the first product
            </Link>
          ) : undefined
        }
      >
        <BookFinding books={books} isEmpty={isEmpty} />
      </Opening>
      {textIn(query, "kept") === "rates" && (
        <p className="done" role="status">
          Rates and calendar are kept.
        </p>
      )}
      <Contents
        counts={Object.fromEntries(SECTIONS.map((section) => [section, workshop[section].length]))}
        retired={retired}
        drafts={desk.drafts.length}
      />
      <section className="matters" id="date" aria-labelledby="the-date">
        <h2 id="the-date">
          The date <small>that everything is planned from</small>
        </h2>
        <div className="also">
          {set === null ? (
            <p>
              It is the real one, {dayShown(today, today, { year: true })}.{" "}
              <Link href="/book/rates#field-today">Set another</Link> to see how things would stand on that day.
            </p>
          ) : (
            <p>
              It is set to <b>{dayShown(set, set, { year: true })}</b>, and stays so until you go back to the real one
              above, or <Link href="/book/rates#field-today">set another</Link>. It goes into a saved file.
            </p>
          )}
        </div>
      </section>
    </>
  );
}
