import "server-only";
import { type SheetLine, standing } from "@/lib/domain/bench/batch";
import { type LineWeighed, linesWeighed } from "@/lib/domain/bench/weights";
import { type PartsPerMillion, quantity } from "@/lib/domain/quantity";
import type { BatchOnPage } from "./batch-for-page";
import type { SheetSection } from "./_parts/bench-view";
import { lotsToWeigh, percentInWords, percentsOf, sectionsOf } from "./sheet-lines";

export interface PaperLine extends LineWeighed {
  /** Of its formula, or null where that is not known any more. */
  readonly percent: string | null;
  /** What goes on a label, where somebody has said it. */
  readonly inci: string;
  readonly planned: readonly string[];
}

export interface PaperPhase extends SheetSection<PaperLine> {
  /** What is weighed of it, µg. */
  readonly target: bigint;
  readonly percent: string | null;
  /** Whether it is brought to a temperature, so that what it reached is written down. */
  readonly isHeated: boolean;
  /** °C that was last written down of it. */
  readonly reached: string | null;
}

/** The sheet by its phases, with what stands on it already. */
export function paperPhases(found: Pick<BatchOnPage, "workshop" | "desk" | "batch" | "today">): readonly PaperPhase[] {
  const { batch, workshop, today } = found;
  const percents = percentsOf(found, batch);
  const weighed = linesWeighed(batch);
  const planned = lotsToWeigh(workshop, weighed, today);
  const temperatures = standing(batch, "temperature");
  const lines = weighed.map((line) => ({
    ...line,
    percent: percentInWords(percents.get(line.line.key)),
    inci: inciOf(line.line, workshop),
    planned: planned.get(line.line.key) ?? [],
  }));
  return sectionsOf(found, lines).map((section) => ({
    ...section,
    target: section.lines.reduce((sum, { line }) => sum + line.target, 0n),
    percent: togetherInWords(section.lines.map(({ line }) => percents.get(line.key))),
    isHeated: section.celsius !== null || section.steps.some(({ celsius }) => celsius !== null),
    reached:
      section.phase === null ? null : (temperatures.findLast((note) => note.phase === section.phase)?.celsius ?? null),
  }));
}

/** Null where one of them is not known. */
const togetherInWords = (percents: readonly (PartsPerMillion | undefined)[]): string | null =>
  percents.includes(undefined)
    ? null
    : percentInWords(quantity<PartsPerMillion>(percents.reduce<bigint>((sum, each) => sum + (each ?? 0n), 0n)));

const inciOf = ({ of }: SheetLine, { materials }: BatchOnPage["workshop"]): string =>
  (materials.find(({ id }) => of.kind === "material" && id === of.id)?.composition ?? [])
    .map(({ inci }) => inci)
    .join(", ");
