import Link from "next/link";
import type { ReactNode } from "react";
import { sectionPath } from "./addresses";
import { SECTION_WORDS, type Section } from "./sections";

/** Where one is in the book, as the way back. */
export const Crumb = ({ section }: { readonly section?: Section }): ReactNode => (
  <>
    <Link href="/book">The Book</Link>
    {section !== undefined && (
      <>
        {" · "}
        <Link href={sectionPath(section)}>{SECTION_WORDS[section].title}</Link>
      </>
    )}
  </>
);
