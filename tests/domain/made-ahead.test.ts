/** Premixes made ahead, worked by hand from the rules. Everything here is invented. */
import { describe, expect, test } from "vitest";
import { drawsFor } from "@/lib/domain/made-run";
import type { Fraction } from "@/lib/domain/fraction";
import { mostFromShelf } from "@/lib/domain/most-from-shelf";
import { needParts } from "@/lib/domain/need-parts";
import { plan, preparedFor } from "@/lib/domain/plan";
import type { Basis, Plan } from "@/lib/domain/plan-figures";
import { quantity, type Stock } from "@/lib/domain/quantity";
import type { Lot, Material, Workshop } from "@/lib/domain/workshop";
import { type Parts, workshopOf } from "@/tests/helpers/bench";
import {
  day,
  formula,
  grams,
  inGrams,
  lot,
  material,
  offer,
  order,
  product,
  run,
  g,
  money,
} from "@/tests/helpers/notation";

const today = day("2026-11-25");

/**
 * Salve is half infused oil and half water; infused oil is 80 % oil and 20 % herb, and made ahead into `inf`. Ten jars of
 * 100 g take 500 g of the oil: 400 g of oil and 100 g of herb where it is made anew.
 */
const bench: Parts = {
  materials: ["herb", "inf", "oil", "water"].map((id) => material(id)),
  formulas: [formula("infused", { oil: "80", herb: "20" }), formula("salve", { "=infused": "50", water: "qs" })],
  products: [product("stock", "infused", { madeInto: "inf" }), product("jar", "salve")],
  runs: [run("r1", "jar", "2026-11-27", 10), run("r2", "jar", "2026-11-30", 10)],
};
const plenty = [lot("O", "oil", "9000", "90"), lot("H", "herb", "9000", "90"), lot("W", "water", "9000", "0")];
const withLots = (...lots: readonly Lot[]): Workshop => workshopOf({ ...bench, lots: [...plenty, ...lots] });

const drawn = (figures: Plan, id: string): string =>
  (figures.runs.find(({ run: each }) => each.id === id)?.draws ?? [])
    .map(
      ({ material: of, drawn: taken, insteadOf }) =>
        `${of.id} ${inGrams(taken)}${insteadOf ? ` for ${insteadOf.premix.id}` : ""}`,
    )
    .join(", ");
const lowest = (figures: Plan, id: string): string => {
  const balances = figures.materials.find(({ material: of }) => of.id === id)?.balances ?? [];
  return inGrams(balances.map(({ balance }) => balance).reduce((low, each) => (each < low ? each : low)));
};

describe("what a batch draws", () => {
  test.each([
    { says: "as if not made ahead, with none of it", lots: [], r1: "herb 100, oil 400, water 500" },
    {
      says: "all of it where there is enough",
      lots: [lot("I", "inf", "500", "5")],
      r1: "inf 500 for infused, water 500",
    },
    {
      says: "what is there, and the rest opened",
      lots: [lot("I", "inf", "200", "5")],
      r1: "herb 60, inf 200 for infused, oil 240, water 500",
    },
    {
      says: "nothing that is out of date on the day",
      lots: [lot("I", "inf", "500", "5", { expires: day("2026-11-26") })],
      r1: "herb 100, oil 400, water 500",
    },
  ])("[AHEAD-3] $says", ({ lots, r1 }) => {
    expect(drawn(plan(withLots(...lots), today), "r1")).toBe(r1);
  });

  test("[AHEAD-3, LOT-1] first expired first out, over several lots", () => {
    const workshop = withLots(
      lot("I1", "inf", "300", "3"),
      lot("I2", "inf", "400", "4", { expires: day("2026-12-24") }),
    );
    const [first] = workshop.runs;
    const draws = first ? drawsFor(workshop, first, today) : [];
    expect(draws.map(({ lot: { id }, quantity: taken }) => `${id} ${inGrams(taken)}`)).toEqual([
      "I2 400",
      "I1 100",
      "W 500",
    ]);
  });

  test("[AHEAD-3] what the batch needs of the material anyway goes first", () => {
    const workshop = workshopOf({
      ...bench,
      formulas: [
        formula("infused", { oil: "80", herb: "20" }),
        formula("salve", { "=infused": "50", inf: "20", water: "qs" }),
      ],
      lots: [...plenty, lot("I", "inf", "250", "1")],
    });
    // 200 g as itself; of 500 g of the premix 50 g are left to draw, 450 g are opened.
    expect(drawn(plan(workshop, today), "r1")).toBe("herb 90, inf 250 for infused, oil 360, water 300");
  });

  test("[AHEAD-3] outermost first: what is drawn of a premix opens nothing of those in it", () => {
    const nested = workshopOf({
      materials: ["base", "herb", "inf", "oil", "water"].map((id) => material(id)),
      formulas: [
        formula("infused", { oil: "80", herb: "20" }),
        formula("mixed", { "=infused": "40", water: "60" }),
        formula("salve", { "=mixed": "50", "=infused": "10", water: "40" }),
      ],
      products: [
        product("a", "infused", { madeInto: "inf" }),
        product("b", "mixed", { madeInto: "base" }),
        product("jar", "salve"),
      ],
      runs: [run("r1", "jar", "2026-11-27", 10)],
      lots: [...plenty, lot("B", "base", "300", "1"), lot("I", "inf", "100", "1")],
    });
    // Of 500 g mixed 300 g are drawn and 200 g opened: 80 g infused and 120 g water. Infused is then 80 + 100 g, of
    // which 100 g are drawn and 80 g opened: 64 g oil and 16 g herb. Water: 400 + 120 g.
    expect(drawn(plan(nested, today), "r1")).toBe(
      "base 300 for mixed, herb 16, inf 100 for infused, oil 64, water 520",
    );
  });

  test("[AHEAD-3] the need of the premix is rounded up by itself, and what is over opens nothing", () => {
    const tiny = workshopOf({
      ...bench,
      products: [
        product("stock", "infused", { madeInto: "inf" }),
        product("jar", "salve", { fill: grams("0.000001") }),
      ],
      runs: [run("r1", "jar", "2026-11-27", 1)],
      lots: [...plenty, lot("I", "inf", "1", "1")],
    });
    // Half a µg of the premix: one µg is drawn.
    expect(drawn(plan(tiny, today), "r1")).toBe("inf 0.000001 for infused, water 0.000001");
  });
});

describe("in their turn", () => {
  test("[AHEAD-4, AHEAD-5] the first run takes it, the second what is left, and nothing of it is owed", () => {
    const figures = plan(withLots(lot("I", "inf", "600", "6")), today);
    expect(drawn(figures, "r1")).toBe("inf 500 for infused, water 500");
    expect(drawn(figures, "r2")).toBe("herb 80, inf 100 for infused, oil 320, water 500");
    expect(["inf", "oil", "herb"].map((id) => lowest(figures, id))).toEqual(["0", "8680", "8920"]);
  });

  test("[AHEAD-5] what comes in before a run is drawn by it; a planned run that makes it brings nothing", () => {
    const workshop = workshopOf({
      ...bench,
      lots: plenty,
      runs: [run("a", "stock", "2026-11-26", 20), ...(bench.runs ?? [])],
      orders: [order("po", "2026-11-28", [{ material: "inf", quantity: g("150"), cost: money("1"), expires: null }])],
    });
    const figures = plan(workshop, today);
    expect(drawn(figures, "r1")).toBe("herb 100, oil 400, water 500");
    expect(drawn(figures, "r2")).toBe("herb 70, inf 150 for infused, oil 280, water 500");
    // 9000 − 1600 for the stock − 400 − 280
    expect(lowest(figures, "oil")).toBe("6720");
  });

  test("[AHEAD-5] an ordinary need of it is owed, and what comes settles that first", () => {
    const workshop = workshopOf({
      ...bench,
      formulas: [...(bench.formulas ?? []), formula("plain", { inf: "100" })],
      products: [...(bench.products ?? []), product("oil jar", "plain")],
      runs: [run("r0", "oil jar", "2026-11-26", 1), run("r1", "jar", "2026-11-30", 10)],
      lots: plenty,
      orders: [order("po", "2026-11-27", [{ material: "inf", quantity: g("150"), cost: money("1"), expires: null }])],
    });
    const figures = plan(workshop, today);
    // 100 g were owed; of the 50 g left r1 draws all, and 450 g are opened.
    expect([lowest(figures, "inf"), lowest(figures, "oil")]).toEqual(["-100", "8640"]);
  });

  test("[AHEAD-4] the most is what the shelf allows with it drawn first; the limit is the lowest id that one more lacks", () => {
    const workshop = workshopOf({
      ...bench,
      lots: [
        lot("O", "oil", "240", "1"),
        lot("H", "herb", "60", "1"),
        lot("W", "water", "9000", "0"),
        lot("I", "inf", "200", "1"),
      ],
    });
    const [first, second] = plan(workshop, today).runs;
    expect([first?.makeable, first?.mostUnits, first?.limiting.id]).toEqual([true, 10n, "herb"]);
    expect([
      second?.makeable,
      second?.mostUnits,
      second?.short.map(({ material: { id }, by }) => `${id} ${inGrams(by)}`),
    ]).toEqual([false, 0n, ["herb 100", "oil 400"]]);
    const most = mostFromShelf(workshop.products, preparedFor(workshop, today), today);
    expect(
      most.map(({ product: of, mostUnits, limiting }) => `${of.id} ${mostUnits.toString()} ${limiting.id}`),
    ).toEqual(["stock 3 herb", "jar 10 herb"]);
  });
});

test("[AHEAD-3] a run opens to what the pot gives and what is made new, and its materials to their shares of both", () => {
  const workshop = withLots(lot("I", "inf", "200", "5"));
  const [toJudge] = preparedFor(workshop, today).runs;
  const outlook = plan(workshop, today).runs.find(({ run: { id } }) => id === "r1");
  if (toJudge === undefined || outlook === undefined) throw new Error("no run");
  const thereOf = ({ id }: Material): Stock =>
    outlook.draws.find((draw) => draw.material.id === id)?.there ?? quantity(0n);
  const { bulk, premixes, partsOf } = needParts(toJudge, thereOf);
  const shown = (exact: Fraction): string => inGrams(exact.over / exact.under);
  expect(shown(bulk)).toBe("1000");
  // Half of 1000 g; 200 g stand there, so that 300 g are made new: 80 % of them oil, 20 % herb.
  expect(premixes.map(({ premix, need, given, anew }) => [premix.id, ...[need, given, anew].map(shown)])).toEqual([
    ["infused", "500", "200", "300"],
  ]);
  const parts = (id: string) =>
    partsOf(workshop.materials.find((each) => each.id === id) as Material).map((part) =>
      part.kind === "share"
        ? `${shown(part.quantity)} of ${part.of?.id ?? "the batch"}'s ${shown(part.mass)}`
        : `${shown(part.quantity)} ${part.kind}`,
    );
  expect(parts("oil")).toEqual(["240 of infused's 300"]);
  expect(parts("herb")).toEqual(["60 of infused's 300"]);
  expect(parts("inf")).toEqual(["200 instead"]);
  expect(parts("water")).toEqual(["500 of the batch's 1000"]);
});

describe("what one unit costs", () => {
  const workshop = workshopOf({
    ...bench,
    offers: [offer("o", "oil", "1000", "10"), offer("h", "herb", "100", "5"), offer("w", "water", "1000", "0.1")],
    lots: [...plenty, lot("I", "inf", "200", "8")],
  });
  const lines = (basis: Basis): readonly string[] =>
    (plan(workshop, today).costs[1]?.byBasis[basis].lines ?? []).map(
      ({ material: { id }, quantity: each, cost }) =>
        `${id} ${inGrams(each.over / each.under)} ${cost === null ? "?" : inGrams(cost.over / cost.under)}`,
    );

  test("[AHEAD-6] replacement and average price the premix as opened", () => {
    expect(lines("replacement")).toEqual(["herb 10 0.5", "oil 40 0.4", "water 50 0.005"]);
    expect(lines("average")).toEqual(["herb 10 0.1", "oil 40 0.4", "water 50 0"]);
  });

  test("[AHEAD-6] shelf prices the lots that the usual run would draw, and what is opened", () => {
    // A usual run of ten draws all 200 g for 8.00, so one unit 20 g for 0.80; 60 g of herb at 0.01 and 240 g of oil.
    expect(lines("shelf")).toEqual(["herb 6 0.06", "inf 20 0.8", "oil 24 0.24", "water 50 0"]);
  });

  test("[AHEAD-6, COST-6] a material that nothing prices and nothing needs leaves the shelf's cost known", () => {
    const spared = workshopOf({ ...bench, lots: [lot("W", "water", "9000", "1"), lot("I", "inf", "900", "9")] });
    const cost = plan(spared, today).costs[1]?.byBasis;
    expect(cost?.replacement.unpriced.map(({ id }) => id)).toEqual(["herb", "oil"]);
    expect(cost?.shelf.unpriced).toEqual([]);
  });
});

test("[AHEAD-1] a product that makes nothing ahead leaves the plan without openings", () => {
  const plain = workshopOf({ ...bench, products: [product("jar", "salve", { usualRun: quantity(1n) })] });
  const { ahead, openedByProduct } = preparedFor(plain, today);
  expect([ahead, openedByProduct.size]).toEqual([null, 0]);
});
