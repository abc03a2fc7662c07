/** Figures worked by hand from the rules; no published source. */
import { expect, test } from "vitest";
import { isoDate } from "@/lib/domain/calendar";
import { plan } from "@/lib/domain/plan";
import { changedBy, changedMaterials, figuresByMaterial, type PlanChanges } from "@/lib/domain/plan-changes";
import type { Run } from "@/lib/domain/workshop";
import { workshopOf } from "@/tests/helpers/bench";
import { day, formula, g, grams, lot, material, offer, product, run } from "@/tests/helpers/notation";

const today = day("2026-11-25");

/** 1000 g of A and 200 g of B; a run of p draws A, one of q draws B, 100 g a unit. One working day to get more. */
const planOf = (runs: readonly Run[]) =>
  plan(
    workshopOf({
      materials: [material("B", { safetyStock: grams("50") }), material("A")],
      offers: [offer("a", "A", "100", "1"), offer("b", "B", "100", "1")],
      lots: [lot("LA", "A", "1000", "1"), lot("LB", "B", "200", "1")],
      formulas: [formula("f", { A: "100" }), formula("g", { B: "100" })],
      products: [product("p", "f"), product("q", "g")],
      runs,
    }),
    today,
  );

const inShort = ({ runs, orderDays }: PlanChanges): readonly string[] => [
  ...runs.map(({ before, after }) => `${after.run.id}: ${said(before.makeable)} to ${said(after.makeable)}`),
  ...orderDays.map(({ material: { id }, before, after }) => `${id}: ${dayOr(before)} to ${dayOr(after)}`),
];
const said = (makeable: boolean): string => (makeable ? "made" : "short");
const dayOr = (value: Parameters<typeof isoDate>[0] | null): string => (value === null ? "none" : isoDate(value));

const first = run("first", "p", "2026-11-26", 7);
const second = run("second", "p", "2026-11-27", 3);

test("[MAKE-1] [PLAN-6] a run made larger takes what a later one needs, and the order day comes nearer", () => {
  const before = planOf([first, second]);
  // 1000 - 800 leaves 200 of the 300 g that the second asks for on Friday 27: order on Thursday 26
  const after = planOf([{ ...first, units: run("first", "p", "2026-11-26", 8).units }, second]);
  expect(inShort(changedBy(before, after))).toEqual(["second: made to short", "A: none to 2026-11-26"]);
  expect(inShort(changedBy(after, before))).toEqual(["second: short to made", "A: 2026-11-26 to none"]);
});

test("[MAKE-1] runs stand in the order in which they draw, order days by the earliest, those without one last", () => {
  // Of B, Monday's run leaves 0 of the 50 g that are to stay: order on Friday 27. Of A, Thursday's takes 1100 g: order today.
  const [a, b] = [run("a", "p", "2026-11-26", 11), run("b", "q", "2026-11-30", 2)];
  const c = run("c", "p", "2026-11-27", 4);
  const before = planOf([c, b, { ...a, units: run("a", "p", "2026-11-26", 1).units }]);
  const after = planOf([c, { ...b, date: day("2026-12-01") }, a]);
  expect(inShort(changedBy(before, after))).toEqual([
    "a: made to short",
    "A: none to 2026-11-25",
    "B: 2026-11-27 to 2026-11-30",
  ]);
});

test("a run that was added or taken out is no change of its own, and the same plan changes nothing", () => {
  expect(inShort(changedBy(planOf([second]), planOf([first, second])))).toEqual([]);
  expect(inShort(changedBy(planOf([first, second]), planOf([second])))).toEqual([]);
  expect(inShort(changedBy(planOf([first]), planOf([first])))).toEqual([]);
});

test("[PLAN-6] each material whose figures changed is given with what they were, and no other", () => {
  const [before, after] = [planOf([first]), planOf([first, second])].map(({ materials }) =>
    figuresByMaterial(materials),
  );
  if (before === undefined || after === undefined) throw new Error("two plans were made");
  // 1000 - 700 - 300 leaves nothing of A and lacks nothing; a fourth hundred is lacking.
  expect([...changedMaterials(before, after)]).toEqual([]);
  const larger = figuresByMaterial(planOf([first, run("second", "p", "2026-11-27", 4)]).materials);
  expect([...changedMaterials(after, larger)].map(([id, { orderBy, toBuy }]) => [id, orderBy, toBuy])).toEqual([
    ["A", null, 0n],
  ]);
  expect(larger.get("A")?.toBuy).toBe(g("100"));
});
