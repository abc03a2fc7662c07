/** A day as a person types it, as an ISO 8601 calendar date. @rule DAY-1 */
import { dayOf, isoDate } from "@/lib/domain/calendar";
import type { Outcome } from "@/lib/edge/fields";
import { quoted } from "@/lib/edge/shown-value";
import { isTooLong, withoutEnds } from "./typed-number";
import { typedOf } from "./unchosen";

/** What a month without a day means: the last day of use on a pack, or nothing. */
export type MonthAlone = "its last day" | "refused";

/**
 * `2026-11-25`, `2026-4-3`, `25/12/2026`, `25.12.2026`, and as pages show it, `Fri 3 Oct 2026`; `2028-03`, `03/2028` or
 * `Mar 2028` where a month stands for its last day. A date that two countries read differently is refused with both.
 * @returns an ISO date, which may still be a day that there is not (the file's own reader says so), or a refusal
 */
export function readTypedDay(typed: string, monthAlone: MonthAlone): Outcome<string> {
  if (!isTooLong(typed) && typedOf(typed) !== null)
    return { fault: "is not a whole date; fill in its day, month and year" };
  const text = isTooLong(typed) ? "" : inFigures(withoutEnds(typed));
  const iso = /^(\d{4})[-/.](\d{1,2})[-/.](\d{1,2})$/.exec(text);
  if (iso !== null) return { value: dateOf(iso[1], iso[2], iso[3]) };
  const month = /^(?<year>\d{4})[-/.](?<month>\d{1,2})$|^(?<month2>\d{1,2})[-/.](?<year2>\d{4})$/.exec(text)?.groups;
  if (month !== undefined && monthAlone === "its last day") {
    const last = lastDayOf(month.year ?? month.year2 ?? "", month.month ?? month.month2 ?? "");
    if (last !== undefined) return { value: last };
  }
  const named = /^(\d{1,2})[-/.](\d{1,2})[-/.](\d{4})$/.exec(text);
  if (named !== null) return readDayFirstOrLast(text, named[1] ?? "", named[2] ?? "", named[3] ?? "");
  return { fault: `must be a date as 2026-11-25 (year-month-day), not ${quoted(typed)}` };
}

const MONTHS = ["jan", "feb", "mar", "apr", "may", "jun", "jul", "aug", "sep", "oct", "nov", "dec"];
const MONTH_NAMES = [
  ...["january", "february", "march", "april", "may", "june", "july"],
  ...["august", "september", "october", "november", "december"],
];

/** `Fri 3 Oct 2026` as `2026-10-3`, `Mar 2028` as `2028-3`; anything else as it is. A weekday is not looked at. */
function inFigures(text: string): string {
  const parts = /^(?:(?:[a-z]+,?\s+)?(?<day>\d{1,2})\s+)?(?<name>[a-z]+)\.?,?\s+(?<year>\d{4})$/i.exec(text)?.groups;
  if (parts === undefined) return text;
  const name = (parts.name ?? "").toLowerCase();
  const month = MONTH_NAMES.findIndex(
    (full, at) => full === name || MONTHS[at] === name || (at === 8 && name === "sept"),
  );
  if (month < 0) return text;
  return [parts.year, String(month + 1), ...(parts.day === undefined ? [] : [parts.day])].join("-");
}

function readDayFirstOrLast(text: string, first: string, second: string, year: string): Outcome<string> {
  const [dayFirst, monthFirst] = [dateOf(year, second, first), dateOf(year, first, second)];
  const readings = [...new Set([dayFirst, monthFirst])].filter((date) => dayOf(date) !== null);
  const [only, other] = readings;
  if (only === undefined) return { fault: `no such day ${quoted(text)}; write it as 2026-11-25 (year-month-day)` };
  if (other === undefined) return { value: only };
  return { fault: `${quoted(text)} can be read two ways; write ${only} or ${other} (year-month-day)` };
}

const dateOf = (year = "", month = "", day = ""): string => `${year}-${month.padStart(2, "0")}-${day.padStart(2, "0")}`;

function lastDayOf(year: string, month: string): string | undefined {
  const first = dayOf(dateOf(year, month, "1"));
  if (first === null) return undefined;
  const days = [31, 30, 29, 28].map((day) => dayOf(dateOf(year, month, String(day))));
  const last = days.find((day) => day !== null);
  return last == null ? undefined : isoDate(last);
}
