import { fc, test as property } from "@fast-check/vitest";
import { describe, expect, test } from "vitest";
import { compositions, percentOf } from "@/lib/domain/formula";
import { compare, ONE, total } from "@/lib/domain/fraction";
import type { Formula } from "@/lib/domain/workshop";
import { formula } from "@/tests/helpers/notation";

/** Millionths of the whole, where they come out even. */
const inPpm = (formulas: readonly Formula[], id: string) =>
  Object.fromEntries(
    [...compositions(formulas)(id)].map(([material, { over, under }]) => [
      material,
      Number((over * 1_000_000n) / under),
    ]),
  );

describe("[FORMULA-1] qs takes what is left to 100 %", () => {
  test.each([
    {
      says: "common practice, no source: water to 100",
      lines: { wax: "6", alcohol: "4", humectant: "3", preserver: "1", scent: "0.5", water: "qs" },
      qs: 855_000n,
    },
    { says: "four decimals", lines: { A: "99.9999", B: "qs" }, qs: 1n },
    { says: "alone", lines: { B: "qs" }, qs: 1_000_000n },
  ])("$says", ({ lines, qs }) => {
    const made = formula("f", lines);
    const line = made.lines.find(({ percent }) => percent === "qs");
    expect(line && percentOf(line, made)).toBe(qs);
  });
});

describe("[FORMULA-3] premixes are opened, and a material is summed over every path", () => {
  test("three levels, one material on three paths", () => {
    const formulas = [
      formula("f", { A: "10", B: "40", "=p": "50" }),
      formula("p", { C: "15", B: "25", "=q": "60" }),
      formula("q", { A: "50", C: "50" }),
    ];
    expect(inPpm(formulas, "f")).toEqual({ A: 250_000, B: 525_000, C: 225_000 });
  });

  test("the same premix twice in one formula", () => {
    const formulas = [formula("p", { A: "50", B: "50" }), formula("f", { "=p": "20", A: "qs" })];
    expect(inPpm(formulas, "f")).toEqual({ A: 900_000, B: 100_000 });
  });

  test("eight premixes deep with four decimals stays exact", () => {
    const chain = Array.from({ length: 9 }, (_, level) =>
      level === 8
        ? formula("f8", { A: "33.3333", B: "qs" })
        : formula(`f${String(level)}`, { [`=f${String(level + 1)}`]: "33.3333", B: "qs" }),
    );
    const deepest = compositions(chain)("f0").get("A");
    expect(deepest && compare(deepest, { over: 333_333n ** 9n, under: 1_000_000n ** 9n })).toBe(0);
  });
});

const shares = fc.array(fc.integer({ min: 1, max: 100_000 }), { minLength: 1, maxLength: 9 });
property.prop([fc.array(shares, { minLength: 1, maxLength: 6 })])(
  "[FORMULA-3] the fractions of any formula add up to one, exactly",
  (levels) => {
    const formulas = levels.map((parts, level): Formula => {
      const lines = Object.fromEntries(parts.map((ppm, index) => [`m${String(index)}`, (ppm / 10_000).toFixed(4)]));
      const below = level + 1 < levels.length ? { [`=f${String(level + 1)}`]: "5" } : {};
      return formula(`f${String(level)}`, { ...lines, ...below, rest: "qs" });
    });
    expect(compare(total([...compositions(formulas)("f0").values()]), ONE)).toBe(0);
  },
);
