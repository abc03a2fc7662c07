import { codeOf } from "@/lib/domain/bench/batch";
import { heldUnder } from "@/lib/domain/bench/codes";
import type { Books } from "@/lib/domain/desk";
import type { LotName } from "@/lib/domain/ledger/posting";

/** What came out of a batch that waits for a second look is released or rejected by its record alone. @rule BENCH-8 */
export interface WaitsAtBench {
  readonly kind: "waits at the bench";
  /** The run of the batch. */
  readonly run: string;
  readonly code: string;
}

/** The batch that one of the lots waits in, or null. */
export function waitsAtBench(books: Books, lots: readonly LotName[]): WaitsAtBench | null {
  const [batch] = lots.flatMap((lot) => heldUnder(books, lot) ?? []);
  return batch === undefined ? null : { kind: "waits at the bench", run: batch.run.id, code: codeOf(batch) };
}
