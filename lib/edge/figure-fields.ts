/**
 * Fields that hold a figure typed as text, as zod schemas: amounts with a unit, money, percents, densities, decimals.
 * What is typed with more decimals than a figure keeps is refused, never rounded.
 * @rule QTY-3, QTY-6, QTY-7, MONEY-1
 */
import { compare, whole } from "@/lib/domain/fraction";
import type { MicroUnits } from "@/lib/domain/money";
import {
  type Amount,
  type DecimalText,
  decimalValue,
  type Density,
  LARGEST_FIGURE,
  type PartsPerMillion,
  quantity,
  type Unit,
  UNITS,
} from "@/lib/domain/quantity";
import { type Outcome, textField } from "./fields";
import { quoted } from "./shown-value";

const MOST_CHARACTERS = 60;
const PLAIN_DECIMAL = /^(0|[1-9][0-9]*)(\.[0-9]+)?$/;

/** A plain decimal: digits, perhaps a point and more digits. */
function readDecimal(typed: string): Outcome<DecimalText> {
  if (typed.length > MOST_CHARACTERS) return tooLong(typed);
  if (PLAIN_DECIMAL.test(typed)) return { value: typed as DecimalText };
  return {
    fault: `must be a plain decimal, as 12.5 (no sign, exponent, separators or leading zero), not ${quoted(typed)}`,
  };
}

// The length is looked at first: a pattern is not let loose on megabytes of digits.
const tooLong = (typed: string): { readonly fault: string } => ({
  fault: `the decimal ${quoted(typed)} is longer than ${String(MOST_CHARACTERS)} characters`,
});

/** The decimal in so many parts of one: 1.25 at two decimals is 125. Refused where it has more decimals. */
function readScaled(typed: string, decimals: number): Outcome<bigint> {
  const decimal = readDecimal(typed);
  if ("fault" in decimal) return decimal;
  const [whole = "", rest = ""] = decimal.value.split(".");
  if (rest.length > decimals) return { fault: `${typed} has more than ${String(decimals)} decimals` };
  return { value: BigInt(whole + rest.padEnd(decimals, "0")) };
}

/** Any plain decimal: minutes, a temperature in °C. */
export const decimal = textField('a decimal in double quotes, as "1.5"', readDecimal);

/** A decimal from zero up to a bound, both included. */
const decimalUpTo = (most: bigint, example: string, tooMuch: string) =>
  textField(`a decimal in double quotes, as "${example}"`, (typed): Outcome<DecimalText> => {
    const read = readDecimal(typed);
    if ("fault" in read || compare(decimalValue(read.value), whole(most)) <= 0) return read;
    return { fault: `${typed} ${tooMuch}` };
  });

/** pH, from 0 to 14. */
export const ph = decimalUpTo(14n, "5.5", "is out of range: pH goes from 0 to 14");
/** A temperature at the bench, °C. */
export const celsius = decimalUpTo(
  150n,
  "70",
  "is out of range: a temperature is in °C, at most 150; convert it if it was in °F",
);
/** How thick something is, in mPa·s. */
export const viscosity = decimalUpTo(10n ** 12n, "12000", "is out of range: it is in mPa·s, at most a million million");
/** A length on a page of paper. */
export const millimetres = decimalUpTo(300n, "38.1", "is out of range: a page is at most 300 mm");
/** Grams counted for each gram of a material: at most three, as of an acid in its salts. */
export const countsAs = decimalUpTo(3n, "0.8475", "is out of range: it is grams counted for each gram, at most 3");

const moneyField = (mayBeZero: boolean) =>
  textField('a decimal in double quotes, as "8.40"', (typed): Outcome<MicroUnits> => {
    const scaled = readScaled(typed, 6);
    if ("fault" in scaled) return scaled;
    if (scaled.value > LARGEST_FIGURE) return { fault: `${quoted(typed)} is out of range (at most 9007199254.740991)` };
    if (scaled.value === 0n && !mayBeZero) return { fault: "must be above zero" };
    return { value: quantity<MicroUnits>(scaled.value) };
  });

/** Money with at most six decimals; zero is allowed. */
export const money = moneyField(true);
/** Money above zero. */
export const price = moneyField(false);

interface ShareRange {
  readonly zero: "allowed" | "refused";
  readonly hundred: "allowed" | "refused";
}

const HUNDRED_PERCENT = 1_000_000n;

const readShare = (typed: string, { zero, hundred }: ShareRange): Outcome<PartsPerMillion> => {
  const scaled = readScaled(typed, 4);
  if ("fault" in scaled) return scaled;
  const share = scaled.value;
  if (share === 0n && zero === "refused") return { fault: `${typed} % is out of range: it must be above zero` };
  if (share === HUNDRED_PERCENT && hundred === "refused")
    return { fault: `${typed} % is out of range: it must be below 100` };
  if (share > HUNDRED_PERCENT) {
    return { fault: `${typed} % is out of range: it must be ${hundred === "allowed" ? "at most" : "below"} 100` };
  }
  return { value: quantity<PartsPerMillion>(share) };
};

const shareField = (range: ShareRange) =>
  textField('a percent in double quotes, as "2.5"', (typed) => readShare(typed, range));

const BY_WEIGHT: ShareRange = { zero: "refused", hundred: "allowed" };

/** A percent by weight: above 0, at most 100, at most four decimals. */
export const percentByWeight = shareField(BY_WEIGHT);
/** A percent from 0 to 100: a tax, the least use of a material. */
export const percent = shareField({ zero: "allowed", hundred: "allowed" });
/** A percent that leaves something: at least 0 and below 100. */
export const lossPercent = shareField({ zero: "allowed", hundred: "refused" });

/** A percent by weight, or `qs`, which takes what is left. @rule FORMULA-1 */
export const percentOrQs = textField(
  'a percent in double quotes, as "2.5", or "qs"',
  (typed): Outcome<PartsPerMillion | "qs"> => {
    if (typed === "qs") return { value: "qs" };
    return typed.toLowerCase() === "qs"
      ? { fault: `unknown word ${quoted(typed)}, write qs` }
      : readShare(typed, BY_WEIGHT);
  },
);

/** A density at 20 °C in g/mL with at most six decimals, above zero. */
export const density = textField('a density in g/mL in double quotes, as "0.98"', (typed): Outcome<Density> => {
  const scaled = readScaled(typed, 6);
  if ("fault" in scaled) return scaled;
  if (scaled.value === 0n) return { fault: "must be above zero" };
  if (scaled.value > LARGEST_FIGURE) return { fault: `${quoted(typed)} is out of range (at most 9007199254.740991)` };
  return { value: quantity<Density>(scaled.value) };
});

/** An amount with its unit, as typed. What it comes to depends on a density, which one field does not know. */
export const amount = amountAs("an amount", "250 mL");
/** The same where only a weight is right: told so, with a weight for an example. */
export const weight = amountAs("a weight", "0.1 g");

/** @param called   what it must be, as `an amount` */
function amountAs(called: string, example: string) {
  return textField(`${called} in double quotes, as "${example}"`, (typed) => readAmountText(typed, example));
}

function readAmountText(typed: string, example: string): Outcome<Amount> {
  const [number = "", unit, ...more] = typed.split(" ", 3);
  const isUnit = unit !== undefined && unit !== "" && more.length === 0;
  if (isUnit && number.length > MOST_CHARACTERS) return tooLong(number);
  if (!isUnit || !PLAIN_DECIMAL.test(number)) {
    return { fault: `must be a plain decimal, one space and a unit, as ${example}, not ${quoted(typed)}` };
  }
  if (!Object.hasOwn(UNITS, unit)) return { fault: `unknown unit ${quoted(unit)}, ${unitMeant(unit)}` };
  if (unit === "each" && number.includes(".")) {
    return {
      fault: `${typed} is not a whole number of pieces as it is written; write one without a point, as 12 each`,
    };
  }
  return { value: { number: number as DecimalText, unit: unit as Unit } };
}

const OTHER_SPELLINGS: ReadonlyMap<string, string> = new Map(
  Object.entries({
    g: "gram grams gr",
    kg: "kilo kilos kgs",
    oz: "ounce ounces",
    lb: "pound pounds lbs",
    L: "litre liter litres liters",
    "floz-us or floz-uk": "floz",
    "gal-us or gal-uk": "gal gallon gallons",
    each: "pc pcs piece pieces ea unit units",
  }).flatMap(([unit, spellings]) => spellings.split(" ").map((spelling) => [spelling, unit] as const)),
);

function unitMeant(unit: string): string {
  const small = unit.slice(0, 20).toLowerCase();
  const sameLetters = Object.keys(UNITS).find((known) => known.toLowerCase() === small);
  const meant = sameLetters ?? OTHER_SPELLINGS.get(small);
  return `write ${meant ?? `one of ${Object.keys(UNITS).join(", ")}`}`;
}
