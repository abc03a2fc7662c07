/** Trials: small batches at the bench that are not for sale, as they were weighed. @rule TRIAL-1 to TRIAL-5 */
import { takenOf } from "@/lib/domain/ahead-amounts";
import type { Day } from "@/lib/domain/calendar";
import { compare, type Fraction, ratio, times, ZERO } from "@/lib/domain/fraction";
import { byId, grouped } from "@/lib/domain/index-by-id";
import { sharedOut } from "@/lib/domain/ledger/sharing";
import { byDrawOrder, isUsable } from "@/lib/domain/lots";
import {
  type DecimalText,
  type Micrograms,
  type PartsPerMillion,
  quantity,
  smaller,
  type Stock,
  WHOLE,
} from "@/lib/domain/quantity";
import type { Formula, FormulaLine, Lot, Material, Workshop } from "@/lib/domain/workshop";

export interface Trial {
  readonly id: string;
  /** Of which formula it is a trial. */
  readonly formula: string;
  readonly name: string;
  readonly day: Day;
  readonly notes: string | null;
  /** As weighed, in the order of addition; at least one. */
  readonly lines: readonly TrialLine[];
  /** In the order in which they were written down. */
  readonly readings: readonly TrialReading[];
  /** The id of the posting that took it off the shelf; null where nothing was taken. */
  readonly posting: string | null;
}

export interface TrialLine {
  readonly of: FormulaLine["of"];
  readonly weighed: Micrograms;
  readonly phase: string | null;
}

/** What was seen of a trial some time after it was made: a thick emulsion goes on thickening overnight. */
export interface TrialReading {
  readonly afterMinutes: number;
  readonly ph: DecimalText | null;
  /** mPa·s. */
  readonly viscosity: DecimalText | null;
  readonly appearance: string | null;
}

/** All that was weighed, µg. */
export const massOf = (lines: readonly TrialLine[]): bigint => lines.reduce((sum, { weighed }) => sum + weighed, 0n);

/** Whether two lines are of the same thing. */
export const isOf = (one: FormulaLine["of"], other: FormulaLine["of"]): boolean =>
  one.kind === other.kind && one.id === other.id;

/** The share of a thing in what was weighed, over all its lines: zero where there is none. @rule TRIAL-1 */
export const shareIn = ({ lines }: Pick<Trial, "lines">, of: FormulaLine["of"]): Fraction =>
  ratio(massOf(lines.filter((line) => isOf(line.of, of))), massOf(lines));

/**
 * The formula that a trial is of, with the trial's lines in it: whole parts per million that come to 100 %.
 * @returns null where a line is less than the least percent that a formula can hold
 * @rule TRIAL-1
 */
export function formulaOfTrial(formula: Formula, trial: Trial): Formula | null {
  const parts = sharedOut(
    WHOLE,
    trial.lines.map(({ weighed }) => weighed),
  );
  if (parts.includes(0n)) return null;
  const takesTheRest = formula.lines.find(({ percent }) => percent === "qs")?.of;
  const isAlone = takesTheRest && trial.lines.filter(({ of }) => isOf(of, takesTheRest)).length === 1;
  return {
    ...formula,
    lines: trial.lines.map(({ of, phase }, at) => ({
      of,
      percent: isAlone && isOf(of, takesTheRest) ? "qs" : quantity<PartsPerMillion>(parts[at] ?? 0n),
      phase,
    })),
  };
}

export interface TrialDraws {
  readonly draws: readonly { readonly lot: Lot; readonly quantity: Stock }[];
  /** What the shelf does not hold on the day, by material id. */
  readonly short: readonly { readonly material: Material; readonly by: Stock }[];
}

/** The lots that a trial takes, first expired first out, those of a premix made ahead first. @rule TRIAL-2, LOT-1 */
export function drawsForTrial(workshop: Workshop, lines: readonly TrialLine[], day: Day): TrialDraws {
  const draws: TrialDraws["draws"][number][] = [];
  const short: TrialDraws["short"][number][] = [];
  const materialOf = byId("material", workshop.materials);
  const there = workshop.lots.filter((lot) => lot.received <= day && isUsable(lot, day)).toSorted(byDrawOrder);
  const lotsOf = grouped(there, ({ material }) => material);
  const thereOf = (material: string): bigint =>
    (lotsOf.get(material) ?? []).reduce((held, { remaining }) => held + remaining, 0n);
  const amounts = lines.map(({ of, weighed }) => ({ of, mass: weighed }));
  for (const [material, { quantity: wanted }] of takenOf(workshop, amounts, thereOf)) {
    let open: bigint = wanted;
    for (const lot of lotsOf.get(material) ?? []) {
      const drawn = smaller<bigint>(open, lot.remaining);
      if (drawn > 0n) draws.push({ lot, quantity: quantity<Stock>(drawn) });
      open -= drawn;
    }
    if (open > 0n) short.push({ material: materialOf(material), by: quantity<Stock>(open) });
  }
  return { draws, short };
}

/**
 * The thing that was varied: whose largest share in the trials is the greatest multiple of its smallest. One that a
 * trial does without is varied more than one that all hold.
 * @returns null where fewer than two trials are there, or nothing differs
 * @rule TRIAL-4
 */
export function variedIn(trials: readonly Trial[]): FormulaLine["of"] | null {
  const all = trials.flatMap(({ lines }) => lines.map(({ of }) => of));
  const things = all.filter((of, at) => all.findIndex((other) => isOf(of, other)) === at);
  const spreads = things.map((of) => {
    const shares = trials.map((trial) => shareIn(trial, of)).toSorted(compare);
    return { of, least: shares.at(0) ?? ZERO, most: shares.at(-1) ?? ZERO };
  });
  const [first] = spreads
    .filter(({ least, most }) => compare(least, most) < 0)
    // The larger multiple first: a ÷ b > c ÷ d where a × d > c × b, also where b or d is nothing.
    .toSorted((a, b) => compare(times(b.most, a.least), times(a.most, b.least)));
  return first?.of ?? null;
}

/** The times after which something was read in any of the trials, the soonest first, minutes. @rule TRIAL-3 */
export const timesRead = (trials: readonly Trial[]): readonly number[] =>
  [...new Set(trials.flatMap(({ readings }) => readings.map(({ afterMinutes }) => afterMinutes)))].sort(
    (a, b) => a - b,
  );

/** The last that was written down for a time: a reading that was wrong is followed by the right one. @rule TRIAL-3 */
export function readAt<What extends "ph" | "viscosity" | "appearance">(
  { readings }: Trial,
  afterMinutes: number,
  what: What,
): TrialReading[What] | null {
  return (
    readings.findLast((reading) => reading.afterMinutes === afterMinutes && reading[what] !== null)?.[what] ?? null
  );
}
