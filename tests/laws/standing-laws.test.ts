/** Laws of what a material's days open to: the steps come to the figure that they explain. */
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { arrivalOf, arrivalSteps, deliveryFrom } from "@/lib/domain/arrivals";
import { daysAfter } from "@/lib/domain/calendar";
import { standingUntil } from "@/lib/domain/standing-until";
import { planned } from "../agreement/agreement";
import { aheadWorkshops } from "../helpers/random-ahead";
import { workshops } from "../helpers/random-workshop";

const someWorkshops = fc.oneof(workshops("small"), aheadWorkshops());

describe("how long a material lasts", () => {
  test("[PLAN-1, PLAN-5] what is on hand and what happens until then come to what stands", () => {
    let [looked, short] = [0, 0];
    fc.assert(
      fc.property(someWorkshops, (file) => {
        const { plan } = planned(file);
        for (const outlook of plan.materials) {
          let stands: bigint = outlook.onHand;
          const standings = standingUntil(outlook, plan.today);
          for (const { changes, left } of standings) {
            for (const change of changes) {
              if (change.kind === "drawn") stands -= change.need;
              else stands += change.kind === "arrived" ? change.quantity : -change.quantity;
            }
            expect(stands).toBe(left);
          }
          const days = standings.map(({ day }) => day);
          if (standings.length > 0) looked += 1;
          if (outlook.shortOn !== null) {
            short += 1;
            expect(days.at(-1)).toBe(outlook.shortOn);
            expect(standings.at(-1)?.left).toBeLessThan(0n);
          }
          if (outlook.belowSafetyOn !== null && standings.length > 0) expect(days).toContain(outlook.belowSafetyOn);
          if (outlook.belowSafetyOn === null)
            for (const { balance } of outlook.balances)
              expect(standings.every(({ left }) => left <= balance)).toBe(true);
        }
      }),
      { seed: 95, numRuns: 150 },
    );
    expect([looked > 100, short > 30]).toEqual([true, true]);
  });

  test("[DAY-3, PLAN-6] an order on the order day is there in time, and one on the next working day is not", () => {
    let looked = 0;
    fc.assert(
      fc.property(workshops("small"), (file) => {
        const { plan, workshop } = planned(file);
        for (const { orderBy, neededBy, pricedOffer } of plan.materials) {
          const supplier = workshop.suppliers.find(({ id }) => id === pricedOffer?.supplier);
          if (orderBy === null || neededBy === null || supplier === undefined) continue;
          looked += 1;
          const delivery = deliveryFrom(supplier, workshop.settings.closedDays);
          const { placed, due, arrives } = arrivalSteps(delivery, orderBy);
          expect([placed, arrives <= neededBy, due <= arrives]).toEqual([orderBy, true, true]);
          expect(arrives).toBe(arrivalOf(delivery, orderBy));
          expect(arrivalOf(delivery, daysAfter(orderBy, 1))).toBeGreaterThan(neededBy);
        }
      }),
      { seed: 96, numRuns: 150 },
    );
    expect(looked).toBeGreaterThan(30);
  });
});
