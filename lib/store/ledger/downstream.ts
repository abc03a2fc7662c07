import type { BatchUse } from "@/lib/domain/ledger/late-cost";
import { type LotName, lotKey, type Posted } from "@/lib/domain/ledger/posting";
import { batchUses } from "@/lib/domain/ledger/standing-postings";
import type { LedgerReader } from "./ledger-reader";

export interface Downstream {
  /** What batches took of these lots, and of what came of them. */
  readonly uses: readonly BatchUse[];
  /** These lots, and every lot that came of a batch that took of one. */
  readonly lots: readonly LotName[];
  /** All that touch these lots and the batches that took of them, each once. */
  readonly postings: readonly Posted[];
}

type Reading = Pick<LedgerReader, "postingsOfLots" | "postingsOfRuns" | "runsOfLots">;

/** Follows lots through the batches that took of them, and through the lots made there. @rule AHEAD-8 */
export async function downstreamOf(ledger: Reading, from: readonly LotName[]): Promise<Downstream> {
  const lots = new Map(from.map((lot) => [lotKey(lot), lot]));
  const postings = [...(await ledger.postingsOfLots(from))];
  const uses: BatchUse[] = [];
  for (let open = from; open.length > 0;) {
    const keys = new Set(open.map(lotKey));
    const ofRuns = await ledger.postingsOfRuns(await ledger.runsOfLots(open));
    const own = batchUses(ofRuns).filter(({ lot }) => keys.has(lotKey(lot)));
    open = own.flatMap(({ made }) => (made === null || lots.has(lotKey(made)) ? [] : [made]));
    for (const lot of open) lots.set(lotKey(lot), lot);
    uses.push(...own);
    postings.push(...ofRuns, ...(await ledger.postingsOfLots(open)));
  }
  const eachOnce = new Map(postings.map((posting) => [posting.sequence, posting]));
  return { uses, lots: [...lots.values()], postings: [...eachOnce.values()] };
}
