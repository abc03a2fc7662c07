/** The labour that runs ask of each day, against the maker's hours at the bench. @rule BOOK-6 */
import { type Day, daysAfter, weekday } from "./calendar";
import { type Fraction, minus, plus, times, total, whole } from "./fraction";
import { byId, grouped } from "./index-by-id";
import { decimalValue, type Units } from "./quantity";
import type { Product, Run, Workshop } from "./workshop";

/** Minutes at the bench, from Monday to Sunday. */
export type BenchMinutes = readonly [number, number, number, number, number, number, number];

export interface BenchDay {
  readonly day: Day;
  readonly isClosed: boolean;
  /** The runs of the day, by their own date, in the workshop's order. */
  readonly runs: readonly Run[];
  /** Minutes that they ask for. Exact. */
  readonly asked: Fraction;
  /** Minutes that the day has; none on a closed day, null where the maker has not said. */
  readonly there: number | null;
  /** `there` less `asked`: below zero where the day asks for more than it has. */
  readonly left: Fraction | null;
}

/** The labour of one run, exact minutes. @rule BOOK-6 */
export const minutesOfRun = (product: Product, units: Units): Fraction =>
  plus(decimalValue(product.labourMinutesPerRun), times(whole(units), decimalValue(product.labourMinutesPerUnit)));

/** The maker's minutes on a day. @rule BOOK-6 */
export function minutesThere(week: BenchMinutes, day: Day, closedDays: ReadonlySet<Day>): number {
  return closedDays.has(day) ? 0 : (week[weekday(day) - 1] ?? 0);
}

/**
 * Every day from `from` to `to`, both included, with what its runs ask of it.
 * @param week  null where the maker has not said
 * @rule BOOK-6
 */
export function benchDays(
  { runs, products, settings }: Pick<Workshop, "runs" | "products" | "settings">,
  week: BenchMinutes | null,
  from: Day,
  to: Day,
): readonly BenchDay[] {
  const productOf = byId("product", products);
  const runsByDay = grouped(runs, ({ date }) => String(date));
  const closedDays = new Set(settings.closedDays);
  return Array.from({ length: Math.max(0, to - from + 1) }, (_, index): BenchDay => {
    const day = daysAfter(from, index);
    const ofDay = runsByDay.get(String(day)) ?? [];
    const asked = total(ofDay.map((run) => minutesOfRun(productOf(run.product), run.units)));
    const there = week && minutesThere(week, day, closedDays);
    const left = there === null ? null : minus(whole(BigInt(there)), asked);
    return { day, isClosed: closedDays.has(day), runs: ofDay, asked, there, left };
  });
}
