/**
 * How figures are shown on the screens: each is the exact figure, rounded once, with its unit after a no-break space.
 * A figure that is not nothing never reads 0: it gains decimals until it says something.
 * Digits come from whole numbers only; Intl gives the currency's sign and its place, never a rounding.
 */
import { type Day, isoDate, weekday } from "@/lib/domain/calendar";
import { type Fraction, ratio, times, whole } from "@/lib/domain/fraction";
import { type CurrencyCode, decimalsOf, moneyText } from "@/lib/domain/money";
import {
  type Amount,
  type DecimalText,
  decimalValue,
  type Density,
  type Measure,
  type PartsPerMillion,
  type Unit,
} from "@/lib/domain/quantity";
import { massShown } from "./mass-shown";
import {
  asFraction,
  decimalsThatSay,
  type Direction,
  grouped,
  inDecimals,
  isNothing,
  MINUS,
  MOST_DECIMALS,
  NO_BREAK,
  numberShown,
  sizeOf,
  tenTo,
} from "./shown-digits";
import { marks, notation } from "./notation";

const MICROGRAMS_A_GRAM = 1_000_000n;

/** A mass, µg, in grams with so many decimals, to the nearest: the column of a working. */
export const gramsShown = (micrograms: bigint | Fraction, decimals = 2): string =>
  `${numberShown(times(asFraction(micrograms), ratio(1n, MICROGRAMS_A_GRAM)), { least: decimals, most: decimals })}${NO_BREAK}g`;

/** A mass, µg, in grams with all its decimals: the exact figure that is one step away. */
export const massInFull = (micrograms: bigint | Fraction): string =>
  `${numberShown(times(asFraction(micrograms), ratio(1n, MICROGRAMS_A_GRAM)), { least: 0, most: 6 })}${NO_BREAK}g`;

/** Pieces: `120 pieces`, `1 piece`; a share of a piece, as one unit's part of what breaks, with up to four decimals. */
export function piecesShown(pieces: bigint | Fraction, direction: Direction): string {
  const exact = asFraction(pieces);
  const isWhole = exact.over % exact.under === 0n;
  const shown = numberShown(exact, { least: 0, most: isWhole ? 0 : 4 }, direction);
  return `${shown}${NO_BREAK}${shown === "1" ? "piece" : "pieces"}`;
}

/** What is held, needed or lacking of a material in its own measure: µg or pieces. */
export const stockShown = (held: bigint | Fraction, measure: Measure, direction: Direction): string =>
  measure === "mass" ? massShown(held, direction) : piecesShown(held, direction);

/** The same with all its decimals. */
export const stockInFull = (held: bigint | Fraction, measure: Measure): string =>
  measure === "mass" ? massInFull(held) : piecesShown(held, "nearest");

/** A plain count of anything: `1,250`. */
export const countShown = (count: bigint | number): string => grouped(BigInt(count).toString());

const UNIT_WORDS: Readonly<Partial<Record<Unit, string>>> = {
  "floz-us": "US fl oz",
  "gal-us": "US gal",
  "floz-uk": "UK fl oz",
  "gal-uk": "UK gal",
};

/** An amount as it was typed: `1 L`, `16 oz`, `100 pieces`. */
export function amountShown({ number, unit }: Amount): string {
  if (unit === "each") return piecesShown(decimalValue(number), "nearest");
  return `${grouped(number)}${NO_BREAK}${UNIT_WORDS[unit] ?? unit}`;
}

/** A density: `0.920 g/mL`. */
export const densityShown = (density: Density): string =>
  `${numberShown(ratio(density, MICROGRAMS_A_GRAM), { least: 3, most: 6 })}${NO_BREAK}g/mL`;

const MICRO_UNITS = 1_000_000n;

type Pattern = readonly Intl.NumberFormatPart[];

/** Where the currency's sign stands beside a whole number. A workshop has one currency, so that its short sign is enough. */
function currencyPattern(currency: CurrencyCode): Pattern {
  const { locale } = notation();
  const key = `${locale} ${currency}`;
  const known = patternByCurrency.get(key);
  if (known) return known;
  const pattern = new Intl.NumberFormat(locale, {
    style: "currency",
    currency,
    currencyDisplay: "narrowSymbol",
    minimumFractionDigits: 0,
    maximumFractionDigits: 0,
  }).formatToParts(0);
  patternByCurrency.set(key, pattern);
  return pattern;
}

/** To ask for a pattern takes longer than all else in a price, and a page says hundreds of prices. */
const patternByCurrency = new Map<string, Pattern>();

/** Exact micro-units as so many decimals in the workshop's currency, or as many more as keep them from reading 0. */
function currencyShown(micros: Fraction, currency: CurrencyCode, decimals: number): string {
  const size = sizeOf(micros);
  const enough = decimalsThatSay(times(size, ratio(1n, MICRO_UNITS)), decimals, "nearest");
  const plain = moneyText(size, enough);
  const shown = currencyPattern(currency).map(({ type, value }) => (type === "integer" ? grouped(plain) : value));
  return `${micros.over < 0n ? MINUS : ""}${shown.join("")}`;
}

/**
 * Money in the workshop's currency, from exact micro-units, rounded once, half away from zero.
 * @param extraDecimals  beyond the currency's own: 2 for the lines of a working
 * @rule MONEY-2, MONEY-4
 */
export const moneyShown = (exact: bigint | Fraction, currency: CurrencyCode, extraDecimals = 0): string =>
  currencyShown(asFraction(exact), currency, decimalsOf(currency) + extraDecimals);

/** A price as it was typed: the currency's decimals, or as many more as it has. */
export function priceShown(micros: bigint, currency: CurrencyCode): string {
  let extra = 0;
  while (decimalsOf(currency) + extra < 6 && micros % tenTo(6 - decimalsOf(currency) - extra) !== 0n) extra += 1;
  return moneyShown(micros, currency, extra);
}

/** The currency's sign alone, as it stands beside a field. */
export const currencySign = (currency: CurrencyCode): string =>
  currencyPattern(currency).find((part) => part.type === "currency")?.value ?? currency;

/**
 * The price of one gram, or of one piece of what is counted: two decimals beyond the currency's, and more where
 * three significant digits need them.
 * @param each  exact micro-units for one µg or one piece
 */
export function pricePerGramShown(each: Fraction, measure: Measure, currency: CurrencyCode): string {
  const micros = times(each, whole(measure === "mass" ? MICROGRAMS_A_GRAM : 1n));
  const major = times(micros, ratio(1n, MICRO_UNITS));
  let decimals = decimalsOf(currency) + 2;
  while (decimals < MOST_DECIMALS && !isNothing(major) && inDecimals(sizeOf(major), decimals, "nearest") < 100n)
    decimals += 1;
  return currencyShown(micros, currency, decimals);
}

/** A percent of a formula, from parts per million: two decimals, up to four where it has them. */
export const percentShown = (partsPerMillion: PartsPerMillion | Fraction): string =>
  `${numberShown(times(asFraction(partsPerMillion), ratio(1n, 10_000n)), { least: 2, most: 4 })}${NO_BREAK}%`;

/** A rate as it was typed, from parts per million: `20 %`, `1.9 %`. */
export const rateShown = (partsPerMillion: PartsPerMillion): string =>
  `${numberShown(ratio(partsPerMillion, 10_000n), { least: 0, most: 4 })}${NO_BREAK}%`;

/** A share of a whole, one decimal: a margin, or a part of the cost. */
export const shareShown = (share: Fraction): string =>
  `${numberShown(times(share, whole(100n)), { least: 1, most: 1 })}${NO_BREAK}%`;

/** What a division comes to, before it is rounded to whole units: up to four decimals. */
export const quotientShown = (quotient: Fraction): string => numberShown(quotient, { least: 0, most: 4 });

const WEEKDAYS = ["Monday", "Tuesday", "Wednesday", "Thursday", "Friday", "Saturday", "Sunday"] as const;
const MONTHS = [
  "January",
  "February",
  "March",
  "April",
  "May",
  "June",
  "July",
  "August",
  "September",
  "October",
  "November",
  "December",
] as const;

const yearOf = (day: Day): string => isoDate(day).slice(0, 4);
const dayOfMonth = (day: Day): string => String(Number(isoDate(day).slice(8)));
/** The month alone: `October`. */
export const monthShown = (day: Day): string => MONTHS[Number(isoDate(day).slice(5, 7)) - 1] ?? "";
const weekdayName = (day: Day): string => WEEKDAYS[weekday(day) - 1] ?? "";

interface DayParts {
  /** With the day of the week; yes unless told otherwise. */
  readonly weekday?: boolean;
  /** Always, or never, with the year; unless told, only where it is not this one. */
  readonly year?: boolean;
}

/** `9 Oct`, or `Oct 9` where months come first. @rule SHOW-1 */
const dayInMonth = (day: Day, month: string): readonly string[] =>
  marks().monthFirst ? [month, dayOfMonth(day)] : [dayOfMonth(day), month];

/** A day: `Fri 9 Oct`; the year where it is not today's. */
export function dayShown(day: Day, today: Day, parts: DayParts = {}): string {
  const withYear = parts.year ?? yearOf(day) !== yearOf(today);
  return [
    ...(parts.weekday === false ? [] : [weekdayName(day).slice(0, 3)]),
    ...dayInMonth(day, monthShown(day).slice(0, 3)),
    ...(withYear ? [yearOf(day)] : []),
  ].join(NO_BREAK);
}

/** A day in full, for a title: `Tuesday 6 October`; the year where it is not today's. */
export const longDayShown = (day: Day, today: Day): string =>
  [weekdayName(day), ...dayInMonth(day, monthShown(day)), ...(yearOf(day) === yearOf(today) ? [] : [yearOf(day)])].join(
    NO_BREAK,
  );

/** The day of the week alone: `Thursday`. */
export const weekdayShown = (day: Day): string => weekdayName(day);

/** Days as a length of time: `1 day`, `56 days`. */
export const daysShown = (days: number): string => `${countShown(days)}${NO_BREAK}${days === 1 ? "day" : "days"}`;

/** Minutes at the bench: `45 min`, `2 h 45 min`, `7.5 min`; up to two decimals. */
export function minutesShown(minutes: Fraction | DecimalText): string {
  const exact = typeof minutes === "string" ? decimalValue(minutes) : minutes;
  const hundredths = inDecimals(exact, 2, "nearest");
  const hours = hundredths / 6_000n;
  const rest = hundredths - hours * 6_000n;
  const restShown = `${numberShown(hours === 0n && hundredths === 0n ? exact : ratio(rest, 100n), { least: 0, most: 2 })}${NO_BREAK}min`;
  if (hours === 0n) return restShown;
  return rest === 0n ? `${countShown(hours)}${NO_BREAK}h` : `${countShown(hours)}${NO_BREAK}h${NO_BREAK}${restShown}`;
}
