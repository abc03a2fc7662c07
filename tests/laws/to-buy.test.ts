/** No published source: the amount to buy, as the rule has it, held against what leads to it. */
import { readFileSync } from "node:fs";
import fc from "fast-check";
import { expect, test } from "vitest";
import { leastLeft } from "@/lib/domain/to-buy";
import { planned } from "../agreement/agreement";
import { workshops } from "../helpers/random-workshop";

/** Checks every material, and gives back how many are to be bought. */
function checked({ workshop: { settings }, plan }: ReturnType<typeof planned>): number {
  const frame = { ...plan, coverDays: settings.coverDays ?? settings.horizonDays };
  let bought = 0;
  for (const outlook of plan.materials) {
    const least = leastLeft(outlook, frame);
    expect(least === null).toBe(outlook.toBuy === 0n);
    if (least === null) continue;
    expect(outlook.onHand + least.arrived - least.needed - least.lost, outlook.material.id).toBe(least.left);
    expect((outlook.material.safetyStock?.quantity ?? 0n) - least.left).toBe(outlook.toBuy);
    expect(least.day).toBeGreaterThanOrEqual(Math.min(outlook.firstArrival, plan.lastDay));
    bought += 1;
  }
  return bought;
}

test("[PLAN-8] what is to be bought is the safety stock less what is left on the day with least, and that adds up", () => {
  expect(checked(planned(readFileSync("seed/demo-workshop.json")))).toBeGreaterThan(0);
  let bought = 0;
  fc.assert(
    fc.property(workshops("small"), (file) => {
      bought += checked(planned(file));
    }),
    { seed: 43, numRuns: 150 },
  );
  expect(bought).toBeGreaterThan(100);
});
