/** The demo's figures as seed/WORKED.md works them by hand. Everything in the demo is invented. */
import { describe, expect, test } from "vitest";
import { roundedHalfEven, times, whole } from "@/lib/domain/fraction";
import { BASES } from "@/lib/domain/plan-figures";
import { keptToCustomers, keptToShops } from "@/lib/domain/pricing";
import { inGrams } from "@/tests/helpers/notation";
import { amountText, costOf, costText, dayText, materialOf, readDemo, runOf } from "./demo-workshop";

const demo = readDemo();

test("[PLAN-1] the plan looks from the file's own today to the end of its horizon", () => {
  expect([dayText(demo.plan.today), dayText(demo.plan.lastDay)]).toEqual(["2026-11-25", "2027-01-20"]);
});

describe("what one unit costs", () => {
  test.each([
    { rule: "NEED-1", product: "p-conditioner", bulk: "5062.5" },
    { rule: "NEED-1", product: "p-refill", bulk: "3105.625" },
    { rule: "NEED-1", product: "p-cream", bulk: "2425" },
    { rule: "NEED-1", product: "p-balm", bulk: "1560" },
    { rule: "QTY-4", product: "p-mist", bulk: "2318.56472" },
    { rule: "NEED-1", product: "p-scrub", bulk: "2200" },
  ])("[$rule] the usual run of $product fills a vessel with $bulk g", ({ product, bulk }) => {
    const exact = costOf(demo, product).bulk;
    expect(exact.over % exact.under, "whole micrograms").toBe(0n);
    expect(inGrams(roundedHalfEven(exact))).toBe(bulk);
  });

  const parts = "ingredients packaging labour overhead, replacement shelf average";
  test.each([
    { product: "p-conditioner", worked: "1.0698 0.8673 1.0000 0.2000, 3.1371 3.1413 3.1626" },
    { product: "p-refill", worked: "2.6251 0.6533 2.5000 0.5000, 6.2785 6.2389 6.2911" },
    { product: "p-cream", worked: "0.3571 0.8887 0.8000 0.1600, 2.2058 2.2090 2.2104" },
    { product: "p-balm", worked: "0.7930 0.7854 0.6250 0.1250, 2.3284 2.3153 2.3212" },
    { product: "p-mist", worked: "0.3062 0.9500 0.6250 0.1250, 2.0062 2.0090 2.0090" },
    { product: "p-scrub", worked: "not known 0.8514 1.2500 0.2500, not known not known not known" },
  ])(`[COST-1] $product: ${parts}`, ({ product, worked }) => {
    const { byBasis } = costOf(demo, product);
    const now = byBasis.replacement;
    const first = [now.ingredients, now.packaging, now.labour, now.overhead].map((part) => costText(part)).join(" ");
    expect(`${first}, ${BASES.map((basis) => costText(byBasis[basis].perUnit)).join(" ")}`).toBe(worked);
  });

  test("[PRICE-1, PRICE-2] what is kept of a conditioner, to shops and to customers", () => {
    const { product, byBasis } = costOf(demo, "p-conditioner");
    const { perUnit } = byBasis.replacement;
    if (!perUnit || !product.priceToShops || !product.priceToCustomers) throw new Error("not priced");
    const kept = [
      keptToShops(product.priceToShops, perUnit),
      keptToCustomers(product.priceToCustomers, perUnit, demo.workshop.settings),
    ].map(({ kept, margin }) => `${costText(kept, 5)} ${costText(times(margin, whole(100_000_000n)), 1)} %`);
    expect(kept).toEqual(["3.66293 53.9 %", "7.71043 68.5 %"]);
  });

  test("[COST-6] what cannot be priced is named", () => {
    const { unpriced } = costOf(demo, "p-scrub").byBasis.replacement;
    expect(unpriced.map(({ id }) => id)).toEqual(["m-apricot"]);
  });

  // Per material, to eight decimals: replacement, shelf, average.
  test.each([
    ["COST-3 through the density", "p-conditioner", "m-water", "0.13761020 0.13736250 0.13736250"],
    ["COST-3 the cheaper of two packs", "p-conditioner", "m-glycerin", "0.06328125 0.06855469 0.06855469"],
    ["COST-4 the lot that expires first", "p-conditioner", "m-btms", "0.30375000 0.29109375 0.30515625"],
    ["COST-3 preferred though dearer", "p-conditioner", "m-cetyl", "0.06960938 0.06960938 0.06960938"],
    ["FORMULA-3 from a premix", "p-conditioner", "m-citric", "0.00084375 0.00084375 0.00084375"],
    ["COST-4 the lot that expires first", "p-conditioner", "m-protein", "0.12656250 0.11812500 0.12535714"],
    ["COST-3 a pack in US fluid ounces", "p-conditioner", "m-lavandin", "0.12029422 0.11601563 0.11601563"],
    ["NEED-2 spoilage", "p-conditioner", "m-jar", "0.57142857 0.59183673 0.59183673"],
    ["COST-3 the break at its smallest order", "p-conditioner", "m-lid", "0.17000000 0.17000000 0.17000000"],
    ["COST-1 a per-run item", "p-conditioner", "m-filter", "0.02083333 0.02083333 0.02083333"],
    ["LOT-1 same expiry, received earlier", "p-balm", "m-sunflower", "0.10374645 0.10077600 0.10670400"],
    ["FORMULA-3 from a premix", "p-balm", "m-calendula", "0.27456000 0.27456000 0.27456000"],
    ["COST-3 a pack in pounds", "p-balm", "m-beeswax", "0.21781672 0.20800000 0.20800000"],
    ["NEED-2 packaging by mass", "p-balm", "m-wax", "0.02100000 0.02100000 0.02100000"],
    ["FORMULA-3 from a premix in a premix", "p-cream", "m-sunflower", "0.02419088 0.02349825 0.02488050"],
    ["COST-3 equal prices, the lower id", "p-scrub", "m-sucrose", "0.17737500 0.17737500 0.17737500"],
  ])("[%s] %s: %s", (_, product, material, worked) => {
    const { byBasis } = costOf(demo, product);
    const costs = BASES.map((basis) => byBasis[basis].lines.find((line) => line.material.id === material)?.cost);
    expect(costs.map((cost) => costText(cost ?? null, 8)).join(" ")).toBe(worked);
  });
});

describe("what becomes of a material", () => {
  const columns = "on hand | short on | below safety on | short by | to buy | order by | days late | lost";
  test.each([
    ["m-btms", "900 g | 2026-12-08 | 2026-11-30 | 1833.0125 g | 1342.925 g | 2026-11-24 | 1 | "],
    [
      "m-protein",
      "350 g | 2026-12-21 | 2026-12-21 | 109.8625 g | 78.80625 g | 2026-11-25 | 0 | L14 2026-12-06 17.69375 g",
    ],
    ["m-pot", "81 each | 2026-12-09 | 2026-12-09 | 93 each | 52 each | 2026-11-27 | 0 | "],
    ["m-label", "150 each | 2026-12-14 | 2026-12-08 | 143 each | 111 each | 2026-11-27 | 0 | "],
    ["m-glycerin", "2200 g | 2026-12-21 | 2026-12-14 | 1054.16875 g | 548.7625 g | 2026-12-08 | 0 | "],
    ["m-bottle", "50 each | 2026-12-16 | 2026-12-16 | 15 each | 15 each | 2026-12-04 | 0 | "],
    ["m-beeswax", "1100 g | 2027-01-05 | 2027-01-05 | 194.410257 g | 0 g | 2026-12-23 | 0 | "],
    [
      "m-calendula",
      "330 g | 2027-01-05 | 2027-01-01 | 56.649231 g | 56.649231 g | 2026-12-09 | 0 | L22 2027-01-01 156.36 g, po-1/2 2026-11-26 50 g",
    ],
    ["m-lavandin", "90 g | - | - | 0 g | 0 g | - | - | "],
    ["m-tin", "36 each | - | - | 0 each | 0 each | - | - | "],
    ["m-preservative", "340 g | - | - | 0 g | 0 g | - | - | "],
    ["m-panthenol", "160 g | - | - | 0 g | 0 g | - | - | "],
    ["m-shea", "900 g | - | - | 0 g | 0 g | - | - | "],
    ["m-apricot", "0 g | 2026-12-03 | 2026-11-25 | 270 g | 270 g | - | - | L27 2026-10-01 80 g"],
    ["m-mica", "35 g | - | - | 0 g | 0 g | - | - | L41 2026-11-26 35 g"],
    ["m-strips", "15 each | - | 2026-11-25 | 20 each | 5 each | 2026-11-20 | 5 | L40 2027-01-09 15 each"],
  ])(`[PLAN-5 to PLAN-9] %s: ${columns}`, (id, worked) => {
    const it = materialOf(demo, id);
    const amount = (value: typeof it.onHand) => amountText(it.material, value);
    const lost = it.expiring.map(({ lot, on, quantity }) => `${lot} ${dayText(on)} ${amount(quantity)}`).join(", ");
    const days = [it.orderBy === null ? "-" : dayText(it.orderBy), it.daysLate ?? "-"];
    expect(
      [
        amount(it.onHand),
        dayText(it.shortOn),
        dayText(it.belowSafetyOn),
        amount(it.shortBy),
        amount(it.toBuy),
        ...days,
        lost,
      ].join(" | "),
    ).toBe(worked);
  });

  // Balances at the end of each day on which the material moves, in grams or pieces.
  test.each([
    {
      material: "m-btms",
      balances:
        "11-25 596.25, 11-30 106.1625, 12-08 -197.5875, 12-10 -383.925, 12-14 -839.175, 12-21 -1142.925, 01-06 -1446.675, 01-14 -1633.0125",
    },
    {
      material: "m-protein",
      balances:
        "11-25 299.375, 11-30 217.69375, 12-06 200, 12-08 149.375, 12-10 118.31875, 12-14 42.44375, 12-21 -8.18125, 01-06 -58.80625, 01-14 -89.8625",
    },
    { material: "m-pot", balances: "12-01 40, 12-09 -1, 12-17 -42, 01-12 -83" },
    {
      material: "m-label",
      balances:
        "11-25 104, 11-30 72, 12-03 59, 12-07 38, 12-08 13, 12-10 6, 12-14 -45, 12-16 -66, 12-21 -91, 01-06 -116, 01-14 -123",
    },
    {
      material: "m-glycerin",
      balances:
        "11-25 1946.875, 11-30 1538.46875, 12-01 1441.46875, 12-03 1221.46875, 12-08 968.34375, 12-09 871.34375, 12-10 716.0625, 12-14 116.6875, 12-17 19.6875, 12-21 -233.4375, 01-06 -486.5625, 01-12 -583.5625, 01-14 -738.84375",
    },
    { material: "m-bottle", balances: "11-25 30, 12-07 10, 12-16 -10" },
    { material: "m-tin", balances: "11-26 104, 12-04 72, 12-11 40, 01-05 19" },
    {
      material: "m-calendula",
      balances:
        "11-26 292.56, 12-01 280.92, 12-03 267.72, 12-04 230.28, 12-09 218.64, 12-11 181.2, 12-14 168, 12-17 156.36, 01-01 0, 01-05 -25.009231, 01-12 -36.649231",
    },
  ])("[PLAN-1, PLAN-4, PLAN-5] $material day by day", ({ material, balances }) => {
    const it = materialOf(demo, material);
    const byDay = new Map(it.events.map(({ day, shelf, owed }) => [dayText(day).slice(5), shelf - owed]));
    const shown = (value: bigint) => (it.material.measure === "count" ? value.toString() : inGrams(value));
    expect([...byDay].map(([on, balance]) => `${on} ${shown(balance)}`).join(", ")).toBe(balances);
  });
});

describe("what can be made with what is here", () => {
  test.each([
    ["r01", "yes, 50, m-bottle"],
    ["r02", "yes, 71, m-btms"],
    ["r03", "yes, 106, m-beeswax"],
    ["r04", "yes, 47, m-btms"],
    ["r05", "yes, 9, m-btms"],
    ["r06", "yes, 81, m-pot"],
    ["r07", "no, 0, m-apricot, m-apricot 110 g"],
    ["r08", "yes, 75, m-beeswax"],
    ["r09", "yes, 30, m-bottle"],
    ["r10", "no, 8, m-btms, m-btms 197.5875 g"],
    ["r11", "yes, 40, m-pot"],
    ["r12", "no, 3, m-btms, m-btms 80.175 g"],
    ["r13", "yes, 45, m-beeswax"],
    ["r14", "no, 8, m-btms, m-btms 349.0875 g, m-cetyl 21.54375 g"],
    ["r15", "no, 0, m-apricot, m-apricot 110 g"],
    ["r16", "no, 10, m-bottle, m-bottle 10 each"],
    ["r17", "no, 0, m-pot, m-pot 40 each"],
    ["r18", "no, 8, m-btms, m-btms 197.5875 g"],
    ["r19", "no, 0, m-calendula, m-beeswax 44.410257 g, m-calendula 25.009231 g, m-castor 12.205129 g"],
    ["r20", "no, 8, m-btms, m-btms 197.5875 g"],
    ["r21", "no, 0, m-calendula, m-calendula 11.64 g, m-pot 40 each"],
    ["r22", "no, 3, m-btms, m-btms 80.175 g"],
    ["r23", "no, 8, m-btms, m-btms 197.5875 g"],
  ])("[MAKE-1 to MAKE-3] %s: %s", (id, worked) => {
    const { makeable, mostUnits, limiting, short } = runOf(demo, id);
    const lacking = short.map(({ material, by }) => `${material.id} ${amountText(material, by)}`);
    expect([makeable ? "yes" : "no", mostUnits.toString(), limiting.id, ...lacking].join(", ")).toBe(worked);
  });
});
