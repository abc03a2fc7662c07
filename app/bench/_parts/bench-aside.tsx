"use client";

import Link from "next/link";
import type { ReactNode } from "react";
import { Sign } from "@/app/_ui/sign";
import { closeAddress } from "@/lib/edge/bench-address";
import { offInWords } from "@/lib/edge/bench-weights";
import { ALWAYS_CARE } from "@/lib/edge/bench-words";
import { countShown } from "@/lib/edge/figures";
import type { BenchAtHand, LineAtHand } from "./line-at-hand";
import type { BenchOnPage } from "./bench-view";
import { weightId } from "./weigh-line";

/** What can hurt whoever weighs, before anything else. */
export const TakeCare = ({ cautions }: { readonly cautions: readonly string[] }): ReactNode => (
  <section className="take-care" aria-labelledby="take-care">
    <h2 id="take-care">
      <Sign sign="triangle" tone="wrong">
        Take care
      </Sign>
    </h2>
    {cautions.map((caution) => (
      <p key={caution}>{caution}</p>
    ))}
    <p className={cautions.length > 0 ? "small" : ""}>{ALWAYS_CARE}</p>
  </section>
);

/** What was weighed outside its tolerance and kept, with the way to weigh it again. */
export function OutsideTolerance({
  hand,
  view,
}: {
  readonly hand: BenchAtHand;
  readonly view: BenchOnPage;
}): ReactNode {
  const out = hand.lines.filter(({ isOut }) => isOut);
  if (out.length === 0) return null;
  return (
    <section className="outside" aria-labelledby="outside">
      <h2 id="outside">Outside tolerance</h2>
      {out.map((line) => (
        <OneOutside key={line.line.key} line={line} decimals={view.decimals} />
      ))}
    </section>
  );
}

function OneOutside({
  line: { line, off, all },
  decimals,
}: {
  readonly line: LineAtHand;
  readonly decimals: number;
}): ReactNode {
  const last = all.at(-1);
  return (
    <>
      <p>
        <Sign sign="triangle" tone="wrong">
          {line.called}
        </Sign>{" "}
        {offInWords(off, line.tolerance, decimals)}.{last?.why != null && ` Kept: ${last.why}.`}
      </p>
      {last !== undefined && (
        <a
          className="button"
          href={`#${weightId(last.key)}`}
          onClick={(event) => {
            event.preventDefault();
            openWeight(last.key);
          }}
        >
          Weigh {line.called} again
        </a>
      )}
    </>
  );
}

/** A weight is weighed again by striking the one that stands. */
function openWeight(key: string): void {
  const weight = document.getElementById(weightId(key));
  if (!(weight instanceof HTMLDetailsElement)) return;
  weight.open = true;
  weight.querySelector<HTMLElement>("[name=why]")?.focus();
}

/** What is expected to come out, and the way to close, with what is still to do before it. */
export function Closing({ hand, view }: { readonly hand: BenchAtHand; readonly view: BenchOnPage }): ReactNode {
  const toGo = toGoWords(hand);
  return (
    <section className="bench-closing" aria-labelledby="bench-closing">
      <h2 id="bench-closing" className="unseen">
        Closing
      </h2>
      <p className="bench-expected">
        <span>Expected yield</span> <span>{view.expected}</span>
      </p>
      <Link
        className={toGo === null ? "button first" : "button to-go"}
        href={closeAddress(view.batch)}
        prefetch={false}
      >
        Close the batch
      </Link>
      {toGo !== null && <p className="small soft">{toGo} to go</p>}
    </section>
  );
}

/** `6 weights and 3 checks`; null where nothing is left. */
export function toGoWords({ lines, checks }: BenchAtHand): string | null {
  const weights = lines.filter(({ isDone }) => !isDone).length;
  const open = checks.filter(({ isAnswered }) => !isAnswered).length;
  const words = [
    ...(weights > 0 ? [`${countShown(weights)} ${weights === 1 ? "weight" : "weights"}`] : []),
    ...(open > 0 ? [`${countShown(open)} ${open === 1 ? "check" : "checks"}`] : []),
  ];
  return words.length === 0 ? null : words.join(" and ");
}
