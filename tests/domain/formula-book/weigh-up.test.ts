/**
 * Checks from outside: Hamilton's largest remainder, 100,000 votes for ten seats (from memory; recomputed); USP <41> minimum weight, its text read in a public copy, with
 * its 0.00015 g giving 0.30000 g and 820 divisions as a maker of balances states it; OIML R 76-1 (2006) Table 3, 50 e
 * as the least load of a class II balance with e of 0.1 g or more, read in a copy. q.s. in 800 g is common practice
 * without a source.
 */
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { uspMinimumWeight, weighUp } from "@/lib/domain/formula-book/weigh-up";
import { potsOn, weighUpFromPots, weighUpWithPremixes } from "@/lib/domain/formula-book/weigh-up-premixes";
import { compare, type Fraction, whole } from "@/lib/domain/fraction";
import { type Micrograms, type PartsPerMillion, quantity } from "@/lib/domain/quantity";
import type { Formula, FormulaLine } from "@/lib/domain/workshop";
import { workshopOf } from "@/tests/helpers/bench";
import { day, formula, g, inGrams, lot, material, product } from "@/tests/helpers/notation";

const targets = (of: Formula, batch: Fraction, step: string): readonly string[] =>
  weighUp(of, batch, g(step)).targets.map(({ target, tooCoarse }) => inGrams(target) + (tooCoarse ? " coarse" : ""));

describe("what to weigh", () => {
  test.each([
    {
      rule: "WEIGH-1",
      says: "800 g with water as the rest (common practice)",
      of: { emulsifier: "6", fatty: "4", glycerin: "3", preservative: "1", scent: "0.5", water: "qs" },
      batch: "800",
      step: "0.1",
      weighs: ["48", "32", "24", "8", "4 coarse", "684"],
    },
    {
      rule: "WEIGH-1",
      says: "a batch between steps is rounded up",
      of: { a: "50", b: "qs" },
      batch: "100.01",
      step: "0.1",
      weighs: ["50", "50.1"],
    },
    {
      rule: "WEIGH-1",
      says: "halves go to the even step, and qs takes the rest",
      of: { a: "2.5", b: "3.5", c: "qs" },
      batch: "10",
      step: "0.1",
      weighs: ["0.2 coarse", "0.4 coarse", "9.4"],
    },
    {
      rule: "WEIGH-2",
      says: "without qs the largest remainders take what is left",
      of: { a: "33.3333", b: "33.3333", c: "33.3334" },
      batch: "100",
      step: "1",
      weighs: ["33 coarse", "33 coarse", "34 coarse"],
    },
    {
      rule: "WEIGH-2",
      says: "ties to the earlier line",
      of: { a: "25", b: "25", c: "25", d: "25" },
      batch: "1",
      step: "0.1",
      weighs: ["0.3 coarse", "0.3 coarse", "0.2 coarse", "0.2 coarse"],
    },
    {
      rule: "WEIGH-2",
      says: "ten seats for 100,000 votes (Hamilton's largest remainder)",
      of: { a: "47", b: "16", c: "15.9", d: "12", e: "6", f: "3.1" },
      batch: "10",
      step: "1",
      weighs: ["5 coarse", "2 coarse", "1 coarse", "1 coarse", "1 coarse", "0 coarse"],
    },
    {
      rule: "WEIGH-2",
      says: "where nothing is left for qs, over all lines",
      of: { a: "50.1", b: "49.8", c: "qs" },
      batch: "3",
      step: "1",
      weighs: ["2 coarse", "1 coarse", "0 coarse"],
    },
    {
      rule: "WEIGH-3",
      says: "50 steps are fine enough, 49 are not (OIML R 76-1: 50 e)",
      of: { a: "50", b: "49", c: "1" },
      batch: "10",
      step: "0.1",
      weighs: ["5", "4.9 coarse", "0.1 coarse"],
    },
  ])("[$rule] $says", ({ of, batch, step, weighs }) => {
    expect(targets(formula("f", of), whole(g(batch)), step)).toEqual(weighs);
  });

  test("[WEIGH-4] 1 % of a target, rounded up to the step, may be off", () => {
    const { targets } = weighUp(formula("f", { a: "55.5", b: "qs" }), whole(g("100")), g("0.1"));
    expect(targets.map(({ tolerance }) => inGrams(tolerance))).toEqual(["0.6", "0.5"]);
  });

  test.each([
    { deviation: "0.00015", division: "0.0001", least: "0.3" },
    { deviation: "0", division: "0.01", least: "8.2" },
    { deviation: "0", division: "0.1", least: "82" },
  ])("[WEIGH-5] USP <41>: s $deviation g, d $division g asks for $least g", ({ deviation, division, least }) => {
    expect(compare(uspMinimumWeight(g(deviation), g(division)), whole(g(least)))).toBe(0);
  });
});

/** Percents that are whole parts per million and add up, perhaps with a line that takes what is left. */
const formulas = fc
  .tuple(fc.array(fc.integer({ min: 1, max: 400_000 }), { minLength: 1, maxLength: 25 }), fc.boolean(), fc.nat())
  .map(([weights, withQs, at]): Formula => {
    const all = weights.reduce((sum, weight) => sum + weight, 0);
    const shares = weights.map((weight) => Math.max(1, Math.floor((weight * 1_000_000) / (all + 25))));
    const rest = 1_000_000 - shares.reduce((sum, share) => sum + share, 0);
    const lines = [...shares, rest].map((share, index): FormulaLine => ({
      of: { kind: "material", id: `m${String(index)}` },
      percent: quantity<PartsPerMillion>(BigInt(share)),
      phase: null,
    }));
    const qs = at % lines.length;
    return {
      ...formula("f", {}),
      lines: lines.map((line, index) => (withQs && index === qs ? { ...line, percent: "qs" } : line)),
    };
  });

const STEPS = ["0.000001", "0.001", "0.01", "0.1", "0.2", "0.5", "1", "5"].map((step) => g(step));

test("[WEIGH-1, WEIGH-2] targets are whole steps and come to the batch exactly, for 10,000 formulas and steps", () => {
  fc.assert(
    fc.property(
      formulas,
      fc.constantFrom(...STEPS),
      fc.bigInt({ min: 1n, max: 10n ** 12n }),
      fc.bigInt({ min: 1n, max: 999n }),
      (of, step, over, under) => {
        const { batch, targets } = weighUp(of, { over, under }, step);
        const sum = targets.reduce((all, { target }) => all + target, 0n);
        if (sum !== batch) return false;
        if (targets.some(({ target }) => target < 0n || target % step !== 0n)) return false;
        return batch % step === 0n && batch * under >= over && (batch - step) * under < over;
      },
    ),
    { numRuns: 10_000 },
  );
});

test("[WEIGH-6] a premix that two formulas hold is made once, for both, after all that hold it", () => {
  const formulas = [
    formula("base", { oil: "60", wax: "40" }),
    formula("inner", { "=base": "50", scent: "50" }),
    formula("top", { "=base": "20", "=inner": "10", water: "qs" }),
  ];
  const sheets = weighUpWithPremixes(formulas, "top", whole(g("1000")), g("0.1"));
  expect(
    sheets.map(({ formula, batch, targets }) => [
      formula.id,
      inGrams(batch),
      ...targets.map(({ target }) => inGrams(target)),
    ]),
  ).toEqual([
    ["top", "1000", "200", "100", "700"],
    ["inner", "100", "50", "50"],
    ["base", "250", "150", "100"],
  ]);
});

test("[WEIGH-6] a premix of which less than half a step is asked is not made", () => {
  const formulas = [formula("base", { oil: "60", wax: "40" }), formula("top", { "=base": "0.01", water: "qs" })];
  const step: Micrograms = g("1");
  expect(weighUpWithPremixes(formulas, "top", whole(g("100")), step).map(({ formula }) => formula.id)).toEqual(["top"]);
});

describe("[WEIGH-7] with premixes made ahead", () => {
  const formulas = [
    formula("base", { oil: "60", wax: "40" }),
    formula("inner", { "=base": "50", pot: "10", scent: "40" }),
    formula("top", { "=base": "20", "=inner": "10", water: "qs" }),
  ];
  const upsWith = (held: string, step = "0.1") => {
    const pots = [{ premix: "base", material: "pot", held: g(held) }];
    const { sheets, taken } = weighUpFromPots({ formulas, pots }, "top", whole(g("1000")), g(step));
    return [
      ...taken.map(({ premix, quantity }) => `${inGrams(quantity)} ready of ${premix.id}`),
      ...sheets.map(({ formula: of, batch }) => `${of.id} ${inGrams(batch)}`),
    ].join(", ");
  };

  test.each([
    { held: "0", says: "nothing there: all 250 g of the base are made", is: "top 1000, inner 100, base 250" },
    // Inner weighs 10 g of the pot itself: of 110 g 100 g are left.
    { held: "110", says: "what is over is weighed from there", is: "100 ready of base, top 1000, inner 100, base 150" },
    { held: "999", says: "enough: nothing of it is made", is: "250 ready of base, top 1000, inner 100" },
    { held: "10", says: "no more than the batch weighs of it itself", is: "top 1000, inner 100, base 250" },
    { held: "60.06", says: "in whole steps", is: "50 ready of base, top 1000, inner 100, base 200" },
  ])("$held g: $says", ({ held, is }) => {
    expect(upsWith(held)).toBe(is);
  });

  test("on a day there is what had come by then and is not out of date", () => {
    const workshop = workshopOf({
      materials: ["oil", "pot", "wax"].map((id) => material(id)),
      formulas: formulas.slice(0, 1),
      products: [product("p", "base", { madeInto: "pot" }), product("q", "base")],
      lots: [
        lot("a", "pot", "10", "1", { received: day("2026-11-20") }),
        lot("b", "pot", "20", "1", { received: day("2026-11-20"), expires: day("2026-11-24") }),
        lot("c", "pot", "40", "1", { received: day("2026-11-26") }),
        lot("d", "oil", "80", "1", { received: day("2026-11-20") }),
      ],
    });
    const heldOn = (on: string) => potsOn(workshop, day(on)).map(({ premix, held }) => [premix, inGrams(held)]);
    expect([heldOn("2026-11-24"), heldOn("2026-11-25"), heldOn("2026-11-26")]).toEqual([
      [["base", "30"]],
      [["base", "10"]],
      [["base", "50"]],
    ]);
  });
});
