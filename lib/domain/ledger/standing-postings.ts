/** The postings that still count: neither taken back by another one nor taking one back. @rule LEDGER-16 */
import { type LotName, lotKey, type Posted } from "./posting";
import type { BatchUse } from "./late-cost";

export function standingPostings(postings: readonly Posted[]): readonly Posted[] {
  const gone = new Set(postings.flatMap(({ id, reverses }) => (reverses === null ? [] : [id, reverses])));
  return postings.filter(({ id }) => !gone.has(id));
}

/**
 * What every batch took of each lot, and the finished lot that came of it.
 * @param postings  all that touch these batches
 */
export function batchUses(postings: readonly Posted[]): readonly BatchUse[] {
  const taken = new Map<string, { readonly run: string; readonly lot: LotName; readonly quantity: bigint }>();
  const finishedByRun = new Map<string, string>();
  for (const { entries } of standingPostings(postings)) {
    for (const { place, lot, quantity } of entries) {
      if (place.kind !== "batch") continue;
      if (lot.of === "finished" && quantity < 0n) finishedByRun.set(place.run, lot.id);
      if (lot.of !== "material" || quantity <= 0n) continue;
      const key = `${place.run}\u0000${lotKey(lot)}`;
      taken.set(key, { run: place.run, lot, quantity: (taken.get(key)?.quantity ?? 0n) + quantity });
    }
  }
  return [...taken.values()].map(({ run, lot, quantity }) => ({
    run,
    lot,
    taken: quantity,
    finished: finishedByRun.get(run) ?? null,
  }));
}
