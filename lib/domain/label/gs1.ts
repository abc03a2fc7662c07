/**
 * Numbers and dates as GS1 writes them. GS1 General Specifications: check digit (section 7.9), dates YYMMDD and
 * application identifiers 01, 10 and 15 (section 3), read in pages of GS1's member organisations, not in the
 * specifications themselves. @rule LABEL-7
 */
import { type Day, isoDate } from "@/lib/domain/calendar";

/** The last digit of a number: what brings the digits, times 3 and 1 in turn from the right, to a multiple of ten. */
export function checkDigit(withoutIt: string): number {
  const sum = [...withoutIt].reverse().reduce((all, digit, at) => all + Number(digit) * (at % 2 === 0 ? 3 : 1), 0);
  return (10 - (sum % 10)) % 10;
}

/** Eight, twelve, thirteen or fourteen digits, the last of which is right. */
export const isGtin = (typed: string): boolean =>
  /^(\d{8}|\d{12,14})$/.test(typed) && checkDigit(typed.slice(0, -1)) === Number(typed.at(-1));

/** YYMMDD. */
export const gs1Date = (day: Day): string => isoDate(day).slice(2).replaceAll("-", "");

/** A batch code that GS1 can carry: one to twenty characters of its set 82, of which no bracket, which our syntax takes. */
export const fitsGs1 = (code: string): boolean => /^[!"%-'*-/0-9:-?A-Z_a-z]{1,20}$/.test(code);

export interface CodeContent {
  readonly text: string;
  /** Whether the text is of application identifiers in brackets. */
  readonly isGs1: boolean;
}

/** What the code on a label holds: number, best before and batch where there is a number, else the batch alone. */
export function codeContent(batchCode: string, bestBefore: Day | null, gtin: string | null): CodeContent {
  if (gtin === null || !fitsGs1(batchCode)) return { text: batchCode, isGs1: false };
  const date = bestBefore === null ? "" : `(15)${gs1Date(bestBefore)}`;
  return { text: `(01)${gtin.padStart(14, "0")}${date}(10)${batchCode}`, isGs1: true };
}
