import Link from "next/link";
import type { ReactNode } from "react";
import { comparePath, newPath, sectionPath } from "./addresses";
import { SECTION_WORDS, type Section } from "./sections";

export interface AskedOfList {
  readonly find: string;
  readonly retired: boolean;
}

/** What can be begun from a list. */
export const AddButtons = ({ section }: { readonly section: Section }): ReactNode => (
  <p className="in-a-row">
    <Link className="button first" href={newPath(section)}>
      {SECTION_WORDS[section].add}
    </Link>
    {section === "formulas" && (
      <Link className="button" href={comparePath()}>
        Compare two
      </Link>
    )}
    {section === "products" && (
      <Link className="button" href="/book/first">
        A product in one go
      </Link>
    )}
  </p>
);

/** Finds in the list by a word, and shows what is retired. It asks by address, so that it needs no script. */
export function RecordTools({
  section,
  asked,
  retired,
}: {
  readonly section: Section;
  readonly asked: AskedOfList;
  readonly retired: number;
}): ReactNode {
  const { many } = SECTION_WORDS[section];
  const find = asked.find === "" ? {} : { find: asked.find };
  return (
    <div className="book-tools">
      <form action={sectionPath(section)} method="get" role="search">
        {asked.retired && <input type="hidden" name="retired" value="shown" />}
        <div className="field">
          <label htmlFor="book-find">Find among the {many}</label>
          <input id="book-find" type="search" name="find" defaultValue={asked.find} autoComplete="off" />
        </div>
        <button className="button">Show</button>
      </form>
      {retired > 0 && (
        <Link className="more" href={sectionPath(section, asked.retired ? find : { ...find, retired: "shown" })}>
          {asked.retired ? "Hide what is retired" : "Show what is retired too"}
        </Link>
      )}
    </div>
  );
}
