"use client";

import type { ReactNode } from "react";
import type { NoteOf } from "@/lib/domain/bench/batch";
import { isWithinTolerance } from "@/lib/domain/bench/weights";
import { offShown, weightShown } from "@/lib/edge/bench-weights";
import type { LineAtHand } from "./line-at-hand";
import type { BenchOnPage } from "./bench-view";
import { Plumb } from "./plumb";
import { SmallForm } from "./small-form";
import type { Notes } from "./use-notes";

export interface OnDesk {
  readonly view: BenchOnPage;
  readonly notes: Notes;
}

/** One line of the sheet: what, how much, how it hangs, what was weighed and from which lot. */
export const WeighLine = ({ line, ...desk }: { readonly line: LineAtHand } & OnDesk): ReactNode => (
  <li>
    <LineRow line={line} decimals={desk.view.decimals}>
      <WeightsOf line={line} {...desk} />
    </LineRow>
  </li>
);

/** The same as a row, with what stands under its name. */
export function LineRow({
  line,
  decimals,
  children,
}: {
  readonly line: LineAtHand;
  readonly decimals: number;
  readonly children?: ReactNode;
}): ReactNode {
  const { all, line: asked, total, off, isDone } = line;
  return (
    <div className={isDone ? "weigh-line" : "weigh-line to-come"}>
      <div className="weigh-line-name">
        <b>{asked.called}</b>
        {!(isDone && all.length === 1) && (
          <small>{[line.percent, plannedWords(line)].filter(Boolean).join(" · ")}</small>
        )}
        {children}
      </div>
      <span className="weigh-line-target">{weightShown(asked.target, decimals)}</span>
      {!isDone ? (
        <>
          <small className="weigh-line-plumb">±{weightShown(asked.tolerance, decimals)}</small>
          <span className="weigh-line-actual">
            {all.length === 0 || total >= asked.target
              ? "to weigh"
              : `${weightShown(asked.target - total, decimals)} to weigh`}
          </span>
        </>
      ) : (
        <>
          <span className="weigh-line-plumb">
            <Plumb off={off} tolerance={asked.tolerance} />
          </span>
          <span className="weigh-line-actual">
            <b>{weightShown(total, decimals)}</b>
            <Off off={off} tolerance={asked.tolerance} decimals={decimals} />
          </span>
        </>
      )}
    </div>
  );
}

const Off = ({
  off,
  tolerance,
  decimals,
}: {
  readonly off: bigint;
  readonly tolerance: bigint;
  readonly decimals: number;
}): ReactNode =>
  isWithinTolerance(off, tolerance) ? (
    <small>
      {offShown(off, decimals)}
      <span className="unseen">, within tolerance</span>
    </small>
  ) : (
    <small className="warn">
      {offShown(off, decimals)}, limit {weightShown(tolerance, decimals)}
    </small>
  );

const plannedWords = ({ all, planned }: LineAtHand): string | null => {
  if (all.length > 0 || planned.length === 0) return null;
  return `planned ${planned.length === 1 ? "lot" : "lots"} ${planned.join(", ")}`;
};

/** Each weight that stands of a line; one that was wrong is struck, and stays in the record. */
export const WeightsOf = ({ line, view, notes }: { readonly line: LineAtHand } & OnDesk): ReactNode =>
  line.all.map((weight) => (
    <details key={weight.key} id={weightId(weight.key)} className="bench-weight opens">
      <summary>
        {weightWords(weight, line, view.decimals)}
        {notes.notes.some((queued) => queued.key === weight.key && !queued.isSent) && " (waits to be sent)"}
      </summary>
      <SmallForm
        view={view}
        notes={notes}
        carried={{ kind: "struck", strikes: weight.key }}
        fields={[{ name: "why", label: "Why it is struck" }]}
        button="Strike this weight"
      />
    </details>
  ));

export const weightId = (key: string): string => `weight-${key}`;

/** The only weight of a line that is done is the line's own figure. */
function weightWords(
  { net, lot, who, why }: NoteOf<"weighed">,
  { all, isDone, percent }: LineAtHand,
  decimals: number,
): string {
  const first = all.length === 1 && isDone ? percent : weightShown(net, decimals);
  const from = lot === null ? "made here" : `lot ${lot}`;
  const said = `${from}, ${who}${why === null ? "" : `: ${why}`}`;
  if (first === null) return said;
  return all.length === 1 && isDone ? `${first} · ${said}` : `${first}, ${said}`;
}
