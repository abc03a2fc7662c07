/** Runs as the week says them. */
import { type Fraction, plus, times, total, whole } from "@/lib/domain/fraction";
import { bulkOf, exactFor } from "@/lib/domain/needs";
import type { RunOutlook } from "@/lib/domain/plan-figures";
import { decimalValue } from "@/lib/domain/quantity";
import { counted, inARow } from "@/lib/edge/counted";
import { countShown, NO_BREAK, massShown, stockShown } from "@/lib/edge/figures";

/** A run's place on the page, which its slip points to. */
export const runAnchor = (id: string): string => `run-${encodeURIComponent(id)}`;

/** Where a slip leads: to the run further down, or to the same week with that run open. */
export type RunAddress = `#${string}` | `/week?${string}`;

/** Minutes at the bench: the run's own and its units', exact. */
export const minutesOf = ({ run, product }: RunOutlook): Fraction =>
  plus(decimalValue(product.labourMinutesPerRun), times(whole(run.units), decimalValue(product.labourMinutesPerUnit)));

export const minutesTogether = (runs: readonly RunOutlook[]): Fraction => total(runs.map(minutesOf));

/** What the vessel must hold: `6.08 kg`. */
export const massOf = ({ run, product }: RunOutlook): string =>
  massShown(exactFor(bulkOf(product), run.units), "nearest");

export const unitsShown = (units: bigint): string =>
  `${countShown(units)}${NO_BREAK}${units === 1n ? "unit" : "units"}`;

/** Each thing that a run is short of: `84 g of Oat protein`. */
export const shortages = ({ short }: RunOutlook): readonly string[] =>
  short.map(({ material, by }) => `${stockShown(by, material.measure, "lacking")} of ${material.name}`);

const MOST_NAMED = 2;

/** What it is short of by name, or how many materials where they are many. */
export const shortOfWords = ({ short }: RunOutlook): string =>
  short.length > MOST_NAMED
    ? counted(short.length, "material", "materials")
    : inARow(short.map(({ material }) => material.name));
