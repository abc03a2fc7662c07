/**
 * What a workshop's past is, beside the workshop as it stands: all that was posted, the runs that were made, the lots
 * that no list shows any more, earlier versions of formulas and trials. @rule LEDGER-24, VERSION-1, TRIAL-1
 */
import type { Day } from "@/lib/domain/calendar";
import type { ClosedRun, Desk } from "@/lib/domain/desk";
import type { Workshop } from "@/lib/domain/workshop";
import { isOpeningsOf, openings } from "./opening";
import type { LotName, Posted } from "./posting";
import type { Receipt } from "./receipt";

export interface Past extends Pick<Desk, "versions" | "trials" | "batches"> {
  readonly postings: readonly Posted[];
  readonly closedRuns: readonly ClosedRun[];
  readonly struckOff: readonly StruckOffLot[];
  readonly receipts: readonly Receipt[];
}

/** A lot that the postings name and no list shows: taken out of the Book, or of a batch that failed. */
export interface StruckOffLot {
  readonly lot: LotName;
  /** The material or the product; null where that was removed as well. */
  readonly item: string | null;
  /** Received, or made. */
  readonly since: Day;
  readonly expires: Day | null;
}

/** The past of a workshop of which nothing is known but what stands. @rule LEDGER-21 */
export const pastOpening = (workshop: Pick<Workshop, "lots" | "finished">): Past => ({
  postings: openings(workshop).map((posting, at) => ({ ...posting, sequence: at + 1 })),
  closedRuns: [],
  struckOff: [],
  receipts: [],
  versions: [],
  trials: [],
  batches: [],
});

/** Whether the workshop as it stands says all of its past. */
export const saysAll = (workshop: Workshop, { postings, ...lists }: Past): boolean =>
  [lists.closedRuns, lists.struckOff, lists.versions, lists.trials, lists.batches].every((list) => list.length === 0) &&
  isOpeningsOf(workshop, postings);
