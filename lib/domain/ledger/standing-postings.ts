/** The postings that still count: neither taken back by another one nor taking one back. @rule LEDGER-16 */
import { type Entry, type LotName, lotKey, type Posted } from "./posting";
import type { BatchUse } from "./late-cost";

export function standingPostings(postings: readonly Posted[]): readonly Posted[] {
  const gone = new Set(postings.flatMap(({ id, reverses }) => (reverses === null ? [] : [id, reverses])));
  return postings.filter(({ id }) => !gone.has(id));
}

/**
 * What every batch took of each lot, and the lot that came of it.
 * @param postings  all that touch these batches
 */
export function batchUses(postings: readonly Posted[]): readonly BatchUse[] {
  const taken = new Map<string, { readonly run: string; readonly lot: LotName; readonly quantity: bigint }>();
  const madeByRun = new Map<string, LotName>();
  for (const { kind, entries } of standingPostings(postings)) {
    for (const entry of entries) {
      const { place, lot, quantity } = entry;
      if (place.kind !== "batch") continue;
      if (kind === "made" && cameOut(entry)) madeByRun.set(place.run, lot);
      if (lot.of !== "material" || quantity <= 0n) continue;
      const key = `${place.run}\u0000${lotKey(lot)}`;
      taken.set(key, { run: place.run, lot, quantity: (taken.get(key)?.quantity ?? 0n) + quantity });
    }
  }
  return [...taken.values()].map(({ run, lot, quantity }) => ({
    run,
    lot,
    taken: quantity,
    made: madeByRun.get(run) ?? null,
  }));
}

/**
 * Whether an entry of a making, in its batch, is of what came out: finished units leave it, a lot of a material made
 * takes its value alone. @rule LEDGER-12, AHEAD-7
 */
export const cameOut = ({ lot, quantity }: Pick<Entry, "lot" | "quantity">): boolean =>
  lot.of === "finished" ? quantity < 0n : quantity === 0n;
