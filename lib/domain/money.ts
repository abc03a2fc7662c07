/**
 * Money: whole millionths of the workshop's currency. Amounts are added, allocated and formatted by dinero.js.
 * @rule MONEY-1 to MONEY-6
 */
import { add, allocate, dinero, halfAwayFromZero, toDecimal, toSnapshot, transformScale } from "dinero.js/bigint";
import { type Fraction, roundedHalfAway } from "./fraction";
import type { Quantity } from "./quantity";

/** Money in millionths of the major unit: 1.00 is 1_000_000n. */
export type MicroUnits = Quantity<"micro-unit">;

/** Three capital letters. */
export type CurrencyCode = string & { readonly currency: true };

/** Digits after the point that a micro-unit carries. */
const MICRO = 6n;

/**
 * Minor units of the currencies that have other than two, ISO 4217 table A.1 (list one).
 * The standard's table, not a locale's: a code that it does not list has two.
 */
const DECIMALS_BY_CURRENCY: ReadonlyMap<string, number> = new Map([
  ...[
    "BIF",
    "CLP",
    "DJF",
    "GNF",
    "ISK",
    "JPY",
    "KMF",
    "KRW",
    "PYG",
    "RWF",
    "UGX",
    "UYI",
    "VND",
    "VUV",
    "XAF",
    "XOF",
    "XPF",
  ].map((code) => [code, 0] as const),
  ...["BHD", "IQD", "JOD", "KWD", "LYD", "OMR", "TND"].map((code) => [code, 3] as const),
  ...["CLF", "UYW"].map((code) => [code, 4] as const),
]);

/** Digits after the point of the currency's smallest coin. @rule MONEY-2 */
export const decimalsOf = (currency: CurrencyCode): number => DECIMALS_BY_CURRENCY.get(currency) ?? 2;

const asDinero = (amount: bigint, scale: bigint) =>
  dinero({ amount, scale, currency: { code: "-", base: 10n, exponent: 2n } });

/** The currency's smallest coin, in micro-units. @rule MONEY-2 */
export const coinOf = (currency: CurrencyCode): bigint => 10n ** (MICRO - BigInt(decimalsOf(currency)));

/** The sum of amounts; zero for none. */
export const totalMoney = (amounts: readonly MicroUnits[]): MicroUnits =>
  toSnapshot(amounts.map((amount) => asDinero(amount, MICRO)).reduce(add, asDinero(0n, MICRO))).amount as MicroUnits;

/** An amount split in proportion to weights, the shares adding up to it exactly. At least one weight above zero. @rule MONEY-5 */
export const allocateMoney = (amount: MicroUnits, weights: readonly bigint[]): readonly MicroUnits[] =>
  allocate(
    asDinero(amount, MICRO),
    weights.map((weight) => weight),
  ).map((share) => toSnapshot(share).amount as MicroUnits);

/**
 * An exact amount of micro-units as a decimal with so many digits after the point, rounded once, half away from zero.
 * @rule MONEY-4
 */
export function moneyText(exact: Fraction, decimals: number): string {
  const amount = roundedHalfAway({ over: exact.over * 10n ** BigInt(decimals), under: exact.under * 10n ** MICRO });
  return decimals === 0 ? amount.toString() : toDecimal(asDinero(amount, BigInt(decimals)));
}

/** An amount of money as it is written in a file: the currency's decimals, or as many more as it needs. @rule MONEY-1 */
export function moneyTextInFull(amount: MicroUnits, currency: CurrencyCode): string {
  let decimals = decimalsOf(currency);
  while (decimals < 6 && amount % 10n ** (MICRO - BigInt(decimals)) !== 0n) decimals += 1;
  if (decimals === 0) return (amount / 10n ** MICRO).toString();
  return toDecimal(transformScale(asDinero(amount, MICRO), BigInt(decimals), halfAwayFromZero));
}
