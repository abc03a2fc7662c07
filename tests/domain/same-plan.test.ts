/** No published source: what a plan is made from, by the rules. */
import { expect, test } from "vitest";
import { differInRunsAlone, drawAlike } from "@/lib/domain/same-plan";
import type { Run, Workshop } from "@/lib/domain/workshop";
import { workshopOf } from "@/tests/helpers/bench";
import { material, run } from "@/tests/helpers/notation";

const workshop = workshopOf({ materials: [material("A")] });

test("two states differ in their runs alone where every other list is the very same, and not where one looks alike", () => {
  expect(differInRunsAlone(workshop, { ...workshop, runs: [run("r", "p", "2026-11-26", 1)] })).toBe(true);
  for (const list of Object.keys(workshop) as (keyof Workshop)[]) {
    const copied = { ...workshop, [list]: structuredClone(workshop[list]) };
    expect(differInRunsAlone(workshop, copied), list).toBe(list === "runs");
  }
});

const [a, b] = [run("a", "p", "2026-11-26", 7), run("b", "p", "2026-11-26", 3)];
const c = run("c", "p", "2026-11-27", 3);
const turned = (sequence: number, each: Run): Run => ({ ...each, sequence });

test.each<{ readonly says: string; readonly others: readonly Run[]; readonly alike: boolean }>([
  { says: "the same runs in another order of the list", others: [c, b, a], alike: true },
  { says: "the same turns under other numbers", others: [turned(3, a), turned(8, b), turned(5, c)], alike: true },
  { says: "two of a day turned round", others: [turned(1, a), b, c], alike: false },
  { says: "another size", others: [a, { ...b, units: a.units }, c], alike: false },
  { says: "another day", others: [{ ...a, date: c.date }, b, c], alike: false },
  { says: "another product", others: [{ ...a, product: "q" }, b, c], alike: false },
  { says: "one run fewer", others: [a, b], alike: false },
  { says: "another run in the place of one", others: [a, b, { ...c, id: "d" }], alike: false },
])("[PLAN-4] runs draw alike? $says", ({ others, alike }) => {
  expect(drawAlike([a, b, c], others)).toBe(alike);
});
