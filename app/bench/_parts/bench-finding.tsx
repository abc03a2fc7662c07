"use client";

import type { ReactNode } from "react";
import { midSentence } from "@/app/_ui/sentence";
import { weightShown } from "@/lib/edge/bench-weights";
import { inWordsFirst } from "@/lib/edge/counted";
import { countShown } from "@/lib/edge/figures";
import { NO_BREAK } from "@/lib/edge/shown-digits";
import { toGoWords } from "./bench-aside";
import type { PhaseOnPage } from "./bench-view";
import type { BenchAtHand, LineAtHand } from "./line-at-hand";

/** What comes next and what is outside its tolerance, as this device knows it: what waits here counts. */
export function BenchFinding({ hand, decimals }: { readonly hand: BenchAtHand; readonly decimals: number }): ReactNode {
  const outside = outsideWords(hand.lines.filter(({ isOut }) => isOut));
  const { open } = hand;
  if (open === null) {
    const toGo = toGoWords(hand);
    return (
      <>
        <b>Every line is weighed.</b>
        {outside} {toGo === null ? "Close the batch when it is done." : `${toGo} to go, then close the batch.`}
      </>
    );
  }
  return (
    <>
      Next: {open.line.of.kind === "formula" && "pour in "}
      <b>
        {weightShown(restOf(open), decimals)}
        {NO_BREAK}
        {open.line.called}
      </b>
      {intoWords(open.section)}.{outside}
    </>
  );
}

const intoWords = ({ phase, title, isMain }: PhaseOnPage): string => {
  if (!isMain) return `, for ${title}`;
  return phase === null ? "" : `, into ${midSentence(title)}`;
};

/** What is still to go on the balance of a line. */
export const restOf = ({ line, total }: LineAtHand): bigint => (line.target > total ? line.target - total : 0n);

function outsideWords(out: readonly LineAtHand[]): string {
  const [only] = out;
  if (only === undefined) return "";
  if (out.length === 1) return ` ${only.line.called} is outside its tolerance.`;
  return ` ${inWordsFirst(out.length)} weights so far are outside their tolerance.`;
}

/** One piece for each line: done, at hand, to come. */
export function Progress({ hand }: { readonly hand: BenchAtHand }): ReactNode {
  const done = hand.lines.filter(({ isDone }) => isDone).length;
  return (
    <div className="bench-progress screen-only">
      <div aria-hidden="true">
        {hand.lines.map(({ line, isDone }) => (
          <span key={line.key} className={isDone ? "is-done" : line.key === hand.open?.line.key ? "at-hand" : ""} />
        ))}
      </div>
      <p className="small soft">
        {countShown(done)} of {countShown(hand.lines.length)} weighed
      </p>
    </div>
  );
}
