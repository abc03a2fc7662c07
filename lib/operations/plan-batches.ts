import type { Books } from "@/lib/domain/desk";
import type { Units } from "@/lib/domain/quantity";
import { onTheBooks } from "./on-the-books";
import { decidePlan, type PlanRun, type PlanRunResult } from "./plan-run";

export interface PlanBatches {
  /** The id of the first run; those of the others are made from it. Made when the form is drawn. */
  readonly run: Omit<PlanRun["run"], "units">;
  /** Of each batch. */
  readonly units: readonly Units[];
}

/** Plans several batches of one product for one day, each a run of its own, all or none; sent twice they are there once. */
export const planBatches = ({ run, units }: PlanBatches) =>
  onTheBooks((before) => {
    let books = before;
    for (const [at, each] of units.entries()) {
      const id = at === 0 ? run.id : `${run.id}-${String(at + 1)}`;
      const decided: PlanRunResult = decidePlan(books, { run: { ...run, id, units: each }, before: null });
      if (decided.kind === "planned") ({ books } = decided);
      else if (decided.kind !== "already planned") return decided;
    }
    return { kind: "all planned" as const, ...(books === before ? {} : { books: books satisfies Books }) };
  });
