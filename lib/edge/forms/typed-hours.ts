/** Hours of a day as a person types them: `5`, `7.5`, `5:30`, `5 h 30 min`, `45 min`. Whole minutes. @rule BOOK-6 */
import type { Outcome } from "@/lib/edge/fields";
import { quoted } from "@/lib/edge/shown-value";
import { isTooLong, readTypedNumber, tooLong, withoutEnds } from "./typed-number";

const MOST_MINUTES = 24 * 60;

/** @returns minutes, from none to those of a whole day */
export function readTypedHours(typed: string): Outcome<number> {
  if (isTooLong(typed)) return tooLong(typed);
  const text = withoutEnds(typed).toLowerCase();
  if (text === "") return { value: 0 };
  const minutes = clockMinutes(text) ?? wordMinutes(text) ?? decimalHours(text);
  if (typeof minutes !== "number") return minutes;
  if (minutes <= MOST_MINUTES) return { value: minutes };
  return { fault: `a day has 24 hours; ${quoted(withoutEnds(typed))} is more` };
}

/** `5:30`. */
function clockMinutes(text: string): number | null {
  const [, hours, minutes] = /^(\d{1,2}):([0-5]\d)$/.exec(text) ?? [];
  return hours === undefined ? null : Number(hours) * 60 + Number(minutes);
}

/** `5 h`, `5h30`, `5 h 30 min`, `45 min`. */
function wordMinutes(text: string): number | null {
  const [found, hours, minutes, alone] =
    /^(?:(\d{1,2})\s*h(?:ours?|rs?)?(?:\s*(\d{1,2})\s*(?:m|mins?|minutes?)?)?|(\d{1,4})\s*(?:m|mins?|minutes?))$/.exec(
      text,
    ) ?? [];
  return found === undefined ? null : Number(hours ?? 0) * 60 + Number(minutes ?? 0) + Number(alone ?? 0);
}

/** `7.5` or `7,5` hours; a fraction that makes no whole minutes is refused, never rounded. */
function decimalHours(text: string): number | { readonly fault: string } {
  const number = readTypedNumber(text.replace(/\s*h(?:ours?|rs?)?$/, ""));
  if ("fault" in number) return { fault: `must be hours, as 5, 7.5 or 5:30, not ${quoted(text)}` };
  const [hours = "0", decimals = ""] = number.value.split(".");
  const parts = 10n ** BigInt(decimals.length);
  const over = BigInt(hours + decimals) * 60n;
  if (over % parts !== 0n) return { fault: `${number.value} hours is no whole number of minutes; write it as 5:20` };
  const minutes = over / parts;
  return minutes > BigInt(MOST_MINUTES) ? MOST_MINUTES + 1 : Number(minutes);
}

/** Minutes as a form shows them: `5`, `5:30`; nothing for a day without hours. */
export function hoursAsTyped(minutes: number): string {
  if (minutes === 0) return "";
  const rest = minutes % 60;
  const hours = String((minutes - rest) / 60);
  return rest === 0 ? hours : `${hours}:${String(rest).padStart(2, "0")}`;
}
