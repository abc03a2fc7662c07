import type { Day } from "@/lib/domain/calendar";
import { closeAsMade, type LotDraw, type MadeRun, type MadeRunResult } from "@/lib/domain/made-run";
import type { NoWorkshop } from "@/lib/store/change-books";
import { type Ledger, postToBooks, type PostDecision } from "@/lib/store/post-to-books";
import { decideRun } from "./make-run";
import { todayIn } from "./on-the-ledger";
import type { Told } from "./on-the-books";
import { type ChangedMeanwhile, plannedAsSeen, type RunAsSeen } from "./planned-run";

export interface CloseRun extends Omit<MadeRun, "run" | "today"> {
  /** The run as it was shown: what it takes from the shelf follows from that. */
  readonly run: RunAsSeen;
  /** Counts where the workshop is not set to a day of its own. */
  readonly realToday: Day;
}

export type CloseRunResult = Told<MadeRunResult> | ChangedMeanwhile;

/**
 * Closes a planned run as made today, with the minutes and the draws that are planned. A second time it changes nothing.
 * @rule CLOSE-1 to CLOSE-5
 */
export const closeRun = (asked: CloseRun): Promise<CloseRunResult | NoWorkshop> =>
  postToBooks((ledger) => decideClose(ledger, asked));

async function decideClose(ledger: Ledger, asked: CloseRun): Promise<PostDecision<CloseRunResult>> {
  const { books, next } = ledger;
  const found = plannedAsSeen(books, asked.run);
  if (found.kind !== "planned") return { kind: "refuse", result: found };
  const today = todayIn(books, asked.realToday);
  const closed = closeAsMade(books, { ...asked, run: asked.run.id, today });
  if (closed.kind !== "made") return { kind: "refuse", result: closed };
  const decided = await decideRun(
    ledger,
    {
      ...asked,
      key: `making ${String(next)} of run ${asked.run.id}`,
      day: today,
      note: null,
      outOfDate: "refuse",
      minutes: null,
      draws: closed.draws.map(drawOf),
    },
    today,
  );
  if (decided.kind === "finished lot exists") return { kind: "refuse", result: { kind: "finished lot exists" } };
  if (decided.kind !== "posted") throw new Error(`what closing draws cannot be posted: ${decided.kind}`);
  const { draws, value } = closed;
  const failed = "failed" in decided ? decided.failed : null;
  return { ...decided, kind: "post", failed, result: { kind: "made", draws, value } };
}

const drawOf = ({ lot, quantity }: LotDraw) => ({ lot: lot.id, quantity, spilt: 0n });
