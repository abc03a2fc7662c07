/** Nested mixtures: premixes opened down to their materials, against published mixture exercises. */
import { describe, expect, test } from "vitest";
import { compositions } from "@/lib/domain/formula";
import { compare, ratio, roundedHalfEven, times, total } from "@/lib/domain/fraction";
import { exactFor, roundedUpFor, usesOf } from "@/lib/domain/needs";
import { quantity, type Units } from "@/lib/domain/quantity";
import type { Formula } from "@/lib/domain/workshop";
import { decimal, formula, grams, inGrams, material, percent, product } from "@/tests/helpers/notation";

/** Grams of each material in so many grams of a formula, the last formula given. */
function gramsIn(batch: string, ...formulas: readonly Formula[]): Record<string, string> {
  const of = formulas.at(-1);
  if (!of) throw new Error("no formula");
  const fractions = [...compositions(formulas)(of.id)];
  expect(compare(total(fractions.map(([, fraction]) => fraction)), ratio(1n, 1n)), "fractions add up to one").toBe(0);
  const [whole, decimals = ""] = batch.split(".");
  const micrograms = BigInt((whole ?? "0") + decimals.padEnd(6, "0"));
  return Object.fromEntries(
    fractions.map(([id, fraction]) => [id, inGrams(roundedHalfEven(times(fraction, ratio(micrograms, 1n))))]),
  );
}

describe("[FORMULA-3] published mixtures, as premixes", () => {
  test("OpenStax Intermediate Algebra, mixture applications: 80 of a 25 % and 120 of a 50 % acid are 200 of 40 % (read in copies)", () => {
    const weak = formula("weak", { acid: "25", water: "75" });
    const strong = formula("strong", { acid: "50", water: "50" });
    const wanted = formula("wanted", { "=weak": "40", "=strong": "60" });
    expect(gramsIn("200", weak, strong, wanted)).toEqual({ acid: "80", water: "120" });
    // 40 % and 60 % of the 200 are the exercise's 80 and 120.
    expect(gramsIn("80", weak)["acid"]).toBe("20");
    expect(gramsIn("120", strong)["acid"]).toBe("60");
  });

  test("the same chapter: 35 ounces of a 20 % cleanser hold 7 of cleanser and 28 of water (read in copies)", () => {
    const cleanser = formula("cleanser", { concentrate: "20", water: "qs" });
    expect(gramsIn("35", cleanser)).toEqual({ concentrate: "7", water: "28" });
  });

  test("a 20 % acid solution used at 2.5 % brings 0.5 % acid and 2 % water (constructed)", () => {
    const acid = formula("acid", { acid: "20", water: "80" });
    const cream = formula("cream", { "=acid": "2.5", water: "qs" });
    expect(gramsIn("1000", acid, cream)).toEqual({ acid: "5", water: "995" });
  });

  test("three premixes deep, each half of the next: an eighth (constructed)", () => {
    const chain = [
      formula("one", { A: "50", B: "50" }),
      formula("two", { "=one": "50", B: "50" }),
      formula("three", { "=two": "50", B: "50" }),
    ];
    expect(gramsIn("800", ...chain)).toEqual({ A: "100", B: "700" });
  });

  test("[FORMULA-1] quantum satis: 85.5 % water in an 800 g batch (common practice, no source)", () => {
    const lines = {
      emulsifier: "6",
      "fatty alcohol": "4",
      glycerin: "3",
      preservative: "1",
      fragrance: "0.5",
      water: "qs",
    };
    expect(gramsIn("800", formula("f", lines))).toEqual({
      emulsifier: "48",
      "fatty alcohol": "32",
      glycerin: "24",
      preservative: "8",
      fragrance: "4",
      water: "684",
    });
  });
});

describe("a conditioner (common practice, no source)", () => {
  const lines = { emulsifier: "7", preservative: "1", water: "91", scent: "qs" };

  test("[FORMULA-1] emulsifier blend 7 %, preservative 1 % and water 91 % leave exactly 1 % for scent", () => {
    expect(gramsIn("100", formula("f", lines))).toEqual({
      emulsifier: "7",
      preservative: "1",
      water: "91",
      scent: "1",
    });
  });

  test("[FORMULA-1, NEED-2] 5 % humectant of a 200 g jar is 10 g", () => {
    const made = formula("f", { humectant: "5", emulsifier: "7", preservative: "1", water: "qs" });
    const jar = product("p", "f", { fill: grams("200") });
    const one = quantity<Units>(1n);
    const used = usesOf(jar, compositions([made])("f"), (id) => material(id));
    const exact = used.map(({ material: { id }, need }) => [id, inGrams(roundedHalfEven(exactFor(need, one)))]);
    expect(Object.fromEntries(exact)).toEqual({ emulsifier: "14", humectant: "10", preservative: "2", water: "174" });
    expect(used.map(({ need }) => roundedUpFor(need, one))).toEqual([
      14_000_000n,
      10_000_000n,
      2_000_000n,
      174_000_000n,
    ]);
  });

  test("[NEED-1] a 1,000 g batch that loses 3 % fills 19 jars of 50 g, not 20 (common practice, no source)", () => {
    const jar = product("p", "f", { fill: grams("50"), processLoss: percent("3"), labourMinutesPerRun: decimal("0") });
    const used = usesOf(jar, compositions([formula("f", { cream: "100" })])("f"), (id) => material(id));
    const needFor = (units: bigint) => used.map(({ need }) => roundedUpFor(need, quantity<Units>(units)))[0] ?? 0n;
    expect(needFor(19n)).toBeLessThanOrEqual(1_000_000_000n);
    expect(needFor(20n)).toBeGreaterThan(1_000_000_000n);
  });
});
