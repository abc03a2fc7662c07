/** The desk as the rows of the store. `position` keeps the order of each list. */
import type { Desk } from "@/lib/domain/desk";
import { lineCells, placed, within } from "./rows-of-workshop";
import { rowsOfBatches } from "./rows-of-bench";
import { rowsOfTrials, rowsOfVersions } from "./rows-of-versions";
import type { Row, RowsOfLists } from "./tables";

/** The rows of each part of the desk. */
export const DESK_ROWS = {
  retired: (retired: Desk["retired"]) => ({
    retiredSuppliers: retired.suppliers.map(idRow),
    retiredMaterials: retired.materials.map(idRow),
    retiredOffers: retired.offers.map(idRow),
    retiredFormulas: retired.formulas.map(idRow),
    retiredProducts: retired.products.map(idRow),
  }),
  drafts: (drafts: Desk["drafts"]) => ({
    drafts: placed(drafts),
    draftLines: within(
      drafts,
      ({ lines }) => lines,
      (draft, line, position) => ({ draft: draft.id, ...lineCells(line, position) }),
    ),
    draftPhases: within(
      drafts,
      ({ phases }) => phases,
      ({ id }, phase, position) => ({ ...phase, draft: id, position }),
    ),
    draftSteps: within(
      drafts,
      ({ steps }) => steps,
      ({ id }, step, position) => ({ ...step, draft: id, position }),
    ),
    draftChecks: within(
      drafts,
      ({ checks }) => checks,
      ({ id }, check, position) => ({ ...check, draft: id, position }),
    ),
  }),
  benchMinutes: (minutes: Desk["benchMinutes"]) => ({ benchWeek: minutes === null ? [] : [benchRow(minutes)] }),
  closedRuns: (closedRuns: Desk["closedRuns"]) => ({
    closedRuns: placed(closedRuns).map(({ run, ...closed }) => ({ ...run, ...closed })),
    closedRunVersions: within(
      closedRuns,
      ({ versions }) => versions,
      ({ run }, used, position) => ({ ...used, run: run.id, position }),
    ),
  }),
  versions: rowsOfVersions,
  trials: rowsOfTrials,
  batches: rowsOfBatches,
  batchCodeScheme: (scheme: Desk["batchCodeScheme"]) => ({
    batchCodeScheme: scheme === null ? [] : [{ id: 1, ...scheme }],
  }),
  notation: (notation: Desk["notation"]) => ({ notation: [{ id: 1, ...notation }] }),
  countRhythms: (countRhythms: Desk["countRhythms"]) => ({
    countRhythms: placed(countRhythms).map(({ material, ...rhythm }) => ({ id: material, ...rhythm })),
  }),
} satisfies RowsOfLists<Desk>;

function idRow(id: string, position: number): Row<"retiredSuppliers"> {
  return { id, position };
}

function benchRow(minutes: NonNullable<Desk["benchMinutes"]>): Row<"benchWeek"> {
  const [monday, tuesday, wednesday, thursday, friday, saturday, sunday] = minutes;
  return { id: 1, monday, tuesday, wednesday, thursday, friday, saturday, sunday };
}
