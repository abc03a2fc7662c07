/** The rows of the store as the desk. */
import type { ClosedRun, Desk } from "@/lib/domain/desk";
import { DEFAULT_NOTATION, LOCALES } from "@/lib/domain/notation";
import { madeOfTables } from "./made-of-tables";
import { batchesOfRows } from "./rows-of-bench";
import { trialsOfRows, versionsOfRows } from "./rows-of-versions";
import type { DeskRows, Row } from "./tables";
import { checkOf, formulaLineOf, inner, phaseOf, stepOf, withoutPosition } from "./workshop-of-rows";

/** The parts of which nothing has changed are those that came back last. */
export const deskOfRows = (rows: DeskRows): Desk => ({
  retired: retiredOf(rows),
  drafts: draftsOf(rows),
  benchMinutes: benchMinutesOf(rows),
  closedRuns: closedRunsOf(rows),
  countRhythms: countRhythmsOf(rows),
  versions: versionsOf(rows),
  trials: trialsOf(rows),
  batches: batchesOf(rows),
  batchCodeScheme: batchCodeSchemeOf(rows),
  notation: notationOf(rows),
});

const retiredOf = madeOfTables(
  ["retiredSuppliers", "retiredMaterials", "retiredOffers", "retiredFormulas", "retiredProducts"],
  (rows): Desk["retired"] => ({
    suppliers: rows.retiredSuppliers.map(idOf),
    materials: rows.retiredMaterials.map(idOf),
    offers: rows.retiredOffers.map(idOf),
    formulas: rows.retiredFormulas.map(idOf),
    products: rows.retiredProducts.map(idOf),
  }),
);

const draftsOf = madeOfTables(
  ["drafts", "draftLines", "draftPhases", "draftSteps", "draftChecks"],
  (rows): Desk["drafts"] => {
    const linesOf = inner(rows.draftLines, ({ draft }) => draft);
    const phasesOf = inner(rows.draftPhases, ({ draft }) => draft);
    const stepsOf = inner(rows.draftSteps, ({ draft }) => draft);
    const checksOf = inner(rows.draftChecks, ({ draft }) => draft);
    return rows.drafts.map((row) => ({
      ...withoutPosition(row),
      lines: linesOf(row.id).map(formulaLineOf),
      phases: phasesOf(row.id).map(phaseOf),
      steps: stepsOf(row.id).map(stepOf),
      checks: checksOf(row.id).map(checkOf),
    }));
  },
);

const benchMinutesOf = madeOfTables(["benchWeek"], ({ benchWeek: [week] }): Desk["benchMinutes"] =>
  week === undefined ? null : minutesOf(week),
);

const closedRunsOf = madeOfTables(["closedRuns", "closedRunVersions"], ({ closedRuns, closedRunVersions }) => {
  const usedBy = inner(closedRunVersions, ({ run }) => run);
  return closedRuns.map((row) => closedRunOf(row, usedBy(row.id)));
});

const versionsOf = madeOfTables(
  ["versions", "versionLines", "versionPhases", "versionSteps", "versionChecks", "acceptedWarnings"],
  versionsOfRows,
);

const trialsOf = madeOfTables(["trials", "trialLines", "trialReadings"], trialsOfRows);

const batchesOf = madeOfTables(
  ["batches", "batchVersions", "batchLines", "benchNotes", "batchLabels", "batchLabelParts"],
  batchesOfRows,
);

const batchCodeSchemeOf = madeOfTables(
  ["batchCodeScheme"],
  ({ batchCodeScheme: [scheme] }): Desk["batchCodeScheme"] => {
    if (scheme === undefined) return null;
    const { id: _id, ...said } = scheme;
    return said;
  },
);

const notationOf = madeOfTables(["notation"], ({ notation: [kept] }): Desk["notation"] =>
  kept !== undefined && LOCALES.includes(kept.locale) ? { locale: kept.locale, units: kept.units } : DEFAULT_NOTATION,
);

const countRhythmsOf = madeOfTables(["countRhythms"], ({ countRhythms }): Desk["countRhythms"] =>
  countRhythms.map(({ id, days, draws }) => ({ material: id, days, draws })),
);

function idOf({ id }: Row<"retiredSuppliers">): string {
  return id;
}

function minutesOf(week: Row<"benchWeek">): NonNullable<Desk["benchMinutes"]> {
  const { monday, tuesday, wednesday, thursday, friday, saturday, sunday } = week;
  return [monday, tuesday, wednesday, thursday, friday, saturday, sunday];
}

function closedRunOf(row: Row<"closedRuns">, used: readonly Row<"closedRunVersions">[]): ClosedRun {
  const { madeOn, unitsMade, ...run } = withoutPosition(row);
  return { run, madeOn, unitsMade, versions: used.map(({ formula, number }) => ({ formula, number })) };
}
