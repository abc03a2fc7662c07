/**
 * Margin, markup and break-even against OpenStax, Principles of Accounting, volume 2: Managerial Accounting (2019),
 * sections 3.1 and 3.2, read in a copy of the book's source and recomputed; and the tax inside a price against the
 * table of VAT fractions of HM Revenue & Customs, read in an accountant's copy and recomputed.
 */
import { describe, expect, test } from "vitest";
import { type BreakEven, breakEven } from "@/lib/domain/break-even";
import { compare, dividedBy, minus, plus, ratio, times, whole } from "@/lib/domain/fraction";
import { type CurrencyCode, type MicroUnits, moneyText } from "@/lib/domain/money";
import { type Kept, keptToCustomers, keptToShops, priceToCustomersFor, priceToShopsFor } from "@/lib/domain/pricing";
import { quantity, shareOf } from "@/lib/domain/quantity";
import { money, percent } from "@/tests/helpers/notation";

const sold = (price: string, cost: string): Kept => keptToShops(money(price), whole(money(cost)));
const unitsOf = (result: BreakEven): bigint | null => (result.kind === "units" ? result.units : null);
/** What is left of a month in which so many units were sold. */
const monthText = ({ kept }: Kept, units: bigint, fixed: string): string =>
  moneyText(minus(times(kept, whole(units)), whole(money(fixed))), 0);

describe("OpenStax, section 3.1", () => {
  test.each([
    { says: "the shirt at 15 that costs 10", price: "15", cost: "10", kept: "5.00", margin: ratio(1n, 3n) },
    { says: "the Blue Jay model at 100 that costs 20", price: "100", cost: "20", kept: "80.00", margin: ratio(4n, 5n) },
    { says: "the Cardinal model at 75 that costs 15", price: "75", cost: "15", kept: "60.00", margin: ratio(4n, 5n) },
    { says: "the shirt at 25 that costs 15.50", price: "25", cost: "15.5", kept: "9.50", margin: ratio(19n, 50n) },
  ])("[PRICE-1, PRICE-3] $says: keeps $kept, and that margin asks for that price", ({ price, cost, kept, margin }) => {
    const result = sold(price, cost);
    expect([moneyText(result.kept, 2), compare(result.margin, margin)]).toEqual([kept, 0]);
    expect(priceToShopsFor(margin, whole(money(cost)), "USD" as CurrencyCode)).toEqual({
      kind: "price",
      price: money(price),
    });
  });

  test.each([
    { units: 100n, left: "250" },
    { units: 200n, left: "1200" },
  ])("[PRICE-1] the kiosk of 700 a month that sells $units shirts is left with $left", ({ units, left }) => {
    expect(monthText(sold("25", "15.5"), units, "700")).toBe(left);
  });

  test("[PRICE-1] half on top of the cost of a shirt is a third of its price: markup is not margin (constructed)", () => {
    const { margin, markup } = sold("15", "10");
    expect([compare(margin, ratio(1n, 3n)), markup && compare(markup, ratio(1n, 2n))]).toEqual([0, 0]);
  });
});

describe("OpenStax, section 3.2", () => {
  test.each([
    { says: "birdbaths at 100 that cost 20, 18,000 a month", price: "100", cost: "20", fixed: "18000", units: 225n },
    { says: "with 16,000 to be left over", price: "100", cost: "20", fixed: "34000", units: 425n },
    // 24,000 after 40 % tax are 40,000 before
    { says: "with 24,000 to be left over after tax", price: "100", cost: "20", fixed: "58000", units: 725n },
    { says: "haircuts at 35 that cost 20, 3,000 a month", price: "35", cost: "20", fixed: "3000", units: 200n },
  ])("[PRICE-5] $says: $units", ({ price, cost, fixed, units }) => {
    expect(unitsOf(breakEven(money(fixed), sold(price, cost).kept))).toBe(units);
  });

  test.each([
    { units: 175n, left: "-4000" },
    { units: 225n, left: "0" },
    { units: 300n, left: "6000" },
    { units: 425n, left: "16000" },
  ])("[PRICE-1] $units birdbaths in a month leave $left", ({ units, left }) => {
    expect(monthText(sold("100", "20"), units, "18000")).toBe(left);
  });

  test("[PRICE-5] 18,000 ÷ 80 % is 22,500 of sales, which is 225 units at 100", () => {
    const result = sold("100", "20");
    expect(moneyText(dividedBy(whole(money("18000")), result.margin), 0)).toBe("22500");
    expect(unitsOf(breakEven(money("18000"), result.kept))).toBe(225n);
  });

  test("[PRICE-5] at 30, cost 14.50 and 13,268 a month, 856 units (an exercise posted on a question page; recomputed)", () => {
    // The page prints 25,678 of sales, from a ratio rounded first; 856 units at 30 are 25,680.
    expect(unitsOf(breakEven(money("13268"), sold("30", "14.5").kept))).toBe(856n);
  });
});

describe("the tax inside a price", () => {
  const inside = (price: MicroUnits, tax: string) =>
    keptToCustomers(price, whole(0n), {
      tax: percent(tax),
      paymentFee: percent("0"),
      paymentFeeFixed: quantity<MicroUnits>(0n),
    }).tax;

  test.each([
    { tax: "15", fraction: ratio(3n, 23n), price: "115", is: "15.00" },
    { tax: "17.5", fraction: ratio(7n, 47n), price: "117.50", is: "17.50" },
    { tax: "20", fraction: ratio(1n, 6n), price: "120", is: "20.00" },
    // Not in that table: a twenty-first of 80, as an accountant's page has it.
    { tax: "5", fraction: ratio(1n, 21n), price: "80", is: "3.81" },
  ])("[PRICE-2] at $tax %: $is of $price", ({ tax, fraction, price, is }) => {
    expect(compare(inside(money(price), tax), times(fraction, whole(money(price))))).toBe(0);
    expect(moneyText(inside(money(price), tax), 2)).toBe(is);
  });

  test.each(["15", "17.5", "20", "5"])(
    "[PRICE-4] a cost of 100 is just paid by a price of 100 and %s % of it (an identity; constructed)",
    (tax) => {
      const terms = { tax: percent(tax), paymentFee: percent("0"), paymentFeeFixed: quantity<MicroUnits>(0n) };
      const asked = priceToCustomersFor(whole(0n), whole(money("100")), terms, "GBP" as CurrencyCode);
      const withTax = times(whole(money("100")), plus(whole(1n), shareOf(percent(tax))));
      expect(asked.kind === "price" && compare(whole(asked.price), withTax)).toBe(0);
    },
  );
});
