/**
 * Job costs and inventory values against OpenStax, Principles of Accounting (2019), volumes 1 and 2. The examples were
 * read in a copy of the book's source; the answers are recomputed.
 */
import { describe, expect, test } from "vitest";
import { compare, ratio, roundedHalfAway, times, whole } from "@/lib/domain/fraction";
import { allocateMoney, type CurrencyCode, moneyText } from "@/lib/domain/money";
import { plan } from "@/lib/domain/plan";
import { priceBook, shelfPrice } from "@/lib/domain/prices";
import { keptToShops, priceToShopsFor } from "@/lib/domain/pricing";
import { quantity } from "@/lib/domain/quantity";
import type { Lot, Settings } from "@/lib/domain/workshop";
import { workshopOf } from "@/tests/helpers/bench";
import {
  day,
  decimal,
  formula,
  grams,
  lot,
  material,
  money,
  offer,
  pieces,
  product,
  stock,
} from "@/tests/helpers/notation";

const today = day("2026-11-25");
const counted = { measure: "count" } as const;

/** What one job costs: pieces of priced materials, and minutes. A gram of something that costs next to nothing fills it. */
function jobCost(job: {
  readonly pieces: readonly { readonly of: string; readonly count: number; readonly price: string }[];
  readonly minutes: string;
  readonly rates: Pick<Settings, "labourPerHour" | "overheadPerHour">;
}): string {
  const { costs } = plan(
    workshopOf({
      settings: job.rates,
      materials: [material("base"), ...job.pieces.map(({ of }) => material(of, counted))],
      formulas: [formula("f", { base: "100" })],
      offers: job.pieces.map(({ of, price }) => offer(`offer-${of}`, of, "0", price, { pack: pieces(1) })),
      lots: [lot("free", "base", "1000", "0")],
      products: [
        product("job", "f", {
          fill: grams("1"),
          usualRun: quantity(1n),
          packaging: job.pieces.map(({ of, count }) => ({
            material: of,
            amount: pieces(count),
            spoilage: quantity(0n),
          })),
          labourMinutesPerUnit: decimal(job.minutes),
        }),
      ],
    }),
    today,
  );
  const cost = costs[0]?.byBasis.replacement;
  if (!cost?.perUnit || !cost.packaging) return "not known";
  return [cost.packaging, cost.labour, cost.overhead, cost.perUnit].map((part) => moneyText(part, 2)).join(" ");
}

describe("[COST-1, COST-2] a job", () => {
  test("vol. 2, sections 4.2 to 4.6, job MAC001: materials 700, labour 66, overhead at 250 % of labour 165, total 931", () => {
    // One hour stands for the job's labour: the book gives two departments' wages, 30 and 36, not their hours.
    expect(
      jobCost({
        pieces: [
          { of: "vinyl", count: 1, price: "300" },
          { of: "black ink", count: 2, price: "50" },
          { of: "red ink", count: 1, price: "60" },
          { of: "gold ink", count: 1, price: "60" },
          { of: "grommets", count: 12, price: "10" },
          { of: "framing wood", count: 40, price: "1.50" },
        ],
        minutes: "60",
        rates: { labourPerHour: money("66"), overheadPerHour: money("165") },
      }),
    ).toBe("700.00 66.00 165.00 931.00");
  });

  test("vol. 2, section 4.6, exercise Job 5: materials 500, wages 1,000 for 20 hours, overhead 10 an hour: 1,700 (the book prints no answer)", () => {
    expect(
      jobCost({
        pieces: [{ of: "material", count: 1, price: "500" }],
        minutes: "1200",
        rates: { labourPerHour: money("50"), overheadPerHour: money("10") },
      }),
    ).toBe("500.00 1000.00 200.00 1700.00");
  });

  test("24 jars of a batch of 18.36, jar and lid 0.62, label 0.08, 1.5 h at 16: 2.465 each (constructed)", () => {
    const { costs } = plan(
      workshopOf({
        settings: { labourPerHour: money("16") },
        materials: [material("cream"), material("jar", counted), material("label", counted)],
        formulas: [formula("f", { cream: "100" })],
        offers: [
          offer("o1", "cream", "1000", "18.36"),
          offer("o2", "jar", "0", "0.62", { pack: pieces(1) }),
          offer("o3", "label", "0", "0.08", { pack: pieces(1) }),
        ],
        products: [
          product("p", "f", {
            fill: grams("41.5"),
            heel: grams("4"),
            usualRun: quantity(24n),
            packaging: ["jar", "label"].map((id) => ({ material: id, amount: pieces(1), spoilage: quantity(0n) })),
            labourMinutesPerRun: decimal("90"),
          }),
        ],
      }),
      today,
    );
    // 24 × 41.5 + 4 = 1,000 g, the whole batch.
    const cost = costs[0]?.byBasis.replacement;
    expect([cost?.ingredients, cost?.perUnit].map((part) => part && moneyText(part, 3))).toEqual(["0.765", "2.465"]);
  });
});

describe("inventory of vol. 1, sections 10.2 and 10.3: 150 at 21, 225 at 27, 210 at 33; sold 120, then 180", () => {
  const bought = (id: string, on: string, count: bigint, value: string): Lot =>
    lot(id, "m", "0", value, { received: day(on), remaining: stock(count) });
  const valueOf = (lots: readonly Lot[], wanted: bigint): bigint => {
    const price = shelfPrice(priceBook([], lots, today), whole(wanted));
    if (!price) throw new Error("no price");
    return roundedHalfAway(times(price.each, whole(wanted)));
  };

  test("[COST-4, LOT-1] first received first out: cost of goods sold 7,200, left 8,955", () => {
    const first = valueOf([bought("1", "2026-07-01", 150n, "3150")], 120n);
    const left = bought("1", "2026-07-01", 30n, "630");
    const second = valueOf([bought("2", "2026-07-10", 225n, "6075"), left], 180n);
    expect([first, second, first + second]).toEqual([2_520_000_000n, 4_680_000_000n, 7_200_000_000n]);
    const rest = [bought("2", "2026-07-10", 75n, "2025"), bought("3", "2026-07-20", 210n, "6930")];
    expect(valueOf(rest, 285n)).toBe(8_955_000_000n);
  });

  test("[COST-5] moving average: 26.294118 after the second purchase, 31.235294 after the third, left 8,902.06", () => {
    const averageOf = (...lots: readonly Lot[]) => {
      const price = priceBook([], lots, today).average;
      return price && moneyText(price.each, 6);
    };
    expect(averageOf(bought("1", "2026-07-01", 30n, "630"), bought("2", "2026-07-10", 225n, "6075"))).toBe("26.294118");
    // 75 left at 6,705 ÷ 255 = 1,972.058824, and 210 at 33.
    const rest = [bought("12", "2026-07-10", 75n, "1972.058824"), bought("3", "2026-07-20", 210n, "6930")];
    expect(averageOf(...rest)).toBe("31.235294");
    expect(moneyText(whole(valueOf(rest, 285n)), 2)).toBe("8902.06");
  });

  test("[MONEY-5] freight of 25 over lines of 120, 60 and 20 by value: 15, 7.50, 2.50 (constructed)", () => {
    const shares = allocateMoney(money("25"), [120n, 60n, 20n]);
    expect(shares.map((share) => moneyText(ratio(share, 1n), 2))).toEqual(["15.00", "7.50", "2.50"]);
  });
});

describe("what is kept of a price", () => {
  test("[PRICE-1] vol. 2, section 4.6: the job sold at 2,000 that cost 931 leaves a gross profit of 1,069", () => {
    expect(moneyText(keptToShops(money("2000"), whole(money("931"))).kept, 2)).toBe("1069.00");
  });

  test("[PRICE-1, PRICE-3] half on top of 60 is 90, a margin of a third; a margin of a half asks 120 (an identity; constructed)", () => {
    const { margin, markup } = keptToShops(money("90"), whole(money("60")));
    expect([compare(margin, ratio(1n, 3n)), markup && compare(markup, ratio(1n, 2n))]).toEqual([0, 0]);
    const pounds = "GBP" as CurrencyCode;
    expect(priceToShopsFor(ratio(1n, 2n), whole(money("60")), pounds)).toEqual({ kind: "price", price: money("120") });
  });
});
