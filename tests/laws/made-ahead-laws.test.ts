/** Laws of premixes made ahead, on invented workshops. */
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { exactAheadUses } from "@/lib/domain/ahead-needs";
import { compare, plus, ZERO } from "@/lib/domain/fraction";
import { exactFor } from "@/lib/domain/needs";
import { preparedFor } from "@/lib/domain/plan";
import { quantity, type Stock } from "@/lib/domain/quantity";
import { day } from "@/tests/helpers/notation";
import { expectAgreement, firstReports, planned } from "../agreement/agreement";
import { aheadWorkshops } from "../helpers/random-ahead";
import { REAL_TODAY } from "../helpers/random-workshop";
import type { WorkshopFile } from "../second/file-shape";

const madeIn = (file: WorkshopFile): ReadonlySet<string> =>
  new Set(file.products.flatMap(({ madeInto }) => (typeof madeInto === "string" ? [madeInto] : [])));

/** Nothing of what is made ahead is here or on order. */
function withNone(file: WorkshopFile): WorkshopFile {
  const made = madeIn(file);
  return {
    ...file,
    lots: file.lots.filter(({ material }) => !made.has(material)),
    orders: file.orders.flatMap((order) => {
      const lines = order.lines.filter(({ material }) => !made.has(material));
      return lines.length === 0 ? [] : [{ ...order, lines }];
    }),
  };
}

describe("premixes made ahead", () => {
  test("[AHEAD-3 to AHEAD-6] the report equals the second implementation's", () => {
    fc.assert(fc.property(aheadWorkshops(), expectAgreement), { seed: 71, numRuns: 100 });
  });

  test("[AHEAD-3] with none of it on the shelf the report is as if nothing were made ahead", () => {
    fc.assert(
      fc.property(aheadWorkshops(), (file) => {
        const none = withNone(file);
        const products = none.products.map(({ madeInto: _ahead, ...product }) => product);
        expect(firstReports(none)).toEqual(firstReports({ ...none, products }));
      }),
      { seed: 72, numRuns: 80 },
    );
  });

  test("[AHEAD-5] more of it never makes anything else shorter", () => {
    fc.assert(
      fc.property(aheadWorkshops(), fc.nat(), fc.integer({ min: 1, max: 2000 }), (file, at, grams) => {
        const made = [...madeIn(file)];
        const material = made[at % Math.max(1, made.length)];
        fc.pre(material !== undefined);
        const lot = { id: "one more", material, received: "2024-12-31", remaining: `${String(grams)} g`, value: "1" };
        const before = planned(file).plan.materials;
        const after = planned({ ...file, lots: [...file.lots, lot] }).plan.materials;
        for (const [index, { shortBy }] of after.entries()) {
          expect(shortBy <= (before[index]?.shortBy ?? 0n)).toBe(true);
        }
      }),
      { seed: 73, numRuns: 100 },
    );
  });

  test("[AHEAD-3, AHEAD-6] what is drawn of it and what is opened come to the batch, exactly", () => {
    fc.assert(
      fc.property(aheadWorkshops(), fc.bigInt({ min: 0n, max: 10n ** 10n }), (file, there) => {
        const { workshop } = planned(file);
        const today = workshop.settings.today ?? day(REAL_TODAY);
        for (const opened of preparedFor(workshop, today).openedByProduct.values()) {
          const uses = exactAheadUses(opened, () => quantity<Stock>(there));
          const mass = uses
            .flatMap((use) => use.uses.filter(({ as }) => as === "ingredient"))
            .map(({ inUsualRun }) => inUsualRun)
            .reduce(plus, ZERO);
          expect(compare(mass, exactFor(opened.bulk, opened.product.usualRun))).toBe(0);
        }
      }),
      { seed: 74, numRuns: 150 },
    );
  });

  test("[AHEAD-4, MAKE-3] a run can be made exactly where its units are not above the most", () => {
    fc.assert(
      fc.property(aheadWorkshops(), (file) => {
        for (const { run, makeable, mostUnits, short } of planned(file).plan.runs) {
          expect(makeable).toBe(run.units <= mostUnits);
          expect(makeable).toBe(short.length === 0);
        }
      }),
      { seed: 75, numRuns: 150 },
    );
  });

  test("the invented workshops draw it in part, whole and not at all", () => {
    const seen = { part: 0, whole: 0, none: 0 };
    fc.assert(
      fc.property(aheadWorkshops(), (file) => {
        const { workshop, plan } = planned(file);
        const { openedByProduct } = preparedFor(workshop, plan.today);
        for (const { product, draws } of plan.runs) {
          const opened = openedByProduct.get(product.id);
          if (!opened) continue;
          const instead = draws.filter(({ insteadOf }) => insteadOf !== null).length;
          const raws = draws.filter(({ insteadOf }) => insteadOf === null).length;
          seen[instead === 0 ? "none" : raws < opened.materials.length - opened.premixes.length ? "whole" : "part"] +=
            1;
        }
      }),
      { seed: 76, numRuns: 150 },
    );
    expect(Object.entries(seen).filter(([, count]) => count < 10)).toEqual([]);
  });
});
