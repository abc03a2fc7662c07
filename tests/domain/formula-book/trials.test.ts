/**
 * Trials. That a cationic emulsifier blend is advised at 5–6 % and very thick at 7 % is common practice, no source;
 * weights, viscosities and prices are invented, shares and costs worked by hand.
 */
import { fc, test as property } from "@fast-check/vitest";
import { describe, expect, test } from "vitest";
import { comparedTrials } from "@/lib/domain/formula-book/compared-trials";
import { takenOf } from "@/lib/domain/ahead-amounts";
import { costOfBatches } from "@/lib/domain/formula-book/cost-of-batches";
import {
  drawsForTrial,
  formulaOfTrial,
  readAt,
  shareIn,
  timesRead,
  type Trial,
  variedIn,
} from "@/lib/domain/formula-book/trials";
import { formulaTotal } from "@/lib/domain/formula-total";
import { moneyText } from "@/lib/domain/money";
import { type Micrograms, quantity, type Units } from "@/lib/domain/quantity";
import type { Lot, Workshop } from "@/lib/domain/workshop";
import { workshopOf } from "@/tests/helpers/bench";
import {
  day,
  decimal,
  formula,
  g,
  grams,
  inGrams,
  lot,
  material,
  offer,
  percent,
  product,
} from "@/tests/helpers/notation";

const today = day("2026-11-25");
const conditioner = formula("f", { water: "qs", blend: "6", scent: "1" });

const trial = (id: string, weighed: Readonly<Record<string, string>>, given: Partial<Trial> = {}): Trial => ({
  id,
  formula: "f",
  name: id,
  day: today,
  notes: null,
  posting: null,
  readings: [],
  lines: Object.entries(weighed).map(([name, amount]) => ({
    of: name.startsWith("=") ? { kind: "formula", id: name.slice(1) } : { kind: "material", id: name },
    weighed: g(amount),
    phase: null,
  })),
  ...given,
});

const five = trial("5 %", { water: "94", blend: "5", scent: "1" });
const six = trial("6 %", { water: "93", blend: "6", scent: "1" });
const seven = trial("7 %", { water: "92.1", blend: "7", scent: "0.99" });

const blend = { kind: "material", id: "blend" } as const;

describe("a trial", () => {
  test("[TRIAL-1] grams as weighed are percents of all that was weighed", () => {
    expect(shareIn(six, blend)).toMatchObject({ over: 6_000_000n, under: 100_000_000n });
    expect(shareIn(six, { kind: "material", id: "wax" }).over).toBe(0n);
  });

  test("[TRIAL-1] as a version, percents come to 100 % and what takes the rest goes on doing so", () => {
    // 92.1 + 7 + 0.99 = 100.09 g: 7 ÷ 100.09 = 6.993705… %, 0.99 ÷ 100.09 = 0.989109… %.
    expect(formulaOfTrial(conditioner, seven)?.lines.map((line) => line.percent)).toEqual([
      "qs",
      percent("6.9937"),
      percent("0.9891"),
    ]);
    expect(formulaOfTrial(conditioner, trial("trace", { water: "1000", blend: "0.0001" }))).toBeNull();
  });

  property.prop([fc.array(fc.bigInt(1_000_000n, 10n ** 12n), { minLength: 1, maxLength: 25 })])(
    "[TRIAL-1] the percents of any trial come to exactly 100",
    (weights) => {
      const lines = weights.map((weighed, at) => ({
        of: { kind: "material", id: `m${String(at)}` } as const,
        weighed: quantity<Micrograms>(weighed),
        phase: null,
      }));
      const made = formulaOfTrial(formula("f", {}), { ...five, lines });
      if (made !== null) expect(formulaTotal(made).result.kind).toBe("whole");
    },
  );

  test("[TRIAL-2] takes what was weighed, premixes opened and rounded up, first expired first out", () => {
    const stock = formula("stock", { gum: "33.3333", water: "qs" });
    const lines = trial("t", { "=stock": "10", water: "1" }).lines;
    // 10 g × 0.333333 = 3.33333 g of gum; 10 g − that + 1 g = 7.66667 g of water.
    const workshop = workshopOf({
      materials: [material("gum"), material("water")],
      formulas: [stock],
      lots: [
        lot("L1", "water", "5", "1", { expires: day("2027-01-01") }),
        lot("L2", "water", "5", "1", { expires: day("2026-12-01") }),
        lot("L3", "gum", "5", "1", { expires: day("2026-11-24") }),
      ],
    });
    const amounts = lines.map(({ of, weighed }) => ({ of, mass: weighed }));
    expect([...takenOf(workshop, amounts, () => 0n)].map(([id, { quantity: taken }]) => [id, taken])).toEqual([
      ["gum", g("3.33333")],
      ["water", g("7.66667")],
    ]);
    const { draws, short } = drawsForTrial(workshop, lines, today);
    expect(draws.map(({ lot: { id }, quantity: drawn }) => [id, drawn])).toEqual([
      ["L2", g("5")],
      ["L1", g("2.66667")],
    ]);
    expect(
      short.map(({ material: { id }, by }) => [id, by]),
      "what is out of date is not there",
    ).toEqual([["gum", g("3.33333")]]);
  });

  test("[TRIAL-2, AHEAD-3] draws what stands of a premix made ahead before it opens the rest", () => {
    const workshop = (...lots: readonly Lot[]) =>
      workshopOf({
        materials: ["gum", "inner", "pot", "water"].map((id) => material(id)),
        formulas: [
          formula("base", { water: "100" }),
          formula("stock", { gum: "20", "=base": "qs" }),
          formula("thick", { "=stock": "50", water: "50" }),
        ],
        products: [product("p", "stock", { madeInto: "pot" }), product("q", "thick", { madeInto: "inner" })],
        lots: [lot("G", "gum", "90", "1"), lot("W", "water", "900", "1"), ...lots],
      });
    const drawn = (made: Workshop, weighed: Readonly<Record<string, string>>, on = today) => {
      const { draws, short } = drawsForTrial(made, trial("t", weighed).lines, on);
      expect(short).toEqual([]);
      return draws.map(({ lot: { id }, quantity: taken }) => `${id} ${inGrams(taken)}`).join(", ");
    };
    const pot = lot("P", "pot", "30", "1", { received: day("2026-11-20") });
    // 100 g of stock: 30 g from the pot; 70 g are opened into 14 g of gum and 56 g of water.
    expect(drawn(workshop(pot), { "=stock": "100" })).toBe("G 14, P 30, W 56");
    expect(drawn(workshop(pot), { "=stock": "30" }), "all of it from the pot").toBe("P 30");
    expect(drawn(workshop(pot), { "=stock": "40", pot: "20" }), "what is weighed of the pot itself goes first").toBe(
      "G 6, P 30, W 24",
    );
    expect(drawn(workshop(pot), { "=stock": "10" }, day("2026-11-19")), "before it was there").toBe("G 2, W 8");
    // Of 60 g thick 20 g stand ready; of the 40 g opened 20 g are stock, which the pot gives.
    expect(drawn(workshop(pot, lot("I", "inner", "20", "1")), { "=thick": "60" })).toBe("I 20, P 20, W 20");
  });

  test("[TRIAL-3] of two readings for one time the later counts", () => {
    const read = { ph: null, appearance: null };
    const readings = [
      { afterMinutes: 1440, viscosity: decimal("9000"), ...read },
      { afterMinutes: 60, viscosity: decimal("5000"), ...read },
      { afterMinutes: 1440, viscosity: decimal("8800"), ...read },
      { afterMinutes: 1440, viscosity: null, ph: decimal("4.6"), appearance: null },
    ];
    const watched = { ...five, readings };
    expect(timesRead([watched])).toEqual([60, 1440]);
    expect(readAt(watched, 1440, "viscosity")).toBe("8800");
    expect(readAt(watched, 60, "ph")).toBeNull();
  });

  test("[TRIAL-4] what was varied is what differs by the greatest multiple, and not what made room for it", () => {
    expect(variedIn([five, six, seven])).toEqual(blend);
    expect(variedIn([five, trial("with gum", { water: "93", blend: "5", scent: "1", gum: "1" })])).toEqual({
      kind: "material",
      id: "gum",
    });
    expect([variedIn([five]), variedIn([six, { ...six, id: "again" }]), variedIn([])]).toEqual([null, null, null]);
  });

  test("[TRIAL-4] a unit costs what the product with the trial's percents costs", () => {
    const workshop = workshopOf({
      materials: [material("water"), material("blend"), material("scent")],
      offers: [offer("o1", "water", "1000", "1"), offer("o2", "blend", "100", "10"), offer("o3", "scent", "10", "10")],
      formulas: [conditioner],
      products: [product("p", "f", { fill: grams("100"), usualRun: quantity<Units>(10n) })],
    });
    const [filled] = workshop.products;
    if (filled === undefined) throw new Error("there is a product");
    const compared = comparedTrials(workshop, today, [five, six], blend, { product: filled, basis: "replacement" });
    // Of 100 g: 94 g × 0.001 + 5 g × 0.1 + 1 g × 1 = 1.594; one percent more of the blend costs 0.099 more.
    expect(compared.map(({ perUnit }) => perUnit && moneyText(perUnit, 4))).toEqual(["1.5940", "1.6930"]);
  });
});

describe("batches", () => {
  test("[SCALE-5] each has a heel and minutes of its own, and the cost of a unit follows", () => {
    const workshop = workshopOf({
      settings: { labourPerHour: quantity(60_000_000n), overheadPerHour: quantity(0n) },
      materials: [material("oil")],
      offers: [offer("o1", "oil", "1000", "10")],
      formulas: [formula("f", { oil: "100" })],
      products: [
        product("p", "f", {
          fill: grams("100"),
          heel: grams("50"),
          labourMinutesPerRun: decimal("10"),
          usualRun: quantity<Units>(8n),
        }),
      ],
    });
    const [filled] = workshop.products;
    if (filled === undefined) throw new Error("there is a product");
    const of = (...sizes: readonly bigint[]) =>
      costOfBatches(
        workshop,
        today,
        filled,
        sizes.map((size) => quantity<Units>(size)),
        "replacement",
      );
    // One batch of 8: (800 + 50) g × 0.01 + 10 min × 1.00 = 18.5, for each 2.3125. Two of 4: 2 × (4.5 + 10) = 29.
    expect([of(8n), of(4n, 4n)].map((cost) => cost && moneyText(cost, 4))).toEqual(["2.3125", "3.6250"]);
    expect(of()).toBeNull();
  });
});
