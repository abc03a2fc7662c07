/** What the planned runs use of a material, as a mean and a spread of days: where a suggestion begins. @rule BUY-14 */
import { type Fraction, ratio } from "../fraction";
import type { Plan } from "../plan-figures";
import { rootDown } from "../whole-root";

export interface PlannedUse {
  /** µg or pieces in a day, over the horizon. */
  readonly mean: Fraction;
  /** The standard deviation of a day's use, from whole weeks: that of a week ÷ √7. µg or pieces, rounded down. */
  readonly deviation: bigint;
  /** What is used in each whole week from today on. */
  readonly byWeek: readonly bigint[];
  /** What is used over the horizon, and its days, today among them. */
  readonly used: bigint;
  readonly days: number;
}

/** Null where no run within the horizon uses it. */
export function plannedUse({ runs, today, lastDay }: Plan, material: string): PlannedUse | null {
  const uses = runs
    .filter(({ day }) => day >= today && day <= lastDay)
    .flatMap(({ day, draws }) =>
      draws.filter((draw) => draw.material.id === material).map(({ need }) => ({ day, need })),
    );
  const used = uses.reduce((sum, { need }) => sum + need, 0n);
  if (used === 0n) return null;
  const days = lastDay - today + 1;
  const weeks = Math.floor(days / 7);
  const byWeek = Array.from({ length: weeks }, (_, week) =>
    uses.reduce((sum, { day, need }) => (Math.floor((day - today) / 7) === week ? sum + need : sum), 0n),
  );
  return { mean: ratio(used, BigInt(days)), deviation: deviationOfDay(byWeek), byWeek, used, days };
}

/** The sample's standard deviation of weeks, in days that vary independently. */
function deviationOfDay(weeks: readonly bigint[]): bigint {
  const count = BigInt(weeks.length);
  if (count < 2n) return 0n;
  const sum = weeks.reduce((all, each) => all + each, 0n);
  const squares = weeks.reduce((all, each) => all + each * each, 0n);
  // variance of a week = (n Σx² − (Σx)²) ÷ (n (n − 1)); of a day a seventh of that
  return rootDown((count * squares - sum * sum) / (count * (count - 1n) * 7n));
}
