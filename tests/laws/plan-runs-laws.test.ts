/** Laws of what can be made. */
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { planned } from "../agreement/agreement";
import { workshops } from "../helpers/random-workshop";
import type { WorkshopFile } from "../second/file-shape";
import { withLot } from "./workshop-changes";

const withUnits = (file: WorkshopFile, runId: string, units: number): WorkshopFile => ({
  ...file,
  runs: file.runs.map((run) => (run.id === runId ? { ...run, units } : run)),
});

const outlookOf = (file: WorkshopFile, runId: string) => {
  const outlook = planned(file).plan.runs.find(({ run }) => run.id === runId);
  if (outlook === undefined) throw new Error(`no run is called ${runId}`);
  return outlook;
};

/** The file with its first run alone, which then finds the whole shelf. */
const withOneRun = (file: WorkshopFile): WorkshopFile => ({ ...file, runs: file.runs.slice(0, 1) });

describe("what can be made", () => {
  test("[MAKE-3] a run of the most units can be made, and of one more cannot", () => {
    fc.assert(
      fc.property(workshops("small"), (file) => {
        for (const { run, mostUnits } of planned(file).plan.runs) {
          if (mostUnits > 0n) expect(outlookOf(withUnits(file, run.id, Number(mostUnits)), run.id).makeable).toBe(true);
          expect(outlookOf(withUnits(file, run.id, Number(mostUnits) + 1), run.id).makeable).toBe(false);
        }
      }),
      { seed: 21, numRuns: 120 },
    );
  });

  test("[MAKE-1, MAKE-2] a run can be made exactly where nothing is short, where its units are not above the most", () => {
    fc.assert(
      fc.property(workshops("small"), (file) => {
        for (const { run, makeable, mostUnits, short } of planned(file).plan.runs) {
          expect(makeable).toBe(short.length === 0);
          expect(makeable).toBe(run.units <= mostUnits);
        }
      }),
      { seed: 22, numRuns: 150 },
    );
  });

  test("[MAKE-1] a run draws its need as far as it is there, or nothing", () => {
    fc.assert(
      fc.property(workshops("small"), (file) => {
        for (const { makeable, draws, short } of planned(file).plan.runs)
          for (const { material, need, least, there, drawn } of draws) {
            expect(drawn).toBe(!makeable ? 0n : need < there ? need : there);
            expect(least <= need).toBe(true);
            const lacking = short.find((shortage) => shortage.material.id === material.id)?.by ?? 0n;
            expect(lacking).toBe(least > there ? least - there : 0n);
          }
      }),
      { seed: 23, numRuns: 150 },
    );
  });

  test("[MAKE-3] more of a material never lowers what a run could make, and raises it only if it was the limit", () => {
    fc.assert(
      fc.property(workshops("small").map(withOneRun), fc.nat(), (file, which) => {
        const [outlook] = planned(file).plan.runs;
        const material = file.materials[which % file.materials.length];
        if (outlook === undefined || material === undefined) return;
        expect(outlook.draws.map((draw) => draw.material.id)).toContain(outlook.limiting.id);
        const remaining = material.measure === "mass" ? "250000.000001 g" : "3000 each";
        const more = outlookOf(withLot(file, { material: material.id, remaining, expires: null }), outlook.run.id);
        expect(more.mostUnits >= outlook.mostUnits).toBe(true);
        if (material.id !== outlook.limiting.id) expect(more.mostUnits).toBe(outlook.mostUnits);
      }),
      { seed: 24, numRuns: 300 },
    );
  });

  test("[PLAN-1, MAKE-1] a run that is alone and lacks nothing in the projection can be made", () => {
    fc.assert(
      fc.property(workshops("small").map(withOneRun), (file) => {
        const { plan } = planned(file);
        const [outlook] = plan.runs;
        if (outlook === undefined || outlook.day > plan.lastDay) return;
        const draws = plan.materials.flatMap(({ events }) => events.filter((event) => event.kind === "drawn"));
        expect(draws.length).toBe(outlook.draws.length);
        if (draws.every((event) => event.lacking === 0n)) expect(outlook.makeable).toBe(true);
      }),
      { seed: 26, numRuns: 200 },
    );
  });
});
