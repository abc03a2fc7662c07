import type { ReactNode } from "react";
import { counted, inWordsFirst } from "@/lib/edge/counted";
import { SECTION_WORDS, type Section } from "./sections";

/** How many there are, or what to do first. */
export function SectionFinding({
  section,
  all,
  retired,
}: {
  readonly section: Section;
  readonly all: number;
  readonly retired: number;
}): ReactNode {
  const { one, many, empty } = SECTION_WORDS[section];
  if (all === 0) return empty;
  return (
    <>
      <b>
        {inWordsFirst(all)} {all === 1 ? one : many}
      </b>
      {retired > 0 && <>, of which {counted(retired, "is", "are")} retired</>}.
    </>
  );
}
