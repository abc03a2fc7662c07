/**
 * A number as a person types it, as the plain decimal that a file would hold. What can be read two ways, or is grouped
 * in thousands, is refused with the spellings to choose from: a number is never misread. @rule QTY-3
 */
import type { Outcome } from "@/lib/edge/fields";
import { decimalTyped, marks } from "@/lib/edge/notation";
import { quoted } from "@/lib/edge/shown-value";

/** Longer texts are not looked at. A plain decimal has at most sixty characters; the rest is for units and spaces. */
const MOST_CHARACTERS = 100;

/** Marks that show nothing and come along when text is copied from a page or a spreadsheet. */
const UNSEEN_ENDS = /^[\s\u200b-\u200f\u2060\ufeff]+|[\s\u200b-\u200f\u2060\ufeff]+$/g;

/** The text without the spaces and unseen marks at its ends; no-break and thin spaces are spaces. */
export const withoutEnds = (typed: string): string => typed.replace(UNSEEN_ENDS, "");

export const isTooLong = (typed: string): boolean => typed.length > MOST_CHARACTERS;

export const tooLong = (typed: string): { readonly fault: string } => ({
  fault: `${quoted(typed)} is too long for a number; write at most ${String(MOST_CHARACTERS)} characters`,
});

/**
 * Reads a number without a unit: `1.5`, `1,5`, `.5`, `5.`, `007`, `+5`. The decimal mark of the workshop's notation is
 * always a decimal mark; the other one is, where it cannot part thousands.
 * @returns a plain decimal, or why there is none and how to write it
 */
export function readTypedNumber(typed: string): Outcome<string> {
  if (isTooLong(typed)) return tooLong(typed);
  const text = withoutEnds(typed);
  if (text === "") return { fault: decimalTyped("nothing is written here; write a number, as 12.5") };
  const refusal = refusalOf(text);
  if (refusal !== undefined) return { fault: refusal };
  const parts = /^\+?(\d*)([.,]?)(\d*)$/.exec(text);
  const [, whole = "", separator = "", rest = ""] = parts ?? [];
  if (parts === null || whole + rest === "")
    return { fault: `must be a number, as ${decimalTyped("12.5")}, not ${quoted(text)}` };
  if (separator !== "" && separator !== marks().decimal && couldBeThousands(whole, rest)) {
    return { fault: `${quoted(text)} can be read two ways; ${writeOneOf(whole + rest, `${whole}.${rest}`)}` };
  }
  return { value: plain(whole, rest) };
}

// Nobody writes thousands as "0,500" or "1234,500": there the mark can only be a decimal one.
const couldBeThousands = (whole: string, rest: string): boolean => rest.length === 3 && /^[1-9]\d{0,2}$/.test(whole);

/** Thousands in groups, perhaps with decimals after another separator: `1 500`, `1.500,00`, `1,500,000`. */
const GROUPED = /^(\d{1,3}(?:([\s.,'’])\d{3})(?:\2\d{3})*)(?:(?!\2)[.,](\d+))?$/u;

/** What is wrong whatever the digits say, or undefined. */
function refusalOf(text: string): string | undefined {
  if (/[^\P{Nd}0-9]/u.test(text)) return `write it with the digits 0 to 9; ${quoted(text)} has others`;
  if (/^[-−–]/.test(text)) return `must not be below zero, as ${quoted(text)} is`;
  const digits = text.replace(/^\+/, "");
  const [, groups = "", separator = "", rest = ""] = GROUPED.exec(digits) ?? [];
  if (groups === "" || /^\d+[.,]\d+$/.test(digits)) return undefined;
  const [first = "", ...others] = groups.split(separator);
  // With one group alone, its separator may have been meant as the decimal point.
  const decimals = others.length === 1 && rest === "" ? [`${first}.${others.join("")}`] : [];
  return `${quoted(text)} has its digits in groups; ${writeOneOf(plain(first + others.join(""), rest), ...decimals)}`;
}

const writeOneOf = (...spellings: readonly string[]): string =>
  `write ${[...new Set(spellings.map(withoutTrailingZeros).map(decimalTyped))].join(" or ")}`;

const withoutTrailingZeros = (decimal: string): string =>
  decimal.includes(".") ? decimal.replace(/\.?0+$/, "") : decimal;

function plain(whole: string, rest: string): string {
  const digits = whole.replace(/^0+(?=\d)/, "") || "0";
  return rest === "" ? digits : `${digits}.${rest}`;
}
