import { type Day, daysAfter, mondayOf } from "@/lib/domain/calendar";
import { byCodePoint } from "@/lib/domain/code-point-order";
import { byId } from "@/lib/domain/index-by-id";
import type { CountDue } from "@/lib/domain/ledger/counts-due";
import type { MaterialOutlook, Plan, RunOutlook } from "@/lib/domain/plan-figures";
import { type RunInstead, runsInstead } from "@/lib/domain/run-instead";
import type { Material, Workshop } from "@/lib/domain/workshop";

/** What of a plan asks for a hand, soonest first. */
export interface Matters {
  readonly notMakeable: readonly RunOutlook[];
  /** Materials to buy whose order day is not after the end of next week, or that nobody offers. */
  readonly toOrder: readonly MaterialOutlook[];
  readonly goingOut: readonly MaterialOutlook[];
  readonly unsourced: number;
  /** The run that makes what nobody offers, by material id. @rule AHEAD-9 */
  readonly instead: ReadonlyMap<string, RunInstead>;
  readonly runs: number;
  readonly materials: number;
  /** Materials that cover every run and of which nothing is lost. */
  readonly quiet: number;
  readonly lastDay: Day;
}

/** A material that is due for a count. */
export interface CountMatter {
  readonly material: Material;
  readonly due: CountDue;
}

export function countMatters(due: readonly CountDue[], materials: readonly Material[]): readonly CountMatter[] {
  const materialOf = byId("material", materials);
  return due.map((each) => ({ material: materialOf(each.rhythm.material), due: each }));
}

export function whatMatters(plan: Plan, workshop: Workshop): Matters {
  const { runs, materials, today, lastDay } = plan;
  const endOfNextWeek = daysAfter(mondayOf(today), 13);
  const unoffered = materials.filter(({ toBuy, pricedOffer }) => toBuy > 0n && pricedOffer === null);
  const instead = runsInstead(workshop, unoffered, today);
  const soonest =
    (day: (outlook: MaterialOutlook) => Day | null | undefined) => (a: MaterialOutlook, b: MaterialOutlook) =>
      (day(a) ?? Infinity) - (day(b) ?? Infinity) || byCodePoint(a.material.id, b.material.id);
  return {
    notMakeable: runs
      .filter(({ makeable }) => !makeable)
      .sort((a, b) => a.run.date - b.run.date || a.run.sequence - b.run.sequence || byCodePoint(a.run.id, b.run.id)),
    toOrder: materials
      .filter(({ toBuy, orderBy }) => toBuy > 0n && (orderBy === null || orderBy <= endOfNextWeek))
      .sort(soonest(({ orderBy }) => orderBy ?? today)),
    goingOut: materials
      .filter(({ expiring }) => expiring.length > 0)
      .sort(soonest(({ expiring }) => Math.min(...expiring.map(({ on }) => on)) as Day)),
    unsourced: unoffered.filter(({ material }) => !instead.has(material.id)).length,
    instead,
    runs: runs.length,
    materials: materials.length,
    quiet: materials.filter(({ belowSafetyOn, expiring }) => belowSafetyOn === null && expiring.length === 0).length,
    lastDay,
  };
}
