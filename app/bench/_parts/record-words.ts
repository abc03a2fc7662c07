/** Figures and moments as the record has them. */
import type { Instant } from "@/lib/domain/bench/batch";
import { type Day, dayOf } from "@/lib/domain/calendar";
import { compare, minus } from "@/lib/domain/fraction";
import { type CheckFound, isMeasured } from "@/lib/domain/bench/asked-checks";
import { type DecimalText, decimalValue } from "@/lib/domain/quantity";
import { decimal } from "@/lib/edge/figure-fields";
import { dayShown } from "@/lib/edge/figures";
import { NO_BREAK, numberShown } from "@/lib/edge/shown-digits";

export type Grams = (amount: bigint) => string;

/** The day of a moment in universal time, as which the record keeps its moments: the workshop's own may be another. */
export function dayAt(moment: Instant): Day {
  const day = dayOf(moment.slice(0, 10));
  if (day === null) throw new RangeError(`no day in the calendar: ${moment}`);
  return day;
}

/** What the times of a batch are reckoned from: `Wed 25 Nov 2026, times in UTC`. */
export const timesFrom = (startedAt: Instant): string =>
  `${dayShown(dayAt(startedAt), dayAt(startedAt), { year: true })}, times in UTC`;

/** `09:06` in universal time; of another day than the batch was started on, `26 Nov 09:06`, with a year that is another. */
export function timeShown(at: Instant, startedAt: Instant): string {
  const [time, day, from] = [at.slice(11, 16), dayAt(at), dayAt(startedAt)];
  return day === from ? time : `${dayShown(day, from, { weekday: false })}${NO_BREAK}${time}`;
}

/** The last figure or look of a check, as the record says it. @rule BENCH-11 */
export function foundInWords({ check, note, isAnswered }: CheckFound): {
  readonly says: string;
  readonly isOut: boolean;
} {
  if (note === null) return { says: "nobody has looked", isOut: false };
  const unit = check.unit === null ? "" : `${NO_BREAK}${check.unit}`;
  if (note.kind === "acidity")
    return isAnswered
      ? { says: `${note.ph}, within`, isOut: false }
      : { says: `${note.ph} on the way, ${outBy(check, note.ph)}`, isOut: true };
  const found = isMeasured(check) ? `${note.found}${unit}` : note.found;
  return note.within
    ? { says: `${found}, within`, isOut: false }
    : { says: `${found}, ${outBy(check, note.found)}`, isOut: true };
}

/** `5 over the most asked`; `not as asked` of what is seen. */
function outBy({ from, to }: CheckFound["check"], found: string): string {
  const read = decimal.safeParse(found);
  if (!read.success) return "not as asked";
  const over = to === null ? null : moreThan(read.data, to);
  if (over !== null) return `${over} over the most asked`;
  const under = from === null ? null : moreThan(from, read.data);
  return under === null ? "not as asked" : `${under} under the least asked`;
}

/** By how much one is more than the other; null where it is not. */
function moreThan(one: DecimalText, other: DecimalText): string | null {
  const [a, b] = [decimalValue(one), decimalValue(other)];
  return compare(a, b) > 0 ? numberShown(minus(a, b), { least: 0, most: 6 }) : null;
}
