/** What a formula comes to, premixes opened, also while it is typed. Invented; worked by hand. */
import { expect, test } from "vitest";
import { expansionOf } from "@/lib/domain/formula-book/expansion";
import type { Formula } from "@/lib/domain/workshop";
import { formula } from "@/tests/helpers/notation";

const base = formula("base", { oil: "80", herb: "20" });
const inner = formula("inner", { "=base": "50", water: "50" });

const shown = (of: Formula, ...others: readonly Formula[]) =>
  expansionOf(of, others).map(
    ({ material, fraction: { over, under } }) => `${material} ${String((over * 1000n) / under)}`,
  );

test.each([
  {
    says: "through every path, the most first",
    // 40 % of inner is 20 % of base; with 10 % more base 30 %: 24 % oil and 6 % herb. Water 50 + 20 %.
    of: formula("top", { "=inner": "40", "=base": "10", water: "qs" }),
    is: ["water 700", "oil 240", "herb 60"],
  },
  {
    says: "ties by the material's id",
    of: formula("top", { wax: "25", oil: "25", water: "50" }),
    is: ["water 500", "oil 250", "wax 250"],
  },
  { says: "what is still missing is missing", of: formula("top", { "=base": "10" }), is: ["oil 80", "herb 20"] },
  {
    says: "what is too much is too much",
    of: formula("top", { water: "90", oil: "30" }),
    is: ["water 900", "oil 300"],
  },
  { says: "nothing without a line", of: formula("top", {}), is: [] },
  { says: "nothing where nothing is left for qs", of: formula("top", { water: "qs", oil: "100" }), is: [] },
])("[FORMULA-4] $says", ({ of, is }) => {
  expect(shown(of, base, inner)).toEqual(is);
});

test("[FORMULA-4] nothing with two q.s. lines: nobody knows which takes the rest", () => {
  const two = formula("top", { water: "qs", oil: "10" });
  const [first] = two.lines;
  expect(first && shown({ ...two, lines: [...two.lines, { ...first, of: { kind: "material", id: "wax" } }] })).toEqual(
    [],
  );
});

test("[FORMULA-4] as it is typed, and not as it stands", () => {
  expect(shown(formula("base", { oil: "100" }), base, inner)).toEqual(["oil 1000"]);
});
