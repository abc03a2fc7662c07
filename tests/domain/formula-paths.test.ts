import { expect, test } from "vitest";
import { compositions } from "@/lib/domain/formula";
import { formulaPaths, inFormulaOrder } from "@/lib/domain/formula-paths";
import { compare, total, whole } from "@/lib/domain/fraction";
import type { Formula } from "@/lib/domain/workshop";
import { formula } from "@/tests/helpers/notation";

const formulas: readonly Formula[] = [
  formula("cream", { W: "qs", "=oils": "20", "=base": "10", B: "5" }),
  formula("oils", { B: "30", "=base": "50", C: "20" }),
  formula("base", { A: "75", B: "25" }),
];
const compositionOf = compositions(formulas);
const paths = (material: string, most = 10) => formulaPaths(formulas, "cream", material, compositionOf, most);
const shown = (material: string) =>
  paths(material).paths.map(({ steps }) =>
    steps
      .map(
        ({ formula: { id }, percent, takesTheRest }) =>
          `${id} ${String(percent / 10_000n)}${takesTheRest ? " rest" : ""}`,
      )
      .join(" > "),
  );

test.each([
  { material: "W", ways: ["cream 65 rest"] },
  { material: "C", ways: ["cream 20 > oils 20"] },
  { material: "A", ways: ["cream 20 > oils 50 > base 75", "cream 10 > base 75"] },
  { material: "B", ways: ["cream 20 > oils 30", "cream 20 > oils 50 > base 25", "cream 10 > base 25", "cream 5"] },
  { material: "none", ways: [] },
])("[FORMULA-3] the ways of $material into the cream", ({ material, ways }) => {
  expect(shown(material)).toEqual(ways);
});

test("[FORMULA-3] the fractions of all ways add up to the fraction of the material", () => {
  for (const [material, fraction] of compositionOf("cream")) {
    const sum = total(paths(material).paths.map((path) => path.fraction));
    expect(compare(sum, fraction), material).toBe(0);
  }
});

test("only as many ways are followed as were asked for, and it is said that there are more", () => {
  expect(paths("B", 2)).toMatchObject({ paths: { length: 2 }, more: true });
  expect(paths("B", 4)).toMatchObject({ paths: { length: 4 }, more: false });
});

test("[FORMULA-2] eight premixes of many lines are not followed to their end", () => {
  const deep = Array.from({ length: 9 }, (_, level) => ({
    ...formula(`f${String(level)}`, {}),
    lines: Array.from({ length: 100 }, () => ({
      of:
        level === 8
          ? { kind: "material" as const, id: "A" }
          : { kind: "formula" as const, id: `f${String(level + 1)}` },
      percent: 10_000n as Formula["lines"][number]["percent"],
      phase: null,
    })),
  }));
  const found = formulaPaths(deep, "f0", "A", compositions(deep), 6);
  expect(found).toMatchObject({ paths: { length: 6 }, more: true });
  const sameFraction = found.paths.every(({ fraction }) => compare(fraction, { over: 1n, under: 100n ** 9n }) === 0);
  expect([sameFraction, compare(total(found.paths.map(({ fraction }) => fraction)), whole(0n)) > 0]).toEqual([
    true,
    true,
  ]);
});

test("materials in the order in which the formula comes to them", () => {
  expect(inFormulaOrder(formulas, "cream", compositionOf)).toEqual(["W", "B", "A", "C"]);
});
