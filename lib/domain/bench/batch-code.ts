/** The code of a batch, by the maker's own scheme. @rule BENCH-2 */
import { type Day, daysAfter, isoDate } from "@/lib/domain/calendar";

/** How a code tells the day: not at all; as GS1 writes a date; or as year and day of the year (ISO 8601, ordinal date). */
export const DATINGS = ["none", "year, month and day", "year and day of the year"] as const;
export type Dating = (typeof DATINGS)[number];

export interface BatchCodeScheme {
  /** Before the date; may be empty. */
  readonly before: string;
  readonly dating: Dating;
  /** Between the date and the number; may be empty. */
  readonly between: string;
  /** How many digits the number has at least. */
  readonly digits: number;
}

export const MOST_DIGITS = 6;
/** As long as the id of a lot may be. */
export const LONGEST_CODE = 200;

/** All of a code but its number. */
export const stemOf = ({ before, dating, between }: BatchCodeScheme, day: Day): string =>
  `${before}${dated(dating, day)}${between}`;

function dated(dating: Dating, day: Day): string {
  const iso = isoDate(day);
  switch (dating) {
    case "none":
      return "";
    case "year, month and day":
      return iso.slice(2).replaceAll("-", "");
    case "year and day of the year":
      return `${iso.slice(2, 4)}${String(dayOfYear(day)).padStart(3, "0")}`;
  }
}

/** From 1 for the first of January. */
function dayOfYear(day: Day): number {
  const year = isoDate(day).slice(0, 4);
  let before = 0;
  while (isoDate(daysAfter(day, -(before + 1))).startsWith(year)) before += 1;
  return before + 1;
}

/** The next code of the scheme: its number is one above the highest that stands after the same stem. */
export function nextCode(scheme: BatchCodeScheme, day: Day, used: readonly string[]): string {
  const stem = stemOf(scheme, day);
  const numbers = used
    .filter((code) => code.startsWith(stem) && /^\d{1,15}$/.test(code.slice(stem.length)))
    .map((code) => Number(code.slice(stem.length)));
  const next = Math.max(0, ...numbers) + 1;
  return `${stem}${String(next).padStart(scheme.digits, "0")}`;
}

/** The code that comes after one by its own last number: M-07 after M-06, and M-2 after M. */
export function codeAfter(code: string): string {
  const digits = /\d{1,15}$/.exec(code)?.[0];
  if (digits === undefined) return `${code}-2`;
  return `${code.slice(0, -digits.length)}${String(Number(digits) + 1).padStart(digits.length, "0")}`;
}
