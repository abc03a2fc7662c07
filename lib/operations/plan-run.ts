import type { Books } from "@/lib/domain/desk";
import type { Run } from "@/lib/domain/workshop";
import { onTheBooks } from "./on-the-books";
import { withRunPlaced } from "./place-in-day";
import { isAsSeen, type NotPlanned, plannedRun, type RunAsSeen, withRuns } from "./planned-run";

export interface PlanRun {
  /** Its id is made when the form is drawn. */
  readonly run: RunAsSeen;
  /** The run of that day before which it is to stand; null for last. */
  readonly before: string | null;
}

export type PlanRunResult =
  /** Deleting the run takes it back. */
  | { readonly kind: "planned"; readonly run: Run; readonly books: Books }
  /** The form was sent before, and this is what it said. */
  | { readonly kind: "already planned"; readonly run: Run }
  /** The form was sent before with something else in it. */
  | { readonly kind: "planned otherwise"; readonly now: Run }
  | { readonly kind: "no such product" }
  | { readonly kind: "no such place" }
  | Extract<NotPlanned, { readonly kind: "already made" }>;

/** Plans a run; sent twice it is one run. */
export const planRun = (asked: PlanRun) => onTheBooks((books) => decidePlan(books, asked));

export function decidePlan(books: Books, { run: asked, before }: PlanRun): PlanRunResult {
  const { runs, products } = books.workshop;
  const found = plannedRun(books, asked.id);
  if (found.kind === "already made") return found;
  if (found.kind === "planned") {
    return isAsSeen(found.run, asked)
      ? { kind: "already planned", run: found.run }
      : { kind: "planned otherwise", now: found.run };
  }
  if (!products.some(({ id }) => id === asked.product)) return { kind: "no such product" };
  const { id, product, date, units } = asked;
  const placed = withRunPlaced(runs, { id, product, date, units, sequence: 0 }, { date, before });
  const run = placed?.find((each) => each.id === id);
  return placed && run ? { kind: "planned", run, books: withRuns(books, placed) } : { kind: "no such place" };
}
