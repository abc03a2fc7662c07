/** How long a product keeps, as its label says it. Regulation (EC) 1223/2009, Article 19(1)(c). @rule LABEL-5 */
import { type Day, dayOf, daysAfter, isoDate } from "@/lib/domain/calendar";

export type Durability =
  /** At most 30 months: the day is on the label. */
  | { readonly kind: "best before"; readonly day: Day }
  /** More than 30 months: how long after opening, null where nobody has said. */
  | { readonly kind: "after opening"; readonly months: number | null }
  | { readonly kind: "not known" };

/** Up to so many months a label bears the day itself. */
export const MONTHS_WITH_A_DAY = 30;

/** @param bestBefore  the last day on which it is good; null where nobody has said how long it keeps */
export function durabilityOf(madeOn: Day, bestBefore: Day | null, monthsOpen: number | null): Durability {
  if (bestBefore === null) return { kind: "not known" };
  return bestBefore > monthsAfter(madeOn, MONTHS_WITH_A_DAY)
    ? { kind: "after opening", months: monthsOpen }
    : { kind: "best before", day: bestBefore };
}

/** The same day so many months on, or the last of that month where it has no such day. */
export function monthsAfter(day: Day, months: number): Day {
  const [year = 0, month = 0, dayOfMonth = 0] = isoDate(day).split("-").map(Number);
  const total = year * 12 + month - 1 + months;
  const first = firstOf(Math.floor(total / 12), (total % 12) + 1);
  const last = daysAfter(firstOf(Math.floor((total + 1) / 12), ((total + 1) % 12) + 1), -1);
  const wanted = daysAfter(first, dayOfMonth - 1);
  return wanted > last ? last : wanted;
}

function firstOf(year: number, month: number): Day {
  const day = dayOf(`${String(year).padStart(4, "0")}-${String(month).padStart(2, "0")}-01`);
  if (day === null) throw new RangeError("a month beyond the years of the calendar");
  return day;
}
