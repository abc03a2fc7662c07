/** A run as a screen has shown it, looked up in the books as they are now. */
import type { Batch } from "@/lib/domain/bench/batch";
import type { Books, ClosedRun } from "@/lib/domain/desk";
import type { Run } from "@/lib/domain/workshop";

/** What a person has seen of a run before deciding on it; its place in the day may change meanwhile. */
export type RunAsSeen = Pick<Run, "id" | "product" | "date" | "units">;

export type NotPlanned =
  /** It was made meanwhile. @rule CLOSE-1 */
  | { readonly kind: "already made"; readonly closed: ClosedRun }
  | { readonly kind: "no such run" }
  /** It was started as a batch, and is closed or given up at the bench alone. @rule BENCH-6 */
  | { readonly kind: "at the bench"; readonly batch: Batch };

export interface ChangedMeanwhile {
  readonly kind: "stale";
  /** As it is now. */
  readonly now: Run;
}

export function plannedRun(
  { workshop, desk }: Books,
  id: string,
): { readonly kind: "planned"; readonly run: Run } | NotPlanned {
  const run = workshop.runs.find((each) => each.id === id);
  const batch = desk.batches.find((each) => each.run.id === id);
  if (run && batch) return { kind: "at the bench", batch };
  if (run) return { kind: "planned", run };
  const closed = desk.closedRuns.find((each) => each.run.id === id);
  return closed ? { kind: "already made", closed } : { kind: "no such run" };
}

/** The planned run, where it is still as it was seen. */
export function plannedAsSeen(books: Books, seen: RunAsSeen): ReturnType<typeof plannedRun> | ChangedMeanwhile {
  const found = plannedRun(books, seen.id);
  return found.kind !== "planned" || isAsSeen(found.run, seen) ? found : { kind: "stale", now: found.run };
}

export const isAsSeen = (run: Run, { product, date, units }: RunAsSeen): boolean =>
  run.product === product && run.date === date && run.units === units;

/** The books with other runs in the plan. */
export const withRuns = ({ workshop, desk }: Books, runs: readonly Run[]): Books => ({
  workshop: { ...workshop, runs },
  desk,
});
