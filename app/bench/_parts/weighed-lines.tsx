"use client";

import type { ReactNode } from "react";
import type { NoteOf } from "@/lib/domain/bench/batch";
import { gramsShown } from "@/lib/edge/figures";
import type { LineAtHand } from "./line-at-hand";
import type { BenchOnPage } from "./bench-view";
import { SmallForm } from "./small-form";
import type { Notes } from "./use-notes";

interface Lines {
  readonly lines: readonly LineAtHand[];
  readonly open: string | null;
  readonly view: BenchOnPage;
  readonly notes: Notes;
}

/** Every line of the sheet with what stands of it; a weight that was wrong is struck, and stays in the record. */
export function WeighedLines({ lines, open, view, notes }: Lines): ReactNode {
  const grams = (amount: bigint): string => gramsShown(amount, view.decimals);
  return (
    <section className="bench-lines" aria-labelledby="bench-lines">
      <h2 id="bench-lines">The sheet</h2>
      <ol>
        {lines.map(({ line, premix, all, total, isDone }) => (
          <li
            key={line.key}
            aria-current={line.key === open ? "step" : undefined}
            className={isDone ? "done-line" : ""}
          >
            <div className="bench-line">
              <span>
                <b>{line.called}</b>
                {line.phase !== null && ` · ${line.phase}`}
                {premix !== null && ` · ${premix}`}
              </span>
              <span>
                {all.length === 0 ? "to weigh" : grams(total)} <small>of {grams(line.target)}</small>
              </span>
            </div>
            {all.map((weight) => (
              <Weight key={weight.key} weight={weight} grams={grams} view={view} notes={notes} />
            ))}
          </li>
        ))}
      </ol>
    </section>
  );
}

function Weight({
  weight: { key, net, lot, who, why },
  grams,
  view,
  notes,
}: {
  readonly weight: NoteOf<"weighed">;
  readonly grams: (amount: bigint) => string;
  readonly view: BenchOnPage;
  readonly notes: Notes;
}): ReactNode {
  const waits = notes.notes.some((queued) => queued.key === key && !queued.isSent);
  return (
    <details className="bench-weight">
      <summary>
        {grams(net)}
        {lot !== null && `, lot ${lot}`}, {who}
        {why !== null && `: ${why}`}
        {waits && " (waits to be sent)"}
      </summary>
      <SmallForm
        view={view}
        notes={notes}
        carried={{ kind: "struck", strikes: key }}
        fields={[{ name: "why", label: "Why it is struck" }]}
        button="Strike this weight"
      />
    </details>
  );
}
