import type { Day } from "@/lib/domain/calendar";
import type { Books } from "@/lib/domain/desk";
import { closeAsMade, type MadeRun, type MadeRunResult } from "@/lib/domain/made-run";
import { onTheBooks } from "./on-the-books";
import { type ChangedMeanwhile, plannedAsSeen, type RunAsSeen } from "./planned-run";

export interface CloseRun extends Omit<MadeRun, "run" | "today"> {
  /** The run as it was shown: what it takes from the shelf follows from that. */
  readonly run: RunAsSeen;
  /** Counts where the workshop is not set to a day of its own. */
  readonly realToday: Day;
}

export type CloseRunResult = MadeRunResult | ChangedMeanwhile;

/** Closes a planned run as made today. A second time it changes nothing. @rule CLOSE-1 to CLOSE-5 */
export const closeRun = (asked: CloseRun) => onTheBooks((books) => decideClose(books, asked));

export function decideClose(books: Books, { run, realToday, ...made }: CloseRun): CloseRunResult {
  const found = plannedAsSeen(books, run);
  if (found.kind !== "planned") return found;
  const today = books.workshop.settings.today ?? realToday;
  return closeAsMade(books, { ...made, run: run.id, today });
}
