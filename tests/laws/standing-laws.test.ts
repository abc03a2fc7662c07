/** Laws of what a material's days and its lots open to: the steps come to the figure that they explain. */
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { arrivalOf, arrivalSteps, deliveryFrom } from "@/lib/domain/arrivals";
import { daysAfter } from "@/lib/domain/calendar";
import { lastingWith } from "@/lib/domain/buying/lasting";
import { byDrawOrder } from "@/lib/domain/lots";
import { type UsedLot, usedLots } from "@/lib/domain/lot-uses";
import type { MaterialOutlook } from "@/lib/domain/plan-figures";
import { type Standing, standingUntil } from "@/lib/domain/standing-until";
import { planned } from "../agreement/agreement";
import { aheadWorkshops } from "../helpers/random-ahead";
import { workshops } from "../helpers/random-workshop";

const someWorkshops = fc.oneof(workshops("small"), aheadWorkshops());

/** What the changes of a standing come to. */
const changed = ({ changes }: Standing): bigint =>
  changes.reduce((sum, change) => {
    if (change.kind === "drawn") return sum - change.need;
    return change.kind === "arrived" ? sum + change.quantity : sum - change.quantity;
  }, 0n);

describe("how long a material lasts", () => {
  test("[PLAN-1, PLAN-5] what is on hand and what happens until then come to what stands", () => {
    let [looked, short] = [0, 0];
    fc.assert(
      fc.property(someWorkshops, (file) => {
        const { plan } = planned(file);
        for (const outlook of plan.materials) {
          let stands: bigint = outlook.onHand;
          const standings = standingUntil(outlook, plan.today);
          for (const standing of standings) {
            stands += changed(standing);
            expect(stands).toBe(standing.left);
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

describe("how long what is bought lasts", () => {
  test("[BUY-19] what is on hand and bought, comes, goes and is needed comes to what is then left", () => {
    let [low, beyond, after] = [0, 0, 0];
    fc.assert(
      fc.property(someWorkshops, fc.nat(40), fc.option(fc.nat(60)), (file, comes, keeps) => {
        const { plan } = planned(file);
        for (const outlook of plan.materials) {
          const arrives = daysAfter(plan.today, comes);
          const quantity = outlook.offersConsidered[0]?.pack.quantity ?? outlook.shortBy;
          const expires = keeps === null ? null : daysAfter(arrives, keeps);
          const lasting = lastingWith(outlook, [{ arrives, expires, quantity }], plan);
          if (lasting === null) {
            after += 1;
            expect(arrives).toBeGreaterThan(plan.lastDay);
            continue;
          }
          const { lowOn, standing } = lasting;
          const safety = outlook.material.safetyStock?.quantity ?? 0n;
          expect(lasting.onHand + changed(standing)).toBe(standing.left);
          expect(standing.day).toBe(lowOn ?? plan.lastDay);
          expect(standing.left < safety).toBe(lowOn !== null);
          // The very runs of the plan, with what they need there.
          const runs = (events: Standing["changes"] | MaterialOutlook["events"]) =>
            events.flatMap((event) =>
              event.kind === "drawn" && event.day <= standing.day ? [[event.run, event.day, event.need]] : [],
            );
          expect(runs(standing.changes)).toEqual(runs(outlook.events));
          if (lowOn !== null) low += 1;
          if (!lasting.beyond) continue;
          const { spare, taken, days, daysMore } = lasting.beyond;
          expect([spare, days]).toEqual([standing.left - safety, plan.lastDay - plan.today]);
          if (daysMore === null) continue;
          beyond += 1;
          expect(BigInt(daysMore) * taken <= spare * BigInt(days)).toBe(true);
          expect((BigInt(daysMore) + 1n) * taken > spare * BigInt(days)).toBe(true);
        }
      }),
      { seed: 97, numRuns: 150 },
    );
    expect([low > 30, beyond > 10, after > 10]).toEqual([true, true, true]);
  });
});

describe("which runs use a lot", () => {
  const takenBy = (lots: readonly UsedLot[], run: string): bigint =>
    lots.flatMap(({ uses }) => uses).reduce((sum, use) => (use.run.id === run ? sum + use.taken : sum), 0n);

  test("[PLAN-10] what runs take of a lot, what is lost and what is left come to it, and to what each run draws", () => {
    let [taken, owed] = [0, 0];
    fc.assert(
      fc.property(someWorkshops, (file) => {
        const { plan } = planned(file);
        for (const { ladder, events, balances } of plan.materials) {
          const lots = usedLots({ ladder, events });
          expect(lots.map(({ lot }) => lot)).toEqual(ladder);
          for (const { lot, uses, left } of lots) {
            expect(uses.reduce((sum, use) => sum + use.taken, 0n)).toBe(lot.used);
            expect(lot.used + lot.lost + left).toBe(lot.quantity);
            expect(uses.every((use) => use.taken > 0n)).toBe(true);
            taken += uses.length;
          }
          // What a run has not got by the plan's end is owed to it then; who was owed first has it first.
          const owing = events.flatMap((event) =>
            event.kind === "drawn" ? [{ run: event.run.id, open: event.need - takenBy(lots, event.run.id) }] : [],
          );
          const end = balances.at(-1)?.balance ?? 0n;
          const left = lots.reduce((sum, each) => sum + each.left, 0n);
          expect(owing.reduce((sum, { open }) => sum + open, 0n)).toBe(left - end);
          const late = lots.flatMap(({ uses }) => uses).filter(({ owedSince }) => owedSince !== null);
          owed += late.length;
          for (const { day, owedSince } of late) expect(owedSince !== null && owedSince <= day).toBe(true);
          const first = owing.findIndex(({ open }) => open > 0n);
          for (const { run } of first < 0 ? [] : owing.slice(first + 1)) {
            expect(late.some((use) => use.run.id === run)).toBe(false);
          }
        }
      }),
      { seed: 98, numRuns: 150 },
    );
    expect([taken > 300, owed > 10]).toEqual([true, true]);
  });

  test("[PLAN-10, LOT-1] nothing is taken of a lot while one before it is there with something left", () => {
    let looked = 0;
    fc.assert(
      fc.property(someWorkshops, (file) => {
        const { plan } = planned(file);
        for (const outlook of plan.materials) {
          const lots = usedLots(outlook);
          for (const [at, { lot, uses }] of lots.entries()) {
            const lastTaken = uses.at(-1)?.day;
            if (lastTaken === undefined) continue;
            for (const before of lots.slice(0, at)) {
              expect(byDrawOrder({ ...before.lot, id: before.lot.lot }, { ...lot, id: lot.lot })).toBeLessThan(0);
              const comes = before.lot.order === null ? plan.today : before.lot.received;
              const firstTaken = uses.find(({ day }) => day >= comes)?.day;
              if (firstTaken === undefined) continue;
              looked += 1;
              // It was there when this one was first taken of, so nothing of it is taken on a later day.
              expect(before.uses.every(({ day }) => day <= firstTaken)).toBe(true);
            }
          }
        }
      }),
      { seed: 99, numRuns: 150 },
    );
    expect(looked).toBeGreaterThan(50);
  });
});
