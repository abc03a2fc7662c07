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

/** The figures of a material that a change of the books may alter, and that a page then marks. */
export type MaterialFigures = Pick<MaterialOutlook, "onHand" | "shortOn" | "toBuy" | "orderBy">;

const FIGURES = ["onHand", "shortOn", "toBuy", "orderBy"] as const satisfies readonly (keyof MaterialFigures)[];

/** By the ids of materials, and nothing of the plan besides, so that it can be kept. */
export const figuresByMaterial = (materials: Plan["materials"]): ReadonlyMap<string, MaterialFigures> =>
  new Map(
    materials.map(({ material, onHand, shortOn, toBuy, orderBy }) => [
      material.id,
      { onHand, shortOn, toBuy, orderBy },
    ]),
  );

/** Of the materials in both whose figures differ, what they were. @rule PLAN-6 */
export function changedMaterials(
  before: ReadonlyMap<string, MaterialFigures>,
  after: ReadonlyMap<string, MaterialFigures>,
): ReadonlyMap<string, MaterialFigures> {
  const changed = new Map<string, MaterialFigures>();
  for (const [id, was] of before) {
    const now = after.get(id);
    if (now !== undefined && FIGURES.some((figure) => now[figure] !== was[figure])) changed.set(id, was);
  }
  return changed;
}
