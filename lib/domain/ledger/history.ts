/** What happened to something, posting by posting, as a running balance. @rule LEDGER-19 */
import { type Entry, NO_VALUE, plusValue, type Posted, type Value } from "./posting";
import type { Balance } from "./standing";

export interface HistoryLine {
  readonly posting: Posted;
  /** The entries of the posting that count here. */
  readonly entries: readonly Entry[];
  /** What they come to. */
  readonly quantity: bigint;
  readonly value: Value;
  /** After them. */
  readonly balance: Balance;
}

/**
 * The history of whatever the entries are chosen for: a material or a lot (its places in the house), a run (its batch),
 * a day (every place in the house, from what stood there before).
 * @returns in the order of days, and of posting within a day; postings of which nothing counts are left out
 */
export function history(
  postings: readonly Posted[],
  counts: (entry: Entry) => boolean,
  before: Balance = { quantity: 0n, value: NO_VALUE },
): readonly HistoryLine[] {
  let balance = before;
  return postings
    .toSorted((a, b) => a.day - b.day || a.sequence - b.sequence)
    .flatMap((posting) => {
      const entries = posting.entries.filter(counts);
      if (entries.length === 0) return [];
      const quantity = entries.reduce((sum, entry) => sum + entry.quantity, 0n);
      const value = entries.map((entry) => entry.value).reduce(plusValue, NO_VALUE);
      balance = { quantity: balance.quantity + quantity, value: plusValue(balance.value, value) };
      return [{ posting, entries, quantity, value, balance }];
    });
}
