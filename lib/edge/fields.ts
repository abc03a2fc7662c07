/**
 * What one field may hold, as zod schemas: the workshop file reads its values through them, and so can a form, one
 * field at a time. Each gives a value of the domain or says what is wrong and what would be right.
 * Figures with a unit are in figure-fields.ts. @rule FILE-3
 */
import { z } from "zod";
import { type Day, dayOf, FIRST_YEAR, LAST_YEAR } from "@/lib/domain/calendar";
import type { CurrencyCode } from "@/lib/domain/money";
import { LARGEST_FIGURE, type Packs, quantity, type Units } from "@/lib/domain/quantity";
import { MOST_DAYS } from "./day-count";
import type { Json, OtherNumber } from "./json-tree";
import { quoted, shown } from "./shown-value";

/** A value that was read, or why it was not. */
export type Outcome<T> = { readonly value: T } | { readonly fault: string };

/** What the type check of a field says of a value of another kind. */
export const wanted =
  (what: string) =>
  ({ input }: { readonly input?: unknown }): string =>
    input === undefined ? `missing; it must be ${what}` : `must be ${what}, not ${shown(input as Json)}`;

/** A field that is typed as text. `what` completes "must be …"; `read` judges the text. */
export const textField = <T>(what: string, read: (typed: string) => Outcome<T>) =>
  z.string({ error: wanted(what) }).transform((typed, context): T => {
    const outcome = read(typed);
    if ("value" in outcome) return outcome.value;
    context.issues.push({ code: "custom", input: typed, message: outcome.fault });
    return z.NEVER;
  });

/** The same field where it may be left out or null, and what it then stands for. */
export const orElse = <S extends z.ZodType, D>(field: S, byDefault: D) =>
  field.nullish().transform((value) => value ?? byDefault);

const MOST_CHARACTERS = 200;

function readLabel(typed: string): Outcome<string> {
  if (typed === "") return { fault: `must not be empty; it has 1 to ${String(MOST_CHARACTERS)} characters` };
  if (isLongerThan(typed, MOST_CHARACTERS)) {
    return { fault: `must have at most ${String(MOST_CHARACTERS)} characters; ${quoted(typed)} is longer` };
  }
  if (/[\p{Cc}\p{Cs}]/u.test(typed))
    return { fault: `control character or lone surrogate in ${quoted(typed)}; take it out` };
  return { value: typed };
}

/** A text of at most so many characters without lone surrogates; lines may be broken in it. */
export const note = (most: number) =>
  textField("a text in double quotes", (typed): Outcome<string> => {
    if (typed === "") return { fault: "must not be empty; leave it out" };
    if (isLongerThan(typed, most)) {
      return { fault: `must have at most ${String(most)} characters; ${quoted(typed)} is longer` };
    }
    return /\p{Cs}/u.test(typed) ? { fault: "holds a lone surrogate; take it out" } : { value: typed };
  });

/** Counts code points; a text of many megabytes is not taken apart. */
const isLongerThan = (text: string, most: number): boolean => text.length > 2 * most || [...text].length > most;

/** A name: 1 to 200 characters, no control characters, no lone surrogates. */
export const name = textField("a name in double quotes", readLabel);
/** An id, which is unique in its list. The same characters as a name. */
export const id = textField("an id in double quotes", readLabel);
/** The phase of a formula's line: a short label. */
export const phase = textField('a phase in double quotes, as "A"', readLabel);

/** The id of a record of another list. Whether there is one is another question. */
export const reference = (to: string) => z.string({ error: wanted(`the id of a ${to} in double quotes`) });

/** An ISO 8601 calendar date. @rule DAY-1 */
export const day = textField('a date in double quotes, as "2026-11-25"', (typed): Outcome<Day> => {
  const parts = /^(\d{4})-\d{2}-\d{2}$/.exec(typed);
  if (!parts) return { fault: `must be a date as 2026-11-25 (year-month-day), not ${quoted(typed)}` };
  const year = Number(parts[1]);
  if (year < FIRST_YEAR || year > LAST_YEAR) {
    return { fault: `date ${typed} is out of range: the year must be ${String(FIRST_YEAR)} to ${String(LAST_YEAR)}` };
  }
  const value = dayOf(typed);
  return value === null ? { fault: `no such day ${quoted(typed)}` } : { value };
});

export const days = z.array(day, { error: wanted('a list of dates, as ["2026-12-25"]') }).readonly();

/** Three capital letters. @rule MONEY-2 */
export const currency = textField('a currency code in double quotes, as "GBP"', (typed): Outcome<CurrencyCode> =>
  /^[A-Z]{3}$/.test(typed)
    ? { value: typed as CurrencyCode }
    : { fault: `must be a currency code of three capital letters, as GBP, not ${quoted(typed)}` },
);

/** One of a few words. */
export const oneOf = <const Words extends readonly [string, ...string[]]>(words: Words) =>
  z.enum(words, { error: wanted(words.map((word) => `"${word}"`).join(" or ")) });

export const yesOrNo = z.boolean({ error: wanted("true or false") });

const LARGEST = Number(LARGEST_FIGURE);

/** A number of days: 0 to 3660. */
export const dayCount = wholeNumber(0, MOST_DAYS);
/** The place of a run within its day: 0 to a million. */
export const sequence = wholeNumber(0, 1_000_000);

/** Whole filled units, at least `least`. @rule QTY-6 */
export const units = (least: 0 | 1) => wholeNumber(least, LARGEST).transform((value) => quantity<Units>(BigInt(value)));
/** Whole packs of one offer, at least `least`. @rule QTY-6 */
export const packs = (least: 1 | 2) => wholeNumber(least, LARGEST).transform((value) => quantity<Packs>(BigInt(value)));

/** A whole number in a range, and written whole: `24`, not `24.0` or `"24"`. */
export function wholeNumber(from: number, to: number) {
  const range = `${String(from)} to ${to === LARGEST ? "2^53-1" : String(to)}`;
  const isWhole = (value: unknown): value is number | OtherNumber =>
    typeof value === "number" || (isOtherNumber(value) && /^-?[1-9]\d{0,40}$/.test(value.written));
  return z
    .custom<number | OtherNumber>(isWhole, { error: wanted(`a whole number from ${range}, without a point or quotes`) })
    .transform((value, context): number => {
      if (typeof value === "number" && value >= from && value <= to) return value;
      context.issues.push({ code: "custom", input: value, message: `${shown(value)} is out of range ${range}` });
      return z.NEVER;
    });
}

const isOtherNumber = (value: unknown): value is OtherNumber =>
  typeof value === "object" && value !== null && "written" in value;
