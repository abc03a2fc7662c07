import { Fragment, type ReactNode } from "react";
import { weightShown } from "@/lib/edge/bench-weights";
import { heatOf } from "@/lib/edge/bench-words";
import { NO_BREAK } from "@/lib/edge/shown-digits";
import type { PaperLine, PaperPhase } from "../paper-sheet";

interface Paper {
  readonly decimals: number;
}

/** One table for each phase: what to weigh, room to write it and its lot, a box to tick, and what the phase comes to. */
export const PaperPhases = ({ phases, decimals }: { readonly phases: readonly PaperPhase[] } & Paper): ReactNode =>
  phases.map((phase) => (
    <table key={phase.key} className="paper">
      <caption>
        <b>{phase.steps.length === 0 ? phase.title : `${phase.title}.`}</b>{" "}
        {phase.steps.map((step) => (
          <span key={step.at}>{[step.text.replace(/\.$/, ""), heatOf(step)].filter(Boolean).join(", ")}. </span>
        ))}
      </caption>
      <thead>
        <tr>
          {HEADS.map(([head, kind]) => (
            <th key={head} className={kind} scope="col">
              {head}
            </th>
          ))}
        </tr>
      </thead>
      <tbody>
        {phase.lines.map((line) => (
          <PaperRow key={line.line.key} line={line} decimals={decimals} />
        ))}
      </tbody>
      <tfoot>
        <tr>
          <th scope="row">{phase.phase === null ? "Together" : phase.title}</th>
          <td className="number">{phase.percent}</td>
          <td className="number paper-target">{weightShown(phase.target, decimals)}</td>
          <td colSpan={4} className="paper-reached">
            {phase.isHeated && <Reached celsius={phase.reached} />}
          </td>
        </tr>
      </tfoot>
    </table>
  ));

const HEADS = [
  ["Material", ""],
  ["Formula", "number"],
  ["Weigh", "number"],
  ["Allow", "number"],
  ["Weighed, g", "paper-written"],
  ["Lot", "paper-written"],
  ["Done", "paper-done"],
] as const;

function PaperRow({
  line: { line, percent, inci, planned, weights, state },
  decimals,
}: { readonly line: PaperLine } & Paper): ReactNode {
  const weighed = weights.reduce((sum, { net }) => sum + net, 0n);
  const isBegun = state !== "done" && weights.length > 0;
  return (
    <tr>
      <th scope="row">
        {line.called}
        {inci !== "" && <small>{inci}</small>}
      </th>
      <td className="number">{percent}</td>
      <td className="number paper-target">{weightShown(line.target, decimals)}</td>
      <td className="number paper-allow">±{weightShown(line.tolerance, decimals)}</td>
      <td className="paper-written">
        {weights.map(({ key, net }) => (
          <span key={key}>{weightShown(net, decimals)}</span>
        ))}
        {isBegun && weighed < line.target && <small>{weightShown(line.target - weighed, decimals)} to go</small>}
      </td>
      <td className="paper-written">
        {weights.length === 0 && planned.length > 0 && <small>{planned.join(", ")}</small>}
        {weights.map(({ key, lot }) => (
          <span key={key}>{lot ?? "made here"}</span>
        ))}
      </td>
      <td className="paper-done">
        <span className="paper-box">
          {state === "done" && (
            <svg viewBox="0 0 15 15" role="img" aria-label="done">
              <path d="M2 8l4 4.5L13 3" />
            </svg>
          )}
        </span>
      </td>
    </tr>
  );
}

/** Filled in where it was written down. */
const Reached = ({ celsius }: { readonly celsius: string | null }): ReactNode =>
  celsius === null ? (
    <Fragment>
      Reached <u className="paper-blank" />
      {NO_BREAK}°C at <u className="paper-blank" />
    </Fragment>
  ) : (
    <Fragment>
      Reached {celsius}
      {NO_BREAK}°C
    </Fragment>
  );
