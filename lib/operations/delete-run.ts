import type { Books } from "@/lib/domain/desk";
import type { Run } from "@/lib/domain/workshop";
import { onTheBooks } from "./on-the-books";
import { placeOf } from "./place-in-day";
import { type ChangedMeanwhile, type NotPlanned, plannedAsSeen, type RunAsSeen, withRuns } from "./planned-run";

export type DeleteRunResult =
  /** Planning the run again, before that one, takes it back. */
  | { readonly kind: "deleted"; readonly run: Run; readonly before: string | null; readonly books: Books }
  | ChangedMeanwhile
  | NotPlanned;

/** Takes a planned run out of the plan, where it is still as it was seen. */
export const deleteRun = (seen: RunAsSeen) => onTheBooks((books) => decideDelete(books, seen));

export function decideDelete(books: Books, seen: RunAsSeen): DeleteRunResult {
  const found = plannedAsSeen(books, seen);
  if (found.kind !== "planned") return found;
  const { runs } = books.workshop;
  const others = runs.filter(({ id }) => id !== seen.id);
  return { kind: "deleted", run: found.run, before: placeOf(runs, found.run).before, books: withRuns(books, others) };
}
