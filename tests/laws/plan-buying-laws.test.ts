/** Laws of buying: what more stock and a purchase must do to what is still to be bought. */
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { isoDate } from "@/lib/domain/calendar";
import type { MaterialOutlook } from "@/lib/domain/plan-figures";
import { planned } from "../agreement/agreement";
import { dateAfter } from "../helpers/random-dice";
import { amountText } from "../helpers/random-quantities";
import { REAL_TODAY, workshops } from "../helpers/random-workshop";
import type { WorkshopFile } from "../second/file-shape";
import { withLot, withoutExpiry } from "./workshop-changes";

const outlooksByMaterial = (file: WorkshopFile): ReadonlyMap<string, MaterialOutlook> =>
  new Map(planned(file).plan.materials.map((outlook) => [outlook.material.id, outlook]));

/** The file with so much of a material bought, arriving on its first arrival and never out of date. */
function withPurchase(file: WorkshopFile, outlook: MaterialOutlook, today: string): WorkshopFile {
  const { material, toBuy, firstArrival } = outlook;
  const [date, quantity] = [isoDate(firstArrival), amountText(toBuy, material)];
  const id = `bought ${material.id.replaceAll("/", " ")}`.slice(0, 100);
  // An order due today would come on a later day; what comes today is on the shelf.
  const lot = { id, material: material.id, received: date, remaining: quantity, value: "1.00" };
  if (date === today) return { ...file, lots: [...file.lots, lot] };
  const line = { material: material.id, quantity, cost: "1.00" };
  const supplier = file.suppliers[0]?.id ?? "";
  return { ...file, orders: [...file.orders, { id, supplier, placed: today, due: date, lines: [line] }] };
}

describe("buying", () => {
  test("[PLAN-8] to buy is never more than the worst shortage, nor below zero", () => {
    fc.assert(
      fc.property(workshops("small"), (file) => {
        for (const { toBuy, shortBy } of planned(file).plan.materials) {
          expect(toBuy <= shortBy).toBe(true);
          expect(toBuy >= 0n).toBe(true);
        }
      }),
      { seed: 41, numRuns: 150 },
    );
  });

  test("[PLAN-6] there is an order day exactly where there is an offer and a day below safety, and it is in time", () => {
    fc.assert(
      fc.property(workshops("small"), (file) => {
        const { plan } = planned(file);
        for (const { orderBy, daysLate, neededBy, belowSafetyOn, pricedOffer } of plan.materials) {
          expect(orderBy === null).toBe(belowSafetyOn === null || pricedOffer === null);
          expect(daysLate).toBe(orderBy === null ? null : Math.max(0, plan.today - orderBy));
          if (orderBy !== null) expect(neededBy !== null && orderBy <= neededBy).toBe(true);
        }
      }),
      { seed: 42, numRuns: 150 },
    );
  });

  test("[PLAN-5, PLAN-8] more of a material never raises its own shortage or what is to be bought of it", () => {
    const more = fc.bigInt({ min: 1n, max: 900_000_000n });
    const lastDay = fc.option(fc.integer({ min: -2, max: 60 }));
    fc.assert(
      fc.property(workshops("small"), fc.nat(), more, lastDay, (file, which, amount, days) => {
        const material = file.materials[which % file.materials.length];
        if (material === undefined) return;
        const expires = days === null ? null : dateAfter(file.workshop.today ?? REAL_TODAY, days);
        const remaining = amountText(material.measure === "count" ? (amount % 100n) + 1n : amount, material);
        const before = outlooksByMaterial(file);
        const after = outlooksByMaterial(withLot(file, { material: material.id, remaining, expires }));
        for (const [id, { shortBy, toBuy }] of before) {
          expect((after.get(id)?.shortBy ?? -1n) <= shortBy).toBe(true);
          expect((after.get(id)?.toBuy ?? -1n) <= toBuy).toBe(true);
        }
        expect(after.size).toBe(before.size);
      }),
      { seed: 43, numRuns: 300 },
    );
  });

  test("[PLAN-7, PLAN-8] where nothing goes out of date, what is to be bought, bought, leaves nothing to buy", () => {
    let bought = 0;
    fc.assert(
      fc.property(workshops("small").map(withoutExpiry), (file) => {
        const { plan } = planned(file);
        const wanting = plan.materials.filter(({ toBuy, firstArrival }) => toBuy > 0n && firstArrival <= plan.lastDay);
        const today = isoDate(plan.today);
        const after = outlooksByMaterial(
          wanting.reduce((changed, outlook) => withPurchase(changed, outlook, today), file),
        );
        for (const { material } of wanting) expect(after.get(material.id)?.toBuy).toBe(0n);
        bought += wanting.length;
      }),
      { seed: 44, numRuns: 150 },
    );
    expect(bought).toBeGreaterThan(100);
  });
});
