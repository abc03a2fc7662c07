import "server-only";
import type { Batch, SheetLine } from "@/lib/domain/bench/batch";
import { formulaAsStarted, formulaCalled, partAsStarted } from "@/lib/domain/bench/started-as";
import type { LineWeighed } from "@/lib/domain/bench/weights";
import type { Day } from "@/lib/domain/calendar";
import type { Books } from "@/lib/domain/desk";
import { percentOf } from "@/lib/domain/formula";
import { byDrawOrder, isUsable } from "@/lib/domain/lots";
import { type PartsPerMillion, smaller } from "@/lib/domain/quantity";
import type { Formula, Lot, Workshop } from "@/lib/domain/workshop";
import { percentShown } from "@/lib/edge/figures";
import { isLetter, type SheetSection, type StepOnPage } from "./_parts/bench-view";

/** Lots of a material with something in them, in the order in which they are drawn. @rule LOT-1 */
export const lotsOf = ({ lots }: Pick<Workshop, "lots">, material: string): readonly Lot[] =>
  lots.filter((lot) => lot.material === material && lot.remaining > 0n).toSorted(byDrawOrder);

interface ToDraw {
  readonly key: string;
  readonly material: string | null;
  /** µg that are still to be weighed. */
  readonly rest: bigint;
}

/** The lots that each line would be drawn from, one line after another, by its key. @rule LOT-1, LOT-2 */
export function plannedLots(
  workshop: Pick<Workshop, "lots">,
  lines: readonly ToDraw[],
  day: Day,
): ReadonlyMap<string, readonly string[]> {
  const taken = new Map<string, bigint>();
  return new Map(
    lines.map(({ key, material, rest }) => {
      let open = rest;
      const from = (material === null ? [] : lotsOf(workshop, material)).flatMap((lot) => {
        const left = lot.remaining - (taken.get(lot.id) ?? 0n);
        if (open <= 0n || left <= 0n || !isUsable(lot, day)) return [];
        const drawn = smaller<bigint>(open, left);
        taken.set(lot.id, (taken.get(lot.id) ?? 0n) + drawn);
        open -= drawn;
        return [lot.id];
      });
      return [key, from] as const;
    }),
  );
}

/** The percents of the lines, by key: of the version by which the batch was started, where its lines are those. */
export function percentsOf(books: Books, batch: Batch): ReadonlyMap<string, PartsPerMillion> {
  const parts = [...new Set(batch.lines.map(({ part }) => part))];
  return new Map(
    parts.flatMap((part) => {
      const formula = partAsStarted(books, batch, part);
      const lines = batch.lines.filter((line) => line.part === part);
      if (lines.length !== formula.lines.length) return [];
      return formula.lines.map((line, at) => [lines[at]?.key ?? "", percentOf(line, formula)] as const);
    }),
  );
}

export const percentInWords = (percent: PartsPerMillion | undefined): string | null =>
  percent === undefined ? null : percentShown(percent);

/** The lots of which each line's rest would be weighed, by its key. @rule LOT-1, LOT-2 */
export const lotsToWeigh = (
  workshop: Pick<Workshop, "lots">,
  lines: readonly LineWeighed[],
  day: Day,
): ReadonlyMap<string, readonly string[]> =>
  plannedLots(
    workshop,
    lines.map(({ line: { key, of, target }, total, state }) => ({
      key,
      material: of.kind === "material" ? of.id : null,
      rest: state === "done" ? 0n : target - total,
    })),
    day,
  );

/** The lines of the sheet by their phases, on the screen and on paper: each phase has its steps once. */
export function sectionsOf<Line extends { readonly line: SheetLine }>(
  books: Books & { readonly batch: Batch },
  lines: readonly Line[],
): readonly SheetSection<Line>[] {
  const { batch, workshop } = books;
  const formula = formulaAsStarted(books, batch);
  const before = new Set<string | null>();
  return inPhases(lines).map((together) => {
    const { key, part, phase } = together[0].line;
    const isMain = part === formula.id;
    // Lines of another phase can stand between those of one.
    const isFirst = isMain && !before.has(phase);
    if (isMain) before.add(phase);
    return {
      key,
      phase,
      title: phaseTitle(phase, formulaCalled(batch, workshop, part), isMain),
      isMain,
      celsius: (isMain && formula.phases.find(({ name }) => name === phase)?.temperature) || null,
      lines: together,
      steps: isFirst && phase !== null ? stepsOf(formula, (of) => of === phase) : [],
    };
  });
}

/** Steps of no phase that lines of the formula stand in. */
export const stepsOfTheWhole = (
  formula: Formula,
  sections: readonly Pick<SheetSection<unknown>, "phase" | "isMain">[],
): readonly StepOnPage[] =>
  stepsOf(formula, (phase) => phase === null || !sections.some((each) => each.isMain && each.phase === phase));

/** What stands above the lines of a phase: a short name is a letter, and is called a phase. */
function phaseTitle(phase: string | null, called: string, isMain: boolean): string {
  if (phase === null) return called;
  const named = isLetter(phase) ? `Phase ${phase}` : phase;
  return isMain ? named : `${called}, ${named.charAt(0).toLowerCase()}${named.slice(1)}`;
}

const stepsOf = ({ steps }: Formula, isWanted: (phase: string | null) => boolean): readonly StepOnPage[] =>
  steps.flatMap(({ text, phase, temperature, minutes }, at) =>
    isWanted(phase) ? [{ at, text, celsius: temperature, minutes: minutes === null ? null : Number(minutes) }] : [],
  );

/** Lines that follow one another in one formula and one phase. */
function inPhases<Of extends { readonly line: Pick<SheetLine, "key" | "part" | "phase"> }>(
  lines: readonly Of[],
): readonly (readonly [Of, ...Of[]])[] {
  const groups: [Of, ...Of[]][] = [];
  for (const each of lines) {
    const last = groups.at(-1);
    if (last?.[0].line.part === each.line.part && last[0].line.phase === each.line.phase) last.push(each);
    else groups.push([each]);
  }
  return groups;
}
