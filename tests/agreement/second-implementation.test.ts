/**
 * The planner against a second implementation of the same arithmetic that shares no code with it: a thousand invented
 * workshops, every basis, every figure.
 */
import { readdirSync, readFileSync } from "node:fs";
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { dateAfter } from "../helpers/random-dice";
import { REAL_TODAY, randomWorkshop, workshops } from "../helpers/random-workshop";
import { secondReport } from "../second/second-report";
import { expectAgreement } from "./agreement";

const SHARDS = Array.from({ length: 10 }, (_, shard) => ({ shard: shard + 1, seed: 20_261_125 + shard }));

describe("[COST-1 to COST-7, PLAN-1 to PLAN-9, MAKE-1 to MAKE-3, REPORT-1] the report equals the second implementation's", () => {
  test.each(SHARDS)("on a hundred invented workshops, shard $shard of 10", ({ seed }) => {
    fc.assert(fc.property(workshops("small"), expectAgreement), { seed, numRuns: 100 });
  });

  test("on a hundred tiny workshops", () => {
    fc.assert(fc.property(workshops("tiny"), expectAgreement), { seed: 3, numRuns: 100 });
  });

  test("[DAY-2, DAY-3, PLAN-6] with leads of years and closures of months", () => {
    const leads = fc.integer({ min: 0, max: 3660 });
    const closures = fc.record({ days: fc.integer({ min: 0, max: 300 }), from: fc.integer({ min: -400, max: 100 }) });
    fc.assert(
      fc.property(workshops("tiny"), leads, leads, closures, (file, leadDays, safetyDays, { days, from }) => {
        const today = file.workshop.today ?? REAL_TODAY;
        const closedDays = Array.from({ length: days }, (_, index) => dateAfter(today, from + index));
        expectAgreement({
          ...file,
          workshop: { ...file.workshop, closedDays },
          suppliers: file.suppliers.map((supplier) => ({ ...supplier, leadDays, closedDays: closedDays.slice(7) })),
          materials: file.materials.map((material) => ({ ...material, safetyDays })),
        });
      }),
      { seed: 50, numRuns: 20 },
    );
  });

  test("on larger workshops", () => {
    fc.assert(fc.property(workshops("medium"), expectAgreement), { seed: 40, numRuns: 8 });
  });
});

test("the invented workshops show every state that the report can show", () => {
  const reports = Array.from({ length: 300 }, (_, seed) =>
    secondReport(randomWorkshop(seed), "replacement", REAL_TODAY),
  );
  const [costs, runs, materials] = [
    reports.flatMap((report) => report.costs),
    reports.flatMap((report) => report.runs),
    reports.flatMap((report) => report.materials),
  ];
  const seen = {
    priced: costs.filter((cost) => cost.error === null).length,
    unpriced: costs.filter((cost) => cost.error !== null).length,
    makeable: runs.filter((run) => run.makeable).length,
    "lacking one material": runs.filter((run) => run.short.length === 1).length,
    "lacking several": runs.filter((run) => run.short.length > 1).length,
    "possible in part": runs.filter((run) => !run.makeable && run.mostUnits > 0).length,
    short: materials.filter((row) => row.shortOn !== null).length,
    "below safety but not short": materials.filter((row) => row.shortOn === null && row.belowSafetyOn !== null).length,
    late: materials.filter((row) => row.daysLate !== null && row.daysLate > 0).length,
    "in time": materials.filter((row) => row.daysLate === 0).length,
    "to buy less than the worst": materials.filter((row) => row.toBuy !== row.shortBy).length,
    "going out of date": materials.filter((row) => row.expiring.length > 0).length,
  };
  expect(Object.entries(seen).filter(([, count]) => count < 20)).toEqual([]);
});

test("the second implementation shares no code with the product: it imports only its own files", () => {
  const folder = new URL("../second/", import.meta.url);
  const imports = readdirSync(folder).flatMap((file) =>
    [...readFileSync(new URL(file, folder), "utf8").matchAll(/\bfrom "([^"]+)"|\bimport\(/g)].map(
      ([whole, from]) => from ?? whole,
    ),
  );
  expect(imports.length).toBeGreaterThan(10);
  expect(imports.filter((from) => !/^\.\/[a-z-]+$/.test(from))).toEqual([]);
});
