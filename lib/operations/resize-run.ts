import type { Books } from "@/lib/domain/desk";
import type { Units } from "@/lib/domain/quantity";
import type { Run } from "@/lib/domain/workshop";
import { onTheBooks } from "./on-the-books";
import { type ChangedMeanwhile, type NotPlanned, plannedRun, withRuns } from "./planned-run";
import { standing } from "./standing";

export interface ResizeRun {
  readonly run: string;
  /** The units that were shown. */
  readonly from: Units;
  /** At least one. */
  readonly to: Units;
}

export type ResizeRunResult =
  /** `was` takes it back. */
  | { readonly kind: "resized"; readonly run: Run; readonly was: Units; readonly books: Books }
  | { readonly kind: "already so"; readonly run: Run }
  | ChangedMeanwhile
  | NotPlanned;

/** Plans another number of units for a run. */
export const resizeRun = (resize: ResizeRun) => onTheBooks((books) => decideResize(books, resize));

export function decideResize(books: Books, { run: id, from, to }: ResizeRun): ResizeRunResult {
  const found = plannedRun(books, id);
  if (found.kind !== "planned") return found;
  switch (standing(found.run.units, { from, to })) {
    case "as asked":
      return { kind: "already so", run: found.run };
    case "changed":
      return { kind: "stale", now: found.run };
    case "as drawn": {
      const run = { ...found.run, units: to };
      const runs = books.workshop.runs.map((each) => (each.id === id ? run : each));
      return { kind: "resized", run, was: found.run.units, books: withRuns(books, runs) };
    }
  }
}
