/** What one change of a workshop did to its plan: two plans held side by side. */
import type { Day } from "./calendar";
import type { MaterialOutlook, Plan, RunOutlook } from "./plan-figures";
import type { Material } from "./workshop";

export interface PlanChanges {
  /** Runs in both plans that could be made and now cannot, or the other way round, in the order in which they draw. */
  readonly runs: readonly RunChange[];
  /** Materials whose order day is another, the earliest new one first, those without one last. */
  readonly orderDays: readonly OrderDayChange[];
}

export interface RunChange {
  readonly before: RunOutlook;
  readonly after: RunOutlook;
}

/** Null where no order is needed. */
export interface OrderDayChange {
  readonly material: Material;
  readonly before: Day | null;
  readonly after: Day | null;
}

/** Compares two plans of one workshop, by the ids of runs and materials. @rule MAKE-1, PLAN-6 */
export function changedBy(before: Plan, after: Plan): PlanChanges {
  const runBefore = new Map(before.runs.map((outlook) => [outlook.run.id, outlook]));
  const materialBefore = new Map(before.materials.map((outlook) => [outlook.material.id, outlook]));
  return {
    runs: after.runs
      .flatMap((outlook) => runChange(runBefore.get(outlook.run.id), outlook))
      .sort((a, b) => a.after.day - b.after.day),
    orderDays: after.materials
      .flatMap((outlook) => orderDayChange(materialBefore.get(outlook.material.id), outlook))
      .sort((a, b) => (a.after ?? Infinity) - (b.after ?? Infinity) || 0),
  };
}

const runChange = (before: RunOutlook | undefined, after: RunOutlook): readonly RunChange[] =>
  before === undefined || before.makeable === after.makeable ? [] : [{ before, after }];

function orderDayChange(before: MaterialOutlook | undefined, after: MaterialOutlook): readonly OrderDayChange[] {
  if (before === undefined || before.orderBy === after.orderBy) return [];
  return [{ material: after.material, before: before.orderBy, after: after.orderBy }];
}
