/** No published source: the amount to buy, as the rule has it, held against what leads to it. */
import { readFileSync } from "node:fs";
import fc from "fast-check";
import { expect, test } from "vitest";
import { OPEN_FRAME } from "@/lib/domain/buying/buying-frame";
import { shoppingListIn } from "@/lib/domain/buying/candidates";
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

test("[PLAN-8, BUY-10] what is wanted in a frame is the safety stock less what is then left, and that adds up", () => {
  let [bought, otherwise] = [0, 0];
  fc.assert(
    fc.property(workshops("small"), fc.nat(10), fc.nat(3), (file, days, out) => {
      const { workshop, plan } = planned(file);
      const leftOut = new Set(workshop.suppliers.slice(0, out).map(({ id }) => id));
      const frame = { ...OPEN_FRAME, leftOut, cover: { kind: "days", days } as const };
      for (const { material, wanted, least, onHand } of shoppingListIn(workshop, plan, frame).list.purchases) {
        if (least === null) throw new Error("it is bought for no reason");
        expect(onHand + least.arrived - least.needed - least.lost).toBe(least.left);
        expect((material.safetyStock?.quantity ?? 0n) - least.left).toBe(wanted);
        bought += 1;
        if (wanted !== plan.materials.find((each) => each.material === material)?.toBuy) otherwise += 1;
      }
    }),
    { seed: 44, numRuns: 150 },
  );
  expect([bought > 100, otherwise > 20]).toEqual([true, true]);
});
