/** The rows of the store as the desk. */
import type { ClosedRun, Desk } from "@/lib/domain/desk";
import { trialsOfRows, versionsOfRows } from "./rows-of-versions";
import type { DeskRows, Row } from "./tables";
import { formulaLineOf, inner, phaseOf, stepOf, withoutPosition } from "./workshop-of-rows";

export function deskOfRows(rows: DeskRows): Desk {
  const linesOf = inner(rows.draftLines, ({ draft }) => draft);
  const phasesOf = inner(rows.draftPhases, ({ draft }) => draft);
  const stepsOf = inner(rows.draftSteps, ({ draft }) => draft);
  const usedBy = inner(rows.closedRunVersions, ({ run }) => run);
  const [week] = rows.benchWeek;
  return {
    retired: {
      suppliers: rows.retiredSuppliers.map(idOf),
      materials: rows.retiredMaterials.map(idOf),
      offers: rows.retiredOffers.map(idOf),
      formulas: rows.retiredFormulas.map(idOf),
      products: rows.retiredProducts.map(idOf),
    },
    drafts: rows.drafts.map((row) => ({
      ...withoutPosition(row),
      lines: linesOf(row.id).map(formulaLineOf),
      phases: phasesOf(row.id).map(phaseOf),
      steps: stepsOf(row.id).map(stepOf),
    })),
    benchMinutes: week === undefined ? null : minutesOf(week),
    closedRuns: rows.closedRuns.map((row) => closedRunOf(row, usedBy(row.id))),
    versions: versionsOfRows(rows),
    trials: trialsOfRows(rows),
    countRhythms: rows.countRhythms.map(({ id, days, draws }) => ({ material: id, days, draws })),
  };
}

const idOf = ({ id }: Row<"retiredSuppliers">): string => id;

const minutesOf = (week: Row<"benchWeek">): NonNullable<Desk["benchMinutes"]> => [
  week.monday,
  week.tuesday,
  week.wednesday,
  week.thursday,
  week.friday,
  week.saturday,
  week.sunday,
];

function closedRunOf(row: Row<"closedRuns">, used: readonly Row<"closedRunVersions">[]): ClosedRun {
  const { madeOn, unitsMade, ...run } = withoutPosition(row);
  return { run, madeOn, unitsMade, versions: used.map(({ formula, number }) => ({ formula, number })) };
}
