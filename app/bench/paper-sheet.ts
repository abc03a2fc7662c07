import "server-only";
import type { SheetLine } from "@/lib/domain/bench/batch";
import { formulaAsStarted, formulaCalled } from "@/lib/domain/bench/started-as";
import { type LineWeighed, linesWeighed } from "@/lib/domain/bench/weights";
import { percentShown } from "@/lib/edge/figures";
import { type PartsPerMillion, quantity } from "@/lib/domain/quantity";
import { standing } from "@/lib/domain/bench/batch";
import type { BatchOnPage } from "./batch-for-page";
import { phaseTitle, stepsOf } from "./bench-on-page";
import type { StepOnPage } from "./_parts/bench-view";
import { inPhases, percentsOf, plannedLots } from "./sheet-lines";

export interface PaperLine extends LineWeighed {
  /** Of its formula, or null where that is not known any more. */
  readonly percent: string | null;
  /** What goes on a label, where somebody has said it. */
  readonly inci: string;
  readonly planned: readonly string[];
}

export interface PaperPhase {
  readonly key: string;
  readonly phase: string | null;
  readonly title: string;
  readonly steps: readonly StepOnPage[];
  readonly lines: readonly PaperLine[];
  /** What is weighed of it, µg. */
  readonly target: bigint;
  readonly percent: string | null;
  /** °C that it is brought to; null where nobody has said. */
  readonly celsius: string | null;
  /** °C that was last written down of it. */
  readonly reached: string | null;
}

/** The sheet by its phases, with what stands on it already. */
export function paperPhases(found: BatchOnPage): readonly PaperPhase[] {
  const { batch, workshop, today } = found;
  const formula = formulaAsStarted(found, batch);
  const percents = percentsOf(found, batch);
  const weighed = linesWeighed(batch);
  const planned = plannedLots(workshop, weighed.map(toDraw), today);
  const temperatures = standing(batch, "temperature");
  return inPhases(weighed).map((lines) => {
    const { key, part, phase } = lines[0].line;
    const isMain = part === formula.id;
    const steps = isMain && phase !== null ? stepsOf(formula, (of) => of === phase) : [];
    const each = lines.map(({ line }) => percents.get(line.key));
    return {
      key,
      phase,
      title: phaseTitle(phase, formulaCalled(batch, workshop, part), isMain),
      steps,
      lines: lines.map((line) => ({
        ...line,
        percent: shown(percents.get(line.line.key)),
        inci: inciOf(line.line, found),
        planned: planned.get(line.line.key) ?? [],
      })),
      target: lines.reduce((sum, { line }) => sum + line.target, 0n),
      percent: each.includes(undefined)
        ? null
        : shown(quantity<PartsPerMillion>(each.reduce<bigint>((sum, percent) => sum + (percent ?? 0n), 0n))),
      celsius:
        steps.find(({ celsius }) => celsius !== null)?.celsius ??
        (isMain ? (formula.phases.find(({ name }) => name === phase)?.temperature ?? null) : null),
      reached: phase === null ? null : (temperatures.findLast((note) => note.phase === phase)?.celsius ?? null),
    };
  });
}

const shown = (percent: PartsPerMillion | undefined): string | null =>
  percent === undefined ? null : percentShown(percent);

const toDraw = ({ line: { key, of, target }, total, state }: LineWeighed) => ({
  key,
  material: of.kind === "material" ? of.id : null,
  rest: state === "done" ? 0n : target - total,
});

const inciOf = ({ of }: SheetLine, { workshop }: BatchOnPage): string =>
  (workshop.materials.find(({ id }) => of.kind === "material" && id === of.id)?.composition ?? [])
    .map(({ inci }) => inci)
    .join(", ");
