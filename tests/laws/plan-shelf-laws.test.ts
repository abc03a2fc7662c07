/** Laws of the projection: what must hold of every material of every workshop. */
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import type { MaterialOutlook, ShelfEvent } from "@/lib/domain/plan-figures";
import { planned } from "../agreement/agreement";
import { workshops } from "../helpers/random-workshop";

const total = (amounts: readonly bigint[]): bigint => amounts.reduce((sum, amount) => sum + amount, 0n);

/** What an event does to what is on the shelf less what is owed; what settles a debt leaves both. */
const changeOf = (event: ShelfEvent): bigint => {
  switch (event.kind) {
    case "arrived":
      return event.quantity;
    case "written off":
      return 0n - event.quantity;
    case "drawn":
      return 0n - event.need;
    case "settled":
      return 0n;
  }
};

/** The last event of each day on which something happens: balances count at the end of a day. */
const atEndOfDay = (events: readonly ShelfEvent[]) => new Map(events.map((event) => [event.day, event]));

const everyMaterial = (seed: number, holds: (outlook: MaterialOutlook) => void) => {
  fc.assert(
    fc.property(workshops("small"), (file) => {
      for (const outlook of planned(file).plan.materials) holds(outlook);
    }),
    { seed, numRuns: 150 },
  );
};

describe("conservation", () => {
  test("[PLAN-1] at the end of every day, shelf less owed is what was there and what has happened since", () => {
    everyMaterial(1, ({ events, ladder }) => {
      const standing = total(ladder.filter(({ order }) => order === null).map(({ quantity }) => quantity));
      for (const [day, { shelf, owed }] of atEndOfDay(events)) {
        const sofar = events.filter((event) => event.day <= day).map(changeOf);
        expect(shelf - owed).toBe(standing + total(sofar));
      }
    });
  });

  test("[PLAN-1] shelf and owed are never below zero, and never both above it at the end of a day", () => {
    everyMaterial(2, ({ events }) => {
      for (const { shelf, owed } of events) expect(shelf >= 0n && owed >= 0n).toBe(true);
      for (const { shelf, owed } of atEndOfDay(events).values()) expect(shelf === 0n || owed === 0n).toBe(true);
    });
  });

  test("[PLAN-1] the days of what happens never go back, and stay within the horizon", () => {
    fc.assert(
      fc.property(workshops("small"), (file) => {
        const { plan } = planned(file);
        for (const { events } of plan.materials) {
          const days = events.map(({ day }) => day);
          expect(days).toEqual(days.toSorted((a, b) => a - b));
          expect(days.every((day) => day >= plan.today && day <= plan.lastDay)).toBe(true);
        }
      }),
      { seed: 11, numRuns: 150 },
    );
  });

  test("[PLAN-1, LOT-1] no lot gives more than it holds", () => {
    everyMaterial(3, ({ ladder }) => {
      for (const { quantity, used, lost } of ladder)
        expect(used >= 0n && lost >= 0n && used + lost <= quantity).toBe(true);
    });
  });

  test("[PLAN-1] here + arrived = drawn + written off + left; owed = wanted − drawn", () => {
    everyMaterial(4, ({ events, ladder }) => {
      const used = total(ladder.map((lot) => lot.used));
      const lost = total(ladder.map((lot) => lot.lost));
      const wanted = total(events.map((event) => (event.kind === "drawn" ? event.need : 0n)));
      const writtenOff = total(events.map((event) => (event.kind === "written off" ? event.quantity : 0n)));
      const end = events.at(-1);
      expect(lost).toBe(writtenOff);
      if (end === undefined) expect(used).toBe(0n);
      else {
        expect(end.owed).toBe(wanted - used);
        expect(end.shelf).toBe(total(ladder.map((lot) => lot.quantity)) - used - lost);
      }
    });
  });

  test("[PLAN-9] what goes out of date is what is written off", () => {
    everyMaterial(5, ({ events, expiring }) => {
      const writtenOff = events.flatMap((event) =>
        event.kind === "written off" && event.quantity > 0n ? [event] : [],
      );
      const shown = (list: readonly { readonly lot: string; readonly quantity: bigint }[]) =>
        new Map(list.map(({ lot, quantity }) => [lot, quantity]));
      expect(shown(expiring)).toEqual(shown(writtenOff));
    });
  });

  test("[PLAN-5] the worst balance of the events is the shortage, and the first bad one its day", () => {
    everyMaterial(6, ({ events, shortOn, shortBy, material }) => {
      const atEnd = [...atEndOfDay(events)].map(([day, { shelf, owed }]) => [day, shelf - owed] as const);
      const first = atEnd.find(([, balance]) => balance < 0n);
      expect(first?.[0] ?? null).toBe(shortOn);
      const safety = material.safetyStock?.quantity ?? 0n;
      for (const [, balance] of atEnd) expect(safety - balance <= shortBy).toBe(true);
    });
  });
});
