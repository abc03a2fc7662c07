/** Yields and vessels are common practice, without a source; every figure here is worked by hand. */
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { batchesByVessel, batchOfMass, batchOfUnits, batchOfWhatIsLeft } from "@/lib/domain/formula-book/scaling";
import { compositions } from "@/lib/domain/formula";
import { compare, type Fraction, times, whole } from "@/lib/domain/fraction";
import { quantity, type Units } from "@/lib/domain/quantity";
import { decimal, formula, g, grams, percent, product } from "@/tests/helpers/notation";

const units = (count: number): Units => quantity<Units>(BigInt(count));
const inGrams = ({ over, under }: Fraction): number => Number(over) / Number(under) / 1e6;

/** 200 g jars, 1 g over, 12 g heel, 3 % lost: n units ask for (201 n + 12) / 0.97 g. */
const cream = product("cream", "f", {
  fill: grams("200"),
  overfill: grams("1"),
  heel: grams("12"),
  processLoss: percent("3"),
  labourMinutesPerRun: decimal("45"),
  labourMinutesPerUnit: decimal("1.5"),
});

describe("the size of a batch", () => {
  test("[SCALE-1] by units: (201 × 24 + 12) / 0.97 g", () => {
    expect(inGrams(batchOfUnits(cream, units(24)).bulk)).toBeCloseTo(4985.567, 3);
  });

  test("[SCALE-1] by mass: 5 kg hold 24 units, 1000 g less 3 % fill 19 jars of 50 g (common practice)", () => {
    expect(batchOfMass(cream, g("5000")).units).toBe(24n);
    const jars = product("jars", "f", { fill: grams("50"), processLoss: percent("3") });
    expect(batchOfMass(jars, g("1000")).units).toBe(19n);
    expect(batchOfMass(null, g("1000")).units).toBeNull();
  });

  test("[SCALE-2] by what is left of one material, also inside a premix, rounded down", () => {
    const of = compositions([
      formula("acid", { citric: "20", water: "80" }),
      formula("f", { "=acid": "0.5", water: "qs" }),
    ]);
    const scaled = batchOfWhatIsLeft(cream, of("f"), "citric", g("5"));
    // 5 g ÷ (20 % × 0.5 %) = 5000 g
    expect(scaled).toEqual({ kind: "scaled", batch: { units: 24n, bulk: whole(g("5000")) } });
    expect(batchOfWhatIsLeft(cream, of("f"), "wax", g("5"))).toEqual({ kind: "not in it" });
  });

  test("[SCALE-2] what is scaled to never asks for more than is left", () => {
    fc.assert(
      fc.property(fc.bigInt({ min: 0n, max: 10n ** 12n }), fc.integer({ min: 1, max: 999_999 }), (left, ppm) => {
        const share = { over: BigInt(ppm), under: 1_000_000n };
        const scaled = batchOfWhatIsLeft(null, new Map([["m", share]]), "m", quantity(left));
        return scaled.kind === "scaled" && compare(times(scaled.batch.bulk, share), whole(left)) <= 0;
      }),
    );
  });
});

describe("by the vessel", () => {
  test("[SCALE-3, SCALE-4] 24 units in a 3 kg vessel: two batches of 12, each with its heel and its minutes", () => {
    const by = batchesByVessel(cream, units(24), { least: g("500"), most: g("3000") });
    if (by.kind !== "batches") throw new Error(by.kind);
    expect(by.batches.map((batch) => batch.units)).toEqual([12n, 12n]);
    // 2 × (201 × 12 + 12) / 0.97
    expect(inGrams(by.bulk)).toBeCloseTo(4997.938, 3);
    // 2 × 45 + 24 × 1.5
    expect(Number(by.minutes.over) / Number(by.minutes.under)).toBe(126);
  });

  test("[SCALE-3] units that do not share out evenly: the larger batches first", () => {
    const by = batchesByVessel(cream, units(25), { least: g("500"), most: g("2000") });
    expect(by.kind === "batches" && by.batches.map((batch) => batch.units)).toEqual([9n, 8n, 8n]);
  });

  test("[SCALE-3] a vessel that holds all of it takes one batch", () => {
    const by = batchesByVessel(cream, units(24), { least: g("0"), most: g("5000") });
    expect(by.kind === "batches" && by.batches.length).toBe(1);
  });

  test("[SCALE-3] a vessel too small for one unit, and a batch below the least fill", () => {
    expect(batchesByVessel(cream, units(24), { least: g("1"), most: g("200") }).kind).toBe("too small for one");
    const by = batchesByVessel(cream, units(25), { least: g("1800"), most: g("2000") });
    expect(by.kind === "below the least fill" && [by.batches, Math.round(inGrams(by.smallest))]).toEqual([3, 1670]);
  });

  test("[SCALE-3] every batch fits, all units are made, and one batch fewer would not hold them", () => {
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 500 }), fc.integer({ min: 300, max: 9000 }), (count, most) => {
        const by = batchesByVessel(cream, units(count), { least: g("0"), most: g(String(most)) });
        if (by.kind !== "batches") return false;
        const made = by.batches.reduce((sum, batch) => sum + (batch.units ?? 0n), 0n);
        const fits = by.batches.every(({ bulk }) => compare(bulk, whole(g(String(most)))) <= 0);
        const mostUnits = batchOfMass(cream, g(String(most))).units ?? 0n;
        return made === BigInt(count) && fits && mostUnits * BigInt(by.batches.length - 1) < BigInt(count);
      }),
    );
  });
});
