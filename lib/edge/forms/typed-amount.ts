/** Amounts, money, percents and whole numbers as a person types them, in the spelling of the file. @rule QTY-2, QTY-3 */
import type { CurrencyCode } from "@/lib/domain/money";
import { UNITS } from "@/lib/domain/quantity";
import type { Outcome } from "@/lib/edge/fields";
import { decimalTyped } from "@/lib/edge/notation";
import { quoted } from "@/lib/edge/shown-value";
import { isTooLong, readTypedNumber, tooLong, withoutEnds } from "./typed-number";

const UNIT_NAMES = Object.keys(UNITS);

/** Other ways to write a unit, in small letters and without spaces, points, hyphens or brackets. */
const UNIT_BY_SPELLING: ReadonlyMap<string, string> = new Map(
  [
    ...UNIT_NAMES.map((unit) => [unit, unit.toLowerCase()] as const),
    ...Object.entries({
      mg: "milligram milligrams",
      g: "gram grams gramme grammes gr gm gms",
      kg: "kilo kilos kgs kilogram kilograms",
      oz: "ounce ounces ozs",
      lb: "pound pounds lbs",
      mL: "millilitre millilitres milliliter milliliters mls",
      L: "litre litres liter liters ltr",
      "floz-us": "usfloz usfluidounce usfluidounces flozus",
      "floz-uk": "ukfloz ukfluidounce ukfluidounces flozuk impfloz",
      "gal-us": "usgal usgallon usgallons galus",
      "gal-uk": "ukgal ukgallon ukgallons galuk impgal",
      each: "pc pcs piece pieces ea unit units",
    }),
  ].flatMap(([unit, spellings]) => spellings.split(" ").map((spelling) => [bare(spelling), unit] as const)),
);

/** Units that two countries fill differently. */
const TWO_SIZED: ReadonlyMap<string, readonly [string, string]> = new Map(
  [
    { spellings: "floz fluidounce fluidounces flozs", units: ["floz-us", "floz-uk"] as const },
    { spellings: "gal gals gallon gallons", units: ["gal-us", "gal-uk"] as const },
  ].flatMap(({ spellings, units }) => spellings.split(" ").map((spelling) => [spelling, units] as const)),
);

function bare(unit: string): string {
  return unit.toLowerCase().replace(/[\s.()-]/g, "");
}

/** `250mL`, `1,5 KG`, `2 US fl oz` as the file writes them: a plain decimal, one space, a unit. */
export function readTypedAmount(typed: string): Outcome<string> {
  if (isTooLong(typed)) return tooLong(typed);
  const text = withoutEnds(typed);
  const letters = text.search(/[^\p{Nd}\s.,'’+−–-]/u);
  const [written, unit] = letters < 0 ? [text, ""] : [text.slice(0, letters), text.slice(letters)];
  const number = readTypedNumber(written);
  if (unit === "" && "value" in number) return { fault: noUnit(number.value) };
  if ("fault" in number) {
    return withoutEnds(written) === ""
      ? { fault: `must be a number and a unit, as 250 g, not ${quoted(text)}` }
      : number;
  }
  const known = UNIT_BY_SPELLING.get(bare(unit));
  if (known !== undefined) return { value: `${number.value} ${known}` };
  return { fault: unitRefusal(number.value, unit) };
}

const MOST_DIGITS_REPEATED = 15;

function noUnit(number: string): string {
  if (!/[1-9]/.test(number)) return `${quoted(number)} is no amount; write one with its unit, as 250 g`;
  const spellings = number.length > MOST_DIGITS_REPEATED ? "250 g" : `${number} g, ${number} mL or ${number} each`;
  return decimalTyped(`${quoted(number)} has no unit; write it with one, as ${spellings}`);
}

function unitRefusal(number: string, unit: string): string {
  const sizes = TWO_SIZED.get(bare(unit));
  if (sizes === undefined) return `unknown unit ${quoted(unit)}; write one of ${UNIT_NAMES.join(", ")}`;
  const [us, uk] = sizes;
  const choice = `write ${number} ${us} (United States) or ${number} ${uk} (United Kingdom)`;
  return us === "floz-us"
    ? `${quoted(unit)} has two sizes, and oz alone is a weight; ${choice}`
    : `${quoted(unit)} has two sizes; ${choice}`;
}

/** The signs that stand for one currency, or for a few. */
const CURRENCIES_BY_SIGN: ReadonlyMap<string, string> = new Map([
  ["€", "EUR"],
  ["£", "GBP EGP FKP GIP LBP SDG SHP SSP SYP"],
  ["¥", "JPY CNY"],
  ["₩", "KRW KPW"],
  ["₹", "INR"],
  ["₺", "TRY"],
  ["₴", "UAH"],
  ["₽", "RUB"],
  [
    "$",
    "USD CAD AUD NZD SGD HKD TWD MXN ARS CLP COP UYU BBD BMD BND BSD BZD CVE DOP FJD GYD JMD KYD LRD NAD SBD SRD TTD XCD",
  ],
]);

/**
 * `£8.40`, `8,40 €` or `8.40` as the plain decimal.
 * @param currency  of the workshop, so that money of another is refused; left out, any sign is let pass
 */
export function readTypedMoney(typed: string, currency?: CurrencyCode): Outcome<string> {
  if (isTooLong(typed)) return tooLong(typed);
  const [, before = "", number = "", after = ""] =
    /^([A-Z]{3}(?=[\s\d])|\p{Sc}?)([^]*?)([A-Z]{3}|\p{Sc}?)$/u.exec(withoutEnds(typed)) ?? [];
  const sign = [before, after].find((mark) => mark !== "");
  if (sign !== undefined && currency !== undefined && isOfAnother(sign, currency)) {
    return { fault: `${quoted(sign)} is not the workshop's currency; write the amount in ${currency}` };
  }
  return readTypedNumber(number);
}

function isOfAnother(sign: string, currency: CurrencyCode): boolean {
  if (/^[A-Z]{3}$/.test(sign)) return sign !== currency;
  const currencies = CURRENCIES_BY_SIGN.get(sign);
  return currencies !== undefined && !currencies.split(" ").includes(currency);
}

/** `2,5 %` or `2.5` as the plain decimal. */
export function readTypedPercent(typed: string): Outcome<string> {
  if (isTooLong(typed)) return tooLong(typed);
  const amount = readTypedAmount(typed);
  if ("value" in amount)
    return { fault: `${amount.value} is an amount; write its percent by weight of the whole, as 5 or 5 %` };
  return readTypedNumber(withoutEnds(typed).replace(/^[%٪％]|\s*[%٪％]$/, ""));
}

/** `q.s.`, `qs to 100`, `ad 100 %`, `to 100`: this line takes what is left. */
export const isRest = (typed: string): boolean =>
  /^\(?(q\.? ?s\.?|quantum satis)?\)?[,;:]?\s*((to|ad|up to)\s*100\s*%?)?$/i.test(withoutEnds(typed)) &&
  withoutEnds(typed) !== "";

/** A percent, or `qs` for what is left. */
export const readTypedPercentOrRest = (typed: string): Outcome<string> =>
  !isTooLong(typed) && isRest(typed) ? { value: "qs" } : readTypedPercent(typed);

/** A whole number, as a number where the file can hold it. */
export function readTypedWholeNumber(typed: string): Outcome<number> {
  const number = readTypedNumber(typed);
  if ("fault" in number) return number;
  const [whole = "", rest = ""] = number.value.split(".");
  if (/[1-9]/.test(rest)) return { fault: `must be a whole number, as 24, not ${quoted(withoutEnds(typed))}` };
  const value = Number(whole);
  return Number.isSafeInteger(value)
    ? { value }
    : { fault: `${quoted(withoutEnds(typed))} is too large; the most is ${String(Number.MAX_SAFE_INTEGER)}` };
}
