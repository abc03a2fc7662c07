"use client";

import { type ReactNode, useState } from "react";
import { heatOf } from "@/lib/edge/bench-words";
import { NO_BREAK } from "@/lib/edge/shown-digits";
import { isLetter } from "./bench-view";
import type { BenchAtHand, LineAtHand } from "./line-at-hand";
import { Steps } from "./timers";
import { WeighForm } from "./weigh-form";
import { LineRow, type OnDesk, WeighLine, WeightsOf } from "./weigh-line";

type Section = BenchAtHand["sections"][number];

/** Every line of the sheet by its phases; the one that is weighed now stands open in its place. */
export function PhaseLedger({ hand, ...desk }: { readonly hand: BenchAtHand } & OnDesk): ReactNode {
  // The form that the page opens with: what is written down opens another.
  const [first] = useState(hand.open === null ? "" : formKey(hand.open));
  const isLettered = hand.sections.some(({ phase }) => isLetter(phase));
  return (
    <div className={isLettered ? "phases lettered" : "phases"}>
      {hand.sections.map((section) => (
        <Phase key={section.key} section={section} open={hand.open} first={first} {...desk} />
      ))}
      {desk.view.steps.length > 0 && (
        <section className="phase" aria-labelledby="bench-steps">
          <div className="phase-head">
            <h2 id="bench-steps">Steps of the whole</h2>
          </div>
          <div className="phase-lines">
            <Steps batch={desk.view.batch} steps={desk.view.steps} />
          </div>
        </section>
      )}
    </div>
  );
}

/** A form for each weight of each line. */
const formKey = ({ line, all }: LineAtHand): string => `${line.key} ${String(all.length)}`;

function Phase({
  section,
  open,
  first,
  view,
  notes,
}: { readonly section: Section; readonly open: BenchAtHand["open"]; readonly first: string } & OnDesk): ReactNode {
  const { key, phase, title, steps, lines } = section;
  const [only] = steps;
  const heat = steps.length === 1 && only !== undefined ? heatOf(only) : null;
  return (
    <section className="phase" aria-labelledby={`phase-${key}`}>
      {isLetter(phase) && (
        <span className="phase-letter" aria-hidden="true">
          {phase}
        </span>
      )}
      <div className="phase-head">
        <h2 id={`phase-${key}`}>{title}</h2>
        <span>{heat ?? (section.celsius !== null && `goes in at ${section.celsius}${NO_BREAK}°C`)}</span>
      </div>
      <div className="phase-lines">
        <Steps batch={view.batch} steps={steps} isHeatAbove={heat !== null} />
        <ol>
          {lines.map((line) =>
            line.line.key === open?.line.key ? (
              <li key={line.line.key} aria-current="step" className="weigh-open">
                <WeighForm
                  key={formKey(line)}
                  line={line}
                  view={view}
                  notes={notes}
                  isFirst={formKey(line) === first}
                />
                <div className="only-printed">
                  <LineRow line={line} decimals={view.decimals} />
                </div>
                <div className="weigh-written">
                  <WeightsOf line={line} view={view} notes={notes} />
                </div>
              </li>
            ) : (
              <WeighLine key={line.line.key} line={line} view={view} notes={notes} />
            ),
          )}
        </ol>
      </div>
    </section>
  );
}
