import { describe, expect, test } from "vitest";
import { type Fraction, plus, ratio, whole } from "@/lib/domain/fraction";
import type { CurrencyCode, MicroUnits } from "@/lib/domain/money";
import {
  keptToCustomers,
  keptToShops,
  type PriceForMargin,
  priceToCustomersFor,
  priceToShopsFor,
  type SaleTerms,
} from "@/lib/domain/pricing";
import type { PartsPerMillion } from "@/lib/domain/quantity";

const micros = (amount: bigint): MicroUnits => amount as MicroUnits;
const percent = (ppm: bigint): PartsPerMillion => ppm as PartsPerMillion;
const terms = (tax: bigint, fee: bigint, fixed: bigint): SaleTerms => ({
  tax: percent(tax),
  paymentFee: percent(fee),
  paymentFeeFixed: micros(fixed),
});
const highestCommonFactor = (a: bigint, b: bigint): bigint => (b === 0n ? a : highestCommonFactor(b, a % b));
const shown = (value: Fraction | null): string => {
  if (value === null) return "none";
  const { over, under } = value;
  const by = highestCommonFactor(over < 0n ? -over : over, under);
  return under === by ? (over / by).toString() : `${(over / by).toString()}/${(under / by).toString()}`;
};
const priceOf = (result: PriceForMargin): string => (result.kind === "price" ? result.price.toString() : result.kind);
const pounds = "GBP" as CurrencyCode;

describe("what is kept of a price", () => {
  test.each([
    // 7.50 − 3.8425 = 3.6575; 3.6575 ÷ 7.50; 3.6575 ÷ 3.8425
    { price: 7_500_000n, cost: whole(3_842_500n), kept: "3657500", margin: "1463/3000", markup: "1463/1537" },
    { price: 2_000_000n, cost: whole(2_500_000n), kept: "-500000", margin: "-1/4", markup: "-1/5" },
    { price: 1_000_000n, cost: whole(0n), kept: "1000000", margin: "1", markup: "none" },
    { price: 1_000_000n, cost: ratio(1_000_000n, 3n), kept: "2000000/3", margin: "2/3", markup: "2" },
  ])("[PRICE-1] to shops at $price, keeps $kept", ({ price, cost, kept, margin, markup }) => {
    const result = keptToShops(micros(price), cost);
    expect([shown(result.kept), shown(result.margin), shown(result.markup)]).toEqual([kept, margin, markup]);
    expect([shown(result.tax), shown(result.fee)]).toEqual(["0", "0"]);
  });

  test.each([
    // 15.00: 20 % tax is 2.50 of it; 1.9 % of 15.00 is 0.285; 0.20 fixed; 12.50 − 0.485 − 3.00 = 9.015, of 12.50
    { terms: terms(200_000n, 19_000n, 200_000n), tax: "2500000", fee: "485000", kept: "9015000", margin: "1803/2500" },
    // no tax and no fee: as to shops
    { terms: terms(0n, 0n, 0n), tax: "0", fee: "0", kept: "12000000", margin: "4/5" },
    // 7 % tax does not come out even: 15 − 15 ÷ 1.07
    { terms: terms(70_000n, 0n, 0n), tax: "105000000/107", fee: "0", kept: "1179000000/107", margin: "393/500" },
  ])("[PRICE-2] to customers at 15.00, cost 3.00: keeps $kept", ({ terms, tax, fee, kept, margin }) => {
    const result = keptToCustomers(micros(15_000_000n), whole(3_000_000n), terms);
    expect([shown(result.tax), shown(result.fee), shown(result.kept), shown(result.margin)]).toEqual([
      tax,
      fee,
      kept,
      margin,
    ]);
    const parts = [result.tax, result.fee, result.cost, result.kept].reduce(plus);
    expect(shown(parts)).toBe("15000000");
  });
});

describe("the price for a wanted margin", () => {
  test.each([
    // 3.8425 ÷ 0.55 = 6.98636…
    { cost: whole(3_842_500n), margin: ratio(45n, 100n), currency: "GBP", price: "6990000" },
    // an exact price stays as it is
    { cost: whole(3_000_000n), margin: ratio(1n, 2n), currency: "GBP", price: "6000000" },
    { cost: whole(3_000_001n), margin: ratio(1n, 2n), currency: "GBP", price: "6010000" },
    { cost: whole(100_100_000n), margin: ratio(0n, 1n), currency: "JPY", price: "101000000" },
    { cost: whole(1_000_100n), margin: ratio(0n, 1n), currency: "KWD", price: "1001000" },
    { cost: whole(1_000_010n), margin: ratio(0n, 1n), currency: "UYW", price: "1000100" },
    { cost: whole(0n), margin: ratio(1n, 2n), currency: "GBP", price: "10000" },
    { cost: whole(3_000_000n), margin: ratio(1n, 1n), currency: "GBP", price: "no price reaches it" },
  ])("[PRICE-3] to shops in $currency: $price", ({ cost, margin, currency, price }) => {
    expect(priceOf(priceToShopsFor(margin, cost, currency as CurrencyCode))).toBe(price);
  });

  test.each([
    // (3.00 + 0.20) ÷ (1 − 0.5 − 0.019 × 1.2) × 1.2 = 8.04694…
    { margin: ratio(1n, 2n), price: "8050000" },
    // 1 − 0.9772 − 0.0228 = 0: nothing is left of any price
    { margin: ratio(9772n, 10_000n), price: "no price reaches it" },
    { margin: ratio(99n, 100n), price: "no price reaches it" },
  ])("[PRICE-4] to customers: $price", ({ margin, price }) => {
    const result = priceToCustomersFor(margin, whole(3_000_000n), terms(200_000n, 19_000n, 200_000n), pounds);
    expect(priceOf(result)).toBe(price);
  });

  test("[PRICE-3] the price reaches the margin, and one coin less does not", () => {
    const cost = ratio(38_425_000n, 11n);
    const sale = terms(175_000n, 29_000n, 300_000n);
    for (let wanted = 0n; wanted < 95n; wanted += 5n) {
      const margin = ratio(wanted, 100n);
      const result = priceToCustomersFor(margin, cost, sale, pounds);
      if (result.kind !== "price") throw new Error(`no price for ${wanted.toString()} %`);
      const reached = (price: bigint) => {
        const { margin: got } = keptToCustomers(micros(price), cost, sale);
        return got.over * margin.under >= margin.over * got.under;
      };
      expect([reached(result.price), reached(result.price - 10_000n)]).toEqual([true, false]);
    }
  });
});
