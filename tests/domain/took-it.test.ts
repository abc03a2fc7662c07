/** Cases worked by hand from the rule; no published source. One unit of a product is 100 g of its material. */
import { fc, test as law } from "@fast-check/vitest";
import { expect, test } from "vitest";
import { daysAfter } from "@/lib/domain/calendar";
import { judgeRuns } from "@/lib/domain/feasibility";
import { plan, preparedFor } from "@/lib/domain/plan";
import type { RunOutlook } from "@/lib/domain/plan-figures";
import { tookIt } from "@/lib/domain/took-it";
import type { Run } from "@/lib/domain/workshop";
import { type Parts, workshopOf } from "@/tests/helpers/bench";
import { day, formula, lot, material, percent, pieces, product, run, stock } from "@/tests/helpers/notation";

const today = day("2026-11-25");

const took = (parts: Parts, id: string): string => {
  const workshop = workshopOf(parts);
  const { runs, stock: onShelf } = preparedFor(workshop, today);
  const outlooks = new Map(plan(workshop, today).runs.map((outlook) => [outlook.run, outlook]));
  const of = (each: (typeof workshop.runs)[number]) => {
    const outlook = outlooks.get(each);
    if (!outlook) throw new Error(`no outlook for ${each.id}`);
    return outlook;
  };
  const short = [...outlooks.values()].find((outlook) => outlook.run.id === id);
  if (!short || short.makeable) throw new Error(`${id} is not short`);
  const found = tookIt(short, runs, of, onShelf);
  return found === null ? "nobody" : `${found.run.id}${found.enough ? "" : ", which drew most"}`;
};

const bench: Parts = {
  materials: [material("A"), material("B")],
  formulas: [formula("a", { A: "100" }), formula("b", { B: "100" }), formula("ab", { A: "50", B: "50" })],
  products: [product("pa", "a"), product("pb", "b"), product("pab", "ab")],
};

test("[MAKE-4] the nearest earlier run without which it could be made, not the first that drew", () => {
  const runs = [run("r1", "pa", "2026-11-26", 3), run("r2", "pa", "2026-11-27", 3), run("r3", "pa", "2026-11-28", 5)];
  expect(took({ ...bench, lots: [lot("a", "A", "1000", "1")], runs }, "r3")).toBe("r2");
});

test("[MAKE-4] a nearer run that took too little is passed over", () => {
  const runs = [run("r1", "pa", "2026-11-26", 4), run("r2", "pa", "2026-11-27", 1), run("r3", "pa", "2026-11-28", 8)];
  expect(took({ ...bench, lots: [lot("a", "A", "1000", "1")], runs }, "r3")).toBe("r1");
});

test("[MAKE-4] where no one run is enough, the one that drew most of what is short", () => {
  const runs = [run("r1", "pa", "2026-11-26", 5), run("r2", "pa", "2026-11-27", 3), run("r3", "pa", "2026-11-28", 9)];
  expect(took({ ...bench, lots: [lot("a", "A", "800", "1")], runs }, "r3")).toBe("r1, which drew most");
});

test("[MAKE-4] of two that drew as much, the nearer", () => {
  const runs = [run("r1", "pa", "2026-11-26", 3), run("r2", "pa", "2026-11-27", 3), run("r3", "pa", "2026-11-28", 9)];
  expect(took({ ...bench, lots: [lot("a", "A", "800", "1")], runs }, "r3")).toBe("r2, which drew most");
});

test("[MAKE-4] nobody, where no earlier run drew any of it", () => {
  const runs = [run("r1", "pb", "2026-11-26", 1), run("r2", "pa", "2026-11-27", 9), run("r3", "pa", "2026-11-28", 1)];
  const lots = [lot("a", "A", "800", "1"), lot("b", "B", "100", "1")];
  expect(took({ ...bench, lots, runs }, "r2")).toBe("nobody");
});

test("[MAKE-4] a run that drew none of it, but whose absence lets another take what two runs in between draw", () => {
  const parts: Parts = {
    materials: [material("A"), material("B"), material("C")],
    formulas: [...(bench.formulas ?? []), formula("c", { C: "100" }), formula("ac", { A: "50", C: "50" })],
    products: [...(bench.products ?? []), product("pc", "c"), product("pac", "ac")],
    lots: [lot("a", "A", "500", "1"), lot("b", "B", "500", "1"), lot("c", "C", "500", "1")],
  };
  // r1 takes all C, so r2 (500 g of A and of C) is short. r3 and r4 take 200 g of A and of B each: r5 finds 100 g of B.
  // Without r3, or without r4, it finds 300 g. Without r1, r2 takes all A, and neither r3 nor r4 can be made.
  const runs = [
    run("r1", "pc", "2026-11-26", 5),
    run("r2", "pac", "2026-11-27", 10),
    run("r3", "pab", "2026-11-28", 4),
    run("r4", "pab", "2026-11-29", 4),
    run("r5", "pb", "2026-11-30", 5),
  ];
  expect(took({ ...parts, runs }, "r5")).toBe("r1");
});

test("[MAKE-4] grams and pieces are weighed against what is short of each", () => {
  const parts: Parts = {
    materials: [material("A"), material("J", { measure: "count" })],
    formulas: [formula("a", { A: "100" })],
    products: [
      product("jar", "a", { packaging: [{ material: "J", amount: pieces(1), spoilage: percent("0") }] }),
      product("bulk", "a"),
    ],
    lots: [lot("a", "A", "2000", "1"), { ...lot("j", "J", "0", "1"), remaining: stock(12n) }],
  };
  // r3 needs 30 × 100 g and 30 jars: 2000 − 600 − 900 leaves 500 g (short 2500 g), 12 − 9 leaves 3 jars (short 27).
  // r1 drew 600 g of 2500 g: 0.24. r2 drew 900 g of 2500 g and 9 of 27 jars: 0.36 + 0.33.
  const runs = [
    run("r2", "jar", "2026-11-26", 9),
    run("r1", "bulk", "2026-11-27", 6),
    run("r3", "jar", "2026-11-28", 30),
  ];
  expect(took({ ...parts, runs }, "r3")).toBe("r2, which drew most");
});

const products = ["pa", "pb", "pab", "pc", "pac", "pbc"] as const;
const anyRun = fc.record({
  of: fc.constantFrom(...products),
  units: fc.integer({ min: 1, max: 9 }),
  inDays: fc.integer({ min: 0, max: 20 }),
});
const anyLot = fc.record({
  of: fc.constantFrom("A", "B", "C"),
  held: fc.integer({ min: 1, max: 20 }),
  lastsDays: fc.option(fc.integer({ min: 0, max: 20 })),
});

law.prop([fc.array(anyRun, { minLength: 2, maxLength: 14 }), fc.array(anyLot, { maxLength: 8 })], { numRuns: 300 })(
  "[MAKE-4] leaving out runs that could not matter changes no answer: trying every earlier run finds the same",
  (givenRuns, givenLots) => {
    const workshop = workshopOf({
      materials: [material("A"), material("B"), material("C")],
      formulas: [
        ...(bench.formulas ?? []),
        formula("c", { C: "100" }),
        formula("ac", { A: "50", C: "50" }),
        formula("bc", { B: "20", C: "80" }),
      ],
      products: [...(bench.products ?? []), product("pc", "c"), product("pac", "ac"), product("pbc", "bc")],
      lots: givenLots.map(({ of, held, lastsDays }, index) =>
        lot(`l${String(index)}`, of, String(held * 100), "1", {
          expires: lastsDays === null ? null : daysAfter(today, lastsDays),
        }),
      ),
      runs: givenRuns.map(({ of, units, inDays }, index) => ({
        ...run(`r${String(index)}`, of, "2026-11-25", units),
        date: daysAfter(today, inDays),
      })),
    });
    const { runs, stock: onShelf } = preparedFor(workshop, today);
    const outlooks = new Map(judgeRuns(runs, onShelf).map((outlook) => [outlook.run, outlook]));
    const of = (each: Run): RunOutlook => outlooks.get(each) ?? raise();
    for (const [turn, { run: each }] of runs.entries()) {
      if (of(each).makeable) continue;
      const upToIt = runs.slice(0, turn + 1);
      const enough = upToIt.slice(0, -1).findLast(
        (without) =>
          judgeRuns(
            upToIt.filter((other) => other !== without),
            onShelf,
          ).at(-1)?.makeable,
      );
      const found = tookIt(of(each), runs, of, onShelf);
      expect(found?.enough ? found.run.id : null).toBe(enough?.run.id ?? null);
    }
  },
);

function raise(): never {
  throw new Error("a run without an outlook");
}
