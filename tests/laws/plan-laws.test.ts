/** Laws of the whole plan: what changes nothing, and what changes everything alike. */
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import type { Fraction } from "@/lib/domain/fraction";
import type { MicroUnits } from "@/lib/domain/money";
import { plan } from "@/lib/domain/plan";
import { BASES } from "@/lib/domain/plan-figures";
import { quantity } from "@/lib/domain/quantity";
import type { Workshop } from "@/lib/domain/workshop";
import { basketIn, firstReports, planned } from "../agreement/agreement";
import { workshops } from "../helpers/random-workshop";
import { byCodePoint } from "../second/exact";
import { movedBy, renamed, reordered, withToday } from "./workshop-changes";

type Reports = ReturnType<typeof firstReports>;

/** Reports with their rows in one order and without what is worded freely. */
function sorted(reports: Reports) {
  const rows = (basis: (typeof BASES)[number]) => ({
    ...reports[basis],
    costs: reports[basis].costs
      .map((cost) => ({ ...cost, error: cost.error !== null }))
      .toSorted((a, b) => byCodePoint(a.product, b.product)),
    runs: reports[basis].runs.toSorted((a, b) => byCodePoint(a.run, b.run)),
    materials: reports[basis].materials.toSorted((a, b) => byCodePoint(a.material, b.material)),
    basket: withUnsourcedSorted(basketIn(reports[basis])),
  });
  return BASES.map(rows);
}

const withUnsourcedSorted = (basket: ReturnType<typeof basketIn>) => ({
  ...basket,
  unsourced: basket.unsourced.toSorted(byCodePoint),
});

function frozen<T>(value: T): T {
  if (typeof value === "object" && value !== null && !Object.isFrozen(value)) {
    Object.freeze(value);
    Object.values(value).forEach(frozen);
  }
  return value;
}

const isTimes = (scaled: Fraction, times: bigint, original: Fraction): boolean =>
  scaled.over * original.under === times * original.over * scaled.under;

/** Every price, value and hourly rate so many times as much. */
function dearer(workshop: Workshop, times: bigint): Workshop {
  const scaled = (amount: MicroUnits) => quantity<MicroUnits>(amount * times);
  const { settings } = workshop;
  return {
    ...workshop,
    settings: {
      ...settings,
      labourPerHour: scaled(settings.labourPerHour),
      overheadPerHour: scaled(settings.overheadPerHour),
    },
    offers: workshop.offers.map((offer) => ({
      ...offer,
      price: scaled(offer.price),
      breaks: offer.breaks.map((step) => ({ ...step, price: scaled(step.price) })),
    })),
    lots: workshop.lots.map((lot) => ({ ...lot, value: scaled(lot.value) })),
  };
}

describe("what changes nothing", () => {
  test("[PLAN-1] planning twice gives the same, and leaves the workshop as it was", () => {
    fc.assert(
      fc.property(workshops("small"), (file) => {
        const { workshop, plan: first } = planned(file);
        expect(plan(frozen(workshop), first.today)).toEqual(first);
      }),
      { seed: 31, numRuns: 100 },
    );
  });

  test("[LOT-2, PLAN-4] the order of the file's lists changes only the order of the rows", () => {
    fc.assert(
      fc.property(workshops("small"), fc.nat(), (file, seed) => {
        expect(sorted(firstReports(reordered(file, seed)))).toEqual(sorted(firstReports(file)));
      }),
      { seed: 32, numRuns: 100 },
    );
  });

  test("[LOT-2] other names in the same order change no figure", () => {
    fc.assert(
      fc.property(workshops("small"), (file) => {
        const names = renamed(file);
        const [before, after] = [sorted(firstReports(file)), sorted(firstReports(names.file))];
        const translated = before.map((report) => ({
          ...report,
          costs: report.costs.map((cost) => ({
            ...cost,
            product: names.product(cost.product),
            lines: cost.lines.map((line) => ({ ...line, material: names.material(line.material) })),
          })),
          runs: report.runs.map((run) => ({
            ...run,
            run: names.run(run.run),
            limiting: names.material(run.limiting ?? ""),
            short: run.short.map((each) => ({ ...each, material: names.material(each.material) })),
          })),
          materials: report.materials.map((row) => ({
            ...row,
            material: names.material(row.material),
            expiring: row.expiring.map((each) => ({ ...each, lot: names.lot(each.lot) })),
          })),
          basket: withUnsourcedSorted({
            ...report.basket,
            unsourced: report.basket.unsourced.map(names.material),
            orders: report.basket.orders.map((order) => ({
              ...order,
              supplier: names.supplier(order.supplier),
              lines: order.lines.map((line) => ({ ...line, offer: names.offer(line.offer) })),
            })),
          }),
        }));
        expect(after).toEqual(translated);
      }),
      { seed: 33, numRuns: 100 },
    );
  });
});

describe("what changes everything alike", () => {
  test("[DAY-1 to DAY-3] every date a number of weeks later moves every date of the report by as much", () => {
    fc.assert(
      fc.property(workshops("small").map(withToday), fc.integer({ min: -500, max: 5000 }), (file, weeks) => {
        expect(firstReports(movedBy(file, 7 * weeks))).toEqual(movedBy(firstReports(file), 7 * weeks));
      }),
      { seed: 34, numRuns: 100 },
    );
  });

  test("[COST-1 to COST-5] money so many times as much makes every cost as many times as much, and nothing else", () => {
    fc.assert(
      fc.property(workshops("small"), fc.bigInt({ min: 2n, max: 1000n }), (file, times) => {
        const { workshop, plan: before } = planned(file);
        const after = plan(dearer(workshop, times), before.today);
        for (const [index, { byBasis }] of before.costs.entries())
          for (const basis of BASES) {
            const [cost, dear] = [byBasis[basis], after.costs[index]?.byBasis[basis]];
            for (const part of ["perUnit", "ingredients", "packaging", "labour", "overhead"] as const) {
              const [one, other] = [cost[part], dear?.[part] ?? null];
              expect(one === null || other === null ? one === other : isTimes(other, times, one)).toBe(true);
            }
          }
        expect(after.runs).toEqual(before.runs);
        expect(after.materials.map(({ toBuy }) => toBuy)).toEqual(before.materials.map(({ toBuy }) => toBuy));
        expect(after.materials.map(({ orderBy }) => orderBy)).toEqual(before.materials.map(({ orderBy }) => orderBy));
      }),
      { seed: 35, numRuns: 100 },
    );
  });

  test("[COST-1] a unit costs the sum of its parts, and its parts the sum of their lines", () => {
    const add = (a: Fraction, b: Fraction): Fraction => ({
      over: a.over * b.under + b.over * a.under,
      under: a.under * b.under,
    });
    const sum = (parts: readonly Fraction[]) => parts.reduce(add, { over: 0n, under: 1n });
    fc.assert(
      fc.property(workshops("small"), (file) => {
        for (const { byBasis } of planned(file).plan.costs)
          for (const basis of BASES) {
            const { perUnit, ingredients, packaging, labour, overhead, lines } = byBasis[basis];
            if (perUnit === null || ingredients === null || packaging === null) continue;
            expect(isTimes(perUnit, 1n, sum([ingredients, packaging, labour, overhead]))).toBe(true);
            const costs = lines.flatMap(({ cost }) => cost ?? []);
            expect(isTimes(sum([ingredients, packaging]), 1n, sum(costs))).toBe(true);
          }
      }),
      { seed: 36, numRuns: 100 },
    );
  });
});
