import type { Day } from "@/lib/domain/calendar";
import type { Books } from "@/lib/domain/desk";
import type { Run } from "@/lib/domain/workshop";
import { onTheBooks } from "./on-the-books";
import { type Place, placeOf, withRunPlaced } from "./place-in-day";
import { type ChangedMeanwhile, type NotPlanned, plannedRun, withRuns } from "./planned-run";

export interface MoveRun {
  readonly run: string;
  /** The day on which it was shown. */
  readonly from: Day;
  readonly to: Place;
}

export type MoveRunResult =
  /** `was` takes it back. */
  | { readonly kind: "moved"; readonly run: Run; readonly was: Place; readonly books: Books }
  | { readonly kind: "already there"; readonly run: Run }
  /** The run that it was to stand before is not on that day. */
  | { readonly kind: "no such place" }
  | ChangedMeanwhile
  | NotPlanned;

/** Moves a planned run to another day, or to another place in its day. @rule PLAN-4 */
export const moveRun = (move: MoveRun) => onTheBooks((books) => decideMove(books, move));

export function decideMove(books: Books, { run: id, from, to }: MoveRun): MoveRunResult {
  const found = plannedRun(books, id);
  if (found.kind !== "planned") return found;
  const { runs } = books.workshop;
  // Sent twice, it finds the run on the day it was to go to.
  if (found.run.date !== from && found.run.date !== to.date) return { kind: "stale", now: found.run };
  const placed = withRunPlaced(runs, found.run, to);
  if (placed === null) return { kind: "no such place" };
  const was = placeOf(runs, found.run);
  const run = placed.find((each) => each.id === id) ?? found.run;
  if (was.date === to.date && was.before === to.before) return { kind: "already there", run: found.run };
  return { kind: "moved", run, was, books: withRuns(books, placed) };
}
