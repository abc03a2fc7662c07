import type { Books } from "@/lib/domain/desk";
import { onTheBooks } from "./on-the-books";
import { plannedRun } from "./planned-run";
import { decideResize, type ResizeRun, type ResizeRunResult } from "./resize-run";
import { type NoSuchSize, type RunSize, unitsOfSize } from "./run-size";

export interface ResizeRunToSize extends Omit<ResizeRun, "to"> {
  readonly size: RunSize;
}

/** Plans another size for a run, said in units or by what is in the vessel. */
export const resizeRunToSize = (asked: ResizeRunToSize) => onTheBooks((books) => decide(books, asked));

function decide(books: Books, { run: id, from, size }: ResizeRunToSize): ResizeRunResult | NoSuchSize {
  const found = plannedRun(books, id);
  if (found.kind !== "planned") return found;
  const sized = unitsOfSize(books, found.run.product, size);
  switch (sized.kind) {
    case "units":
      return decideResize(books, { run: id, from, to: sized.units });
    case "fills none":
    case "too many":
      return sized;
    case "no such product":
      throw new Error(`run "${id}" is of a product that is not there`);
  }
}
