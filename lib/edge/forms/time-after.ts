/** A time after something was made, as a person types it: `30 min`, `1 h`, `2 days`, `1 week`. */
import { compare, times, whole } from "@/lib/domain/fraction";
import { type DecimalText, decimalValue } from "@/lib/domain/quantity";
import { type Outcome, wholeNumber } from "@/lib/edge/fields";
import { NO_BREAK } from "@/lib/edge/shown-digits";
import { quoted } from "@/lib/edge/shown-value";
import { isTooLong, readTypedNumber, tooLong, withoutEnds } from "./typed-number";

const DAY = 24 * 60;
/** Ten years. */
export const LONGEST_AFTER = 3660 * DAY;
const minutesAfter = wholeNumber(0, LONGEST_AFTER);

/** Longest first: the first that divides a time is the one it is said in. */
const UNITS = [
  { minutes: 7 * DAY, one: "week", many: "weeks", typed: ["w", "wk", "week", "weeks"] },
  { minutes: DAY, one: "day", many: "days", typed: ["d", "day", "days"] },
  { minutes: 60, one: "hour", many: "hours", typed: ["h", "hr", "hrs", "hour", "hours"] },
  { minutes: 1, one: "minute", many: "minutes", typed: ["m", "min", "mins", "minute", "minutes"] },
] as const;

/** @returns whole minutes; 0 where nothing is written: when it was made */
export function readTimeAfter(typed: string): Outcome<number> {
  if (isTooLong(typed)) return tooLong(typed);
  const text = withoutEnds(typed);
  if (text === "") return { value: 0 };
  const [, number = "", word = ""] = /^(.*?)\s*(\p{L}+)\.?$/u.exec(text) ?? [];
  const unit = UNITS.find((each) => each.typed.some((one) => one === word.toLowerCase()));
  if (unit === undefined)
    return { fault: `must be a time with its unit, as 1 h, 1 day or 1 week, not ${quoted(text)}` };
  const read = readTypedNumber(number);
  if ("fault" in read) return read;
  const minutes = times(decimalValue(read.value as DecimalText), whole(BigInt(unit.minutes)));
  if (compare(minutes, whole(BigInt(LONGEST_AFTER))) > 0) return { fault: `${text} is longer than ten years` };
  if (minutes.over % minutes.under !== 0n) return { fault: `${text} is no whole number of minutes` };
  return { value: minutesAfter.parse(Number(minutes.over / minutes.under)) };
}

/** `1 day` after, or when it was made. */
export function timeAfterShown(minutes: number): string {
  if (minutes === 0) return "when made";
  const unit = UNITS.find((each) => minutes % each.minutes === 0) ?? UNITS[3];
  const count = minutes / unit.minutes;
  return `${String(count)}${NO_BREAK}${count === 1 ? unit.one : unit.many}`;
}
