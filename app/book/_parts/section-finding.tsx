import type { ReactNode } from "react";
import { type Mark, marksCounted } from "@/lib/edge/record-marks";
import { counted, inWordsFirst } from "@/lib/edge/counted";
import { SECTION_WORDS, type Section } from "./sections";

/** How many there are, or what to do first. */
export function SectionFinding({
  section,
  all,
  retired,
  marks,
}: {
  readonly section: Section;
  readonly marks: readonly Mark[];
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
      {retired > 0 && <>, of which {counted(retired, "is", "are")} retired</>}
      {marks.length > 0 && <>: {marksCounted(marks)}</>}.
    </>
  );
}
