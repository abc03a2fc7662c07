import type { Books } from "@/lib/domain/desk";
import { onTheBooks } from "./on-the-books";
import { decidePlan, type PlanRun, type PlanRunResult } from "./plan-run";
import { type NoSuchSize, type RunSize, unitsOfSize } from "./run-size";

export interface PlanRunOfSize {
  readonly run: Omit<PlanRun["run"], "units">;
  readonly size: RunSize;
  /** As for a run of so many units. */
  readonly before: string | null;
}

/** Plans a run whose size is said in units or by what is in the vessel; sent twice it is one run. */
export const planRunOfSize = (asked: PlanRunOfSize) => onTheBooks((books) => decide(books, asked));

function decide(books: Books, { run, size, before }: PlanRunOfSize): PlanRunResult | NoSuchSize {
  const sized = unitsOfSize(books, run.product, size);
  return sized.kind === "units" ? decidePlan(books, { run: { ...run, units: sized.units }, before }) : sized;
}
