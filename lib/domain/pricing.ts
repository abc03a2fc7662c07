/**
 * What is kept of a price, and the price that a wanted margin asks for. Everything is exact until a price is rounded
 * up to a coin.
 * @rule PRICE-1 to PRICE-4
 */
import { dividedBy, type Fraction, minus, ONE, plus, ratio, roundedUp, times, whole } from "./fraction";
import { type CurrencyCode, decimalsOf, type MicroUnits } from "./money";
import { type PartsPerMillion, quantity, shareOf } from "./quantity";

/** What the workshop's settings take from a price to customers. */
export interface SaleTerms {
  readonly tax: PartsPerMillion;
  readonly paymentFee: PartsPerMillion;
  readonly paymentFeeFixed: MicroUnits;
}

/** A price taken apart: price = tax + fee + cost + kept. Exact micro-units. */
export interface Kept {
  readonly price: MicroUnits;
  /** The tax inside the price; zero to shops, where it comes on top. */
  readonly tax: Fraction;
  readonly fee: Fraction;
  readonly cost: Fraction;
  readonly kept: Fraction;
  /** What is kept as a share of the price without tax. */
  readonly margin: Fraction;
  /** What is kept as a share of the cost; null where it costs nothing. It is not margin. */
  readonly markup: Fraction | null;
}

const NOTHING = whole(0n);

/** What is kept of a price to shops, which is without tax and without fee. @rule PRICE-1 */
export const keptToShops = (price: MicroUnits, perUnit: Fraction): Kept => takenApart(price, NOTHING, NOTHING, perUnit);

/** What is kept of a price to customers, which has tax inside it and on which a fee is paid. @rule PRICE-2 */
export function keptToCustomers(price: MicroUnits, perUnit: Fraction, terms: SaleTerms): Kept {
  const withoutTax = dividedBy(whole(price), plus(ONE, shareOf(terms.tax)));
  const fee = plus(times(shareOf(terms.paymentFee), whole(price)), whole(terms.paymentFeeFixed));
  return takenApart(price, minus(whole(price), withoutTax), fee, perUnit);
}

function takenApart(price: MicroUnits, tax: Fraction, fee: Fraction, cost: Fraction): Kept {
  const withoutTax = minus(whole(price), tax);
  const kept = minus(minus(withoutTax, fee), cost);
  const markup = cost.over === 0n ? null : dividedBy(kept, cost);
  return { price, tax, fee, cost, kept, margin: dividedBy(kept, withoutTax), markup };
}

export type PriceForMargin =
  { readonly kind: "price"; readonly price: MicroUnits } | { readonly kind: "no price reaches it" };

/**
 * The lowest price to shops that keeps the wanted margin, rounded up to the currency's smallest coin.
 * @param margin  as a share of the price: one half is 50 %
 * @rule PRICE-3
 */
export const priceToShopsFor = (margin: Fraction, perUnit: Fraction, currency: CurrencyCode): PriceForMargin =>
  priceFrom(perUnit, minus(ONE, margin), currency);

/**
 * The lowest price to customers, tax included, that keeps the wanted margin after tax and fee, rounded up likewise.
 * @rule PRICE-3, PRICE-4
 */
export function priceToCustomersFor(
  margin: Fraction,
  perUnit: Fraction,
  terms: SaleTerms,
  currency: CurrencyCode,
): PriceForMargin {
  const taxed = plus(ONE, shareOf(terms.tax));
  const left = minus(minus(ONE, margin), times(shareOf(terms.paymentFee), taxed));
  const outlay = plus(perUnit, whole(terms.paymentFeeFixed));
  return priceFrom(times(outlay, taxed), left, currency);
}

/** outlay ÷ what is left of each coin of price, in whole coins and at least one. @rule PRICE-3, PRICE-4 */
function priceFrom(outlay: Fraction, left: Fraction, currency: CurrencyCode): PriceForMargin {
  if (left.over <= 0n) return { kind: "no price reaches it" };
  const coin = 10n ** BigInt(6 - decimalsOf(currency));
  const coins = roundedUp(times(dividedBy(outlay, left), ratio(1n, coin)));
  return { kind: "price", price: quantity<MicroUnits>((coins > 0n ? coins : 1n) * coin) };
}
