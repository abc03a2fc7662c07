import "server-only";
import type { Batch } from "@/lib/domain/bench/batch";
import { inBatchesOf } from "@/lib/domain/bench/in-batches";
import type { Day } from "@/lib/domain/calendar";
import { figuresByMaterial, type MaterialFigures } from "@/lib/domain/plan-changes";
import { plan, type Prepared, preparedFor } from "@/lib/domain/plan";
import type { Plan } from "@/lib/domain/plan-figures";
import { differInRunsAlone, drawAlike } from "@/lib/domain/same-plan";
import type { Workshop } from "@/lib/domain/workshop";

export interface KeptPlan {
  readonly workshop: Workshop;
  readonly today: Day;
  readonly batches: readonly Batch[];
  readonly plan: Plan;
  /** What the plan was judged from. */
  readonly prepared: Prepared;
  readonly figures: ReadonlyMap<string, MaterialFigures>;
}

/** The plan that stands and the one before it, which the page after a change holds against it. */
const MOST_KEPT = 2;

/** The last first. They are lost with the server, and made again. */
let kept: readonly KeptPlan[] = [];

/** The plan of a workshop: made once for each state of it, however many pages ask. */
export function planOnce(workshop: Workshop, today: Day, batches: readonly Batch[]): KeptPlan {
  const known = kept.find(
    (each) =>
      each.today === today &&
      each.batches === batches &&
      each.workshop.runs === workshop.runs &&
      differInRunsAlone(each.workshop, workshop),
  );
  if (known) return known;
  const near = nearOf(workshop, today, batches);
  const prepared = preparedFor(workshop, today, inBatchesOf(batches), near?.prepared);
  const planned = plan(workshop, today, prepared, near);
  const made = { workshop, today, batches, plan: planned, prepared, figures: figuresByMaterial(planned.materials) };
  kept = [made, ...kept].slice(0, MOST_KEPT);
  return made;
}

/** One that is kept of the same day and the same workshop and bench but for its runs. */
const nearOf = (workshop: Workshop, today: Day, batches: readonly Batch[]): KeptPlan | null =>
  kept.find((each) => each.today === today && each.batches === batches && differInRunsAlone(each.workshop, workshop)) ??
  null;

/** The plan of a workshop as it was before a change of its runs: kept from the page on which the change was made. */
export function planBefore(was: Workshop, today: Day): Plan {
  const known = kept.find(
    (each) => each.today === today && differInRunsAlone(each.workshop, was) && drawAlike(each.workshop.runs, was.runs),
  );
  if (known) return known.plan;
  const batches = kept[0]?.batches ?? [];
  const near = nearOf(was, today, batches);
  return plan(was, today, preparedFor(was, today, inBatchesOf(batches), near?.prepared), near);
}
