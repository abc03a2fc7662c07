/** A plan made from one that is near gives what a plan made afresh gives. */
import fc from "fast-check";
import { expect, test } from "vitest";
import { type Day, daysAfter } from "@/lib/domain/calendar";
import { plan, preparedFor } from "@/lib/domain/plan";
import { quantity, type Units } from "@/lib/domain/quantity";
import type { Run, Workshop } from "@/lib/domain/workshop";
import { planned } from "../agreement/agreement";
import { diceFrom, pick } from "../helpers/random-dice";
import { aheadWorkshops } from "../helpers/random-ahead";
import { workshops } from "../helpers/random-workshop";

/** The runs with one resized, moved, taken out or put in; the others are the very same. */
function changed(runs: readonly Run[], seed: number): readonly Run[] {
  const dice = diceFrom(seed);
  const one = pick(dice, runs);
  const instead = (run: Partial<Run>): readonly Run[] => runs.map((each) => (each === one ? { ...one, ...run } : each));
  const days = dice.whole(-9, 60);
  return pick<() => readonly Run[]>(dice, [
    () => instead({ units: quantity<Units>(one.units + BigInt(dice.whole(1, 9))) }),
    () => instead({ date: daysAfter(one.date, days), sequence: dice.whole(0, 3) }),
    () => runs.filter((each) => each !== one),
    () => [...runs, { ...one, id: `${one.id} again`, date: daysAfter(one.date, days) }],
    () => runs,
  ])();
}

const replanned = (workshop: Workshop, today: Day, runs: readonly Run[]) => {
  const prepared = preparedFor(workshop, today);
  const near = { plan: plan(workshop, today, prepared), prepared };
  const after = { ...workshop, runs };
  const again = preparedFor(after, today, undefined, prepared);
  return { near, again: plan(after, today, again, near), afresh: plan(after, today) };
};

test("[PLAN-2, PLAN-4] after a change of runs, a plan from the one before is the plan made afresh", () => {
  let kept = 0;
  fc.assert(
    fc.property(fc.oneof(workshops("small"), aheadWorkshops("small")), fc.nat(1_000_000), (file, seed) => {
      const {
        workshop,
        plan: { today },
      } = planned(file);
      if (workshop.runs.length === 0) return;
      const { near, again, afresh } = replanned(workshop, today, changed(workshop.runs, seed));
      expect(again).toStrictEqual(afresh);
      expect(again.costs).toBe(near.plan.costs);
      kept += again.materials.filter((outlook) => near.plan.materials.includes(outlook)).length;
    }),
    { seed: 31, numRuns: 150 },
  );
  expect(kept).toBeGreaterThan(100);
});
