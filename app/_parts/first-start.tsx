import Link from "next/link";
import type { ReactNode } from "react";
import { Opening } from "@/app/_ui/finding";
import { OpenDemoForm } from "./open-demo-form";
import { OpenEmptyForm } from "./open-empty-form";
import { OpenFileForm } from "./open-file-form";

/** Before any workshop is open, or in the place of one: three ways to begin. */
export function FirstStart({ inPlaceOf }: { readonly inPlaceOf: string | null }): ReactNode {
  const over = inPlaceOf === null ? "nothing" : "open";
  return (
    <>
      <Opening title="Begin">
        {inPlaceOf === null ? "No workshop is open yet." : <InPlaceOf name={inPlaceOf} />} Look round an invented one,
        open the file of your own, or begin with an empty one. All of it stays on this computer.
      </Opening>
      <div className="ways">
        <section className="way" aria-labelledby="way-demo">
          <h2 id="way-demo">Look round</h2>
          <p>
            A demo workshop for conditioners, creams and balms. Its makers, suppliers, products and prices are invented.
            It shows costs, runs that can and cannot be made, lots going out of date and orders that are late.
          </p>
          <OpenDemoForm over={over} />
        </section>
        <section className="way" aria-labelledby="way-file">
          <h2 id="way-file">Open a workshop file</h2>
          <p>
            A file that was saved here or written by hand. If anything in it is wrong, every fault is listed with its
            place and what would be right, and nothing is changed.
          </p>
          <OpenFileForm over={over} />
        </section>
        <section className="way" aria-labelledby="way-empty">
          <h2 id="way-empty">Begin your own</h2>
          <p>A name and a currency. The first product is written down in one form, and you see what a jar costs.</p>
          <OpenEmptyForm over={over} />
        </section>
      </div>
    </>
  );
}

const InPlaceOf = ({ name }: { readonly name: string }): ReactNode => (
  <>
    {name} is open. What you begin takes its place at once, and a copy of it is kept in a file beside the store.{" "}
    <Link href="/">Go back to {name}</Link>, or go on.
  </>
);
