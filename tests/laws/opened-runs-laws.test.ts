/** Laws of what a run opens to: its parts and its lots come to the figures that they explain. */
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { compare, minus, plus, roundedUp, total, whole } from "@/lib/domain/fraction";
import { lotsOfRuns } from "@/lib/domain/lots-drawn";
import { mostFromShelf } from "@/lib/domain/most-from-shelf";
import { needParts } from "@/lib/domain/need-parts";
import { preparedFor } from "@/lib/domain/plan";
import { quantity, type Stock } from "@/lib/domain/quantity";
import type { Material } from "@/lib/domain/workshop";
import { planned } from "../agreement/agreement";
import { aheadWorkshops } from "../helpers/random-ahead";
import { workshops } from "../helpers/random-workshop";
import type { WorkshopFile } from "../second/file-shape";

const someWorkshops = fc.oneof(workshops("small"), aheadWorkshops());

const opened = (file: WorkshopFile) => {
  const { workshop, plan } = planned(file);
  const prepared = preparedFor(workshop, plan.today);
  const runs = prepared.runs.flatMap((toJudge) => {
    const outlook = plan.runs.find(({ run }) => run === toJudge.run);
    return outlook ? [{ toJudge, outlook }] : [];
  });
  expect(runs).toHaveLength(workshop.runs.length);
  return { workshop, plan, prepared, runs };
};

describe("a run that is opened", () => {
  test("[NEED-2, NEED-3, AHEAD-3] what it needs of a material is what its parts come to, rounded up once", () => {
    fc.assert(
      fc.property(someWorkshops, (file) => {
        for (const { toJudge, outlook } of opened(file).runs) {
          const there = new Map(outlook.draws.map((draw) => [draw.material, draw.there]));
          const thereOf = (material: Material): Stock => there.get(material) ?? quantity<Stock>(0n);
          const { partsOf, premixes } = needParts(toJudge, thereOf);
          for (const { material, need } of outlook.draws) {
            expect(roundedUp(total(partsOf(material).map((part) => part.quantity)))).toBe(need);
          }
          for (const { shares, need, given, anew } of premixes) {
            expect(compare(total(shares.map((share) => share.quantity)), need)).toBe(0);
            // What is taken of it is whole, and so may be more than is needed by a part of a microgram.
            const made = compare(need, given) > 0 ? minus(need, given) : whole(0n);
            expect(compare(anew, made)).toBe(0);
            expect(compare(minus(given, need), whole(1n))).toBeLessThan(0);
            expect(compare(plus(given, anew), need)).toBeGreaterThanOrEqual(0);
          }
        }
      }),
      { seed: 91, numRuns: 120 },
    );
  });

  test("[MAKE-1, LOT-1] what it takes of its lots comes to what it draws, and never more than is there", () => {
    fc.assert(
      fc.property(someWorkshops, (file) => {
        const { workshop, plan, prepared } = opened(file);
        const lots = lotsOfRuns(new Set(workshop.runs), prepared.runs, prepared.stock);
        for (const { run, draws } of plan.runs) {
          const drawn = lots.get(run)?.drawn;
          for (const draw of draws) {
            const of = drawn?.get(draw.material.id) ?? [];
            expect(of.reduce((all, { taken }) => all + taken, 0n)).toBe(draw.drawn);
            expect(of.reduce((all, { there }) => all + there, 0n)).toBe(draw.there);
            expect(of.every(({ taken, there }) => taken <= there)).toBe(true);
            // First expired, first out: nothing is taken of a lot while one before it has something left.
            const firstLeft = of.findIndex(({ taken, there }) => taken < there);
            if (firstLeft >= 0) expect(of.slice(firstLeft + 1).every(({ taken }) => taken === 0n)).toBe(true);
          }
        }
      }),
      { seed: 92, numRuns: 120 },
    );
  });

  test("[MAKE-3, AHEAD-4] the most takes no more of the limiting material than is there, and one unit more would", () => {
    fc.assert(
      fc.property(someWorkshops, (file) => {
        const { workshop, plan, prepared } = opened(file);
        const lots = lotsOfRuns(new Set(workshop.runs), prepared.runs, prepared.stock);
        const ofRuns = plan.runs.map(({ run, mostUnits, limiting }) => ({
          most: lots.get(run)?.most,
          mostUnits,
          limiting,
        }));
        const ofProducts = mostFromShelf(workshop.products, prepared, plan.today);
        for (const { most, mostUnits, limiting } of ofRuns) {
          expect([most?.mostUnits, most?.limiting]).toEqual([mostUnits, limiting]);
        }
        for (const most of [...ofRuns.map(({ most: each }) => each), ...ofProducts]) {
          if (most === undefined) throw new Error("a run was not looked at");
          expect(most.takes <= most.there && most.oneMoreTakes > most.there).toBe(true);
          expect(most.lots.reduce((all, { taken }) => all + taken, 0n)).toBe(most.takes);
        }
      }),
      { seed: 93, numRuns: 120 },
    );
  });
});
