import { expect, test } from "vitest";
import { compare, type Fraction, plus, total, whole } from "@/lib/domain/fraction";
import { moneyText } from "@/lib/domain/money";
import { plan } from "@/lib/domain/plan";
import type { ProductCost } from "@/lib/domain/plan-figures";
import { quantity } from "@/lib/domain/quantity";
import { type UnitBreakdown, unitBreakdown } from "@/lib/domain/unit-breakdown";
import { type Parts, workshopOf } from "@/tests/helpers/bench";
import { day, formula, grams, material, offer, percent, pieces, product } from "@/tests/helpers/notation";

const costsOf = (parts: Parts): ProductCost => {
  const [cost] = plan(workshopOf(parts), day("2026-11-25")).costs;
  if (!cost) throw new Error("the workshop has a product");
  return cost;
};
const opened = (cost: ProductCost): UnitBreakdown => unitBreakdown(cost, cost.byBasis.replacement);
/** Micrograms as grams, micro-units as pounds: both are millionths. */
const shown = (value: Fraction | null, decimals = 4): string =>
  value === null ? "not known" : moneyText(value, decimals);

// A jar of 200 g with 2 g over, 24 to a run, 12 g left in the vessel and 4 % lost:
// (24 × 202 + 12) ÷ 0.96 = 5062.5 g, of which 210.9375 g are for one jar.
const jar: Parts = {
  materials: [material("A"), material("B"), material("J", { measure: "count" })],
  formulas: [formula("f", { A: "qs", B: "25" })],
  products: [
    product("p", "f", {
      fill: grams("200"),
      overfill: grams("2"),
      heel: grams("12"),
      processLoss: percent("4"),
      usualRun: quantity(24n),
      packaging: [{ material: "J", amount: pieces(2), spoilage: percent("20") }],
      perRun: [{ material: "J", amount: pieces(12) }],
    }),
  ],
  offers: [offer("a", "A", "100", "1.00"), offer("b", "B", "100", "3.00"), offer("j", "J", "0.000010", "5.00")],
};

test("[NEED-1] what is made for one unit is its fill, its overfill, its share of the heel and what is lost", () => {
  const { made, losses } = opened(costsOf(jar));
  if (losses === null) throw new Error("this jar has losses");
  expect(shown(made)).toBe("210.9375");
  expect([losses.overfill, losses.heel, losses.process, losses.quantity].map((part) => shown(part))).toEqual([
    "2.0000",
    "0.5000",
    "8.4375",
    "10.9375",
  ]);
  expect(compare(total([losses.overfill, losses.heel, losses.process]), losses.quantity)).toBe(0);
  expect(compare(plus(whole(200_000_000n), losses.quantity), made)).toBe(0);
});

test("[COST-1] ingredients as filled and losses add up to the ingredients of the cost, exactly", () => {
  const cost = costsOf(jar);
  const { ingredients, losses } = opened(cost);
  // 150 g at 0.01 and 50 g at 0.03; 10.9375 g at (0.75 × 0.01 + 0.25 × 0.03) = 0.015
  expect(ingredients.map(({ quantity: amount, cost: each }) => `${shown(amount)} ${shown(each)}`)).toEqual([
    "150.0000 1.5000",
    "50.0000 1.5000",
  ]);
  expect(shown(losses?.cost ?? null, 6)).toBe("0.164063");
  const parts = total([...ingredients.flatMap((each) => each.cost ?? []), losses?.cost ?? whole(0n)]);
  expect(compare(parts, cost.byBasis.replacement.ingredients ?? whole(0n))).toBe(0);
});

test("[NEED-2] a material that is on each unit and used by the run has a row for each", () => {
  const { packaging, perRun } = opened(costsOf(jar));
  // 2 ÷ 0.8 = 2.5 pieces at 0.50; 12 ÷ 24 = half a piece
  expect(packaging.map(({ use }) => shown(use.cost))).toEqual(["1.2500"]);
  expect(perRun.map(({ use }) => shown(use.cost))).toEqual(["0.2500"]);
});

test("where all that is made is filled there are no losses", () => {
  const [plain] = jar.products ?? [];
  const cost = costsOf({
    ...jar,
    products: plain ? [{ ...plain, overfill: null, heel: null, processLoss: percent("0") }] : [],
  });
  expect(opened(cost).losses).toBeNull();
});

test("[COST-6] a material without a price leaves its own figures and the losses not known, and no others", () => {
  const { ingredients, losses, packaging } = opened(costsOf({ ...jar, offers: (jar.offers ?? []).slice(1) }));
  expect(ingredients.map(({ cost }) => shown(cost))).toEqual(["not known", "1.5000"]);
  expect(losses).toMatchObject({ cost: null });
  expect(packaging.map(({ use }) => shown(use.cost))).toEqual(["1.2500"]);
});
