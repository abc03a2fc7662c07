/** Sharing an amount out so that nothing is lost: the method of the largest remainder. @rule LEDGER-6 */

/**
 * Shares a whole amount out in proportion to weights: each share is rounded towards zero, and what is left goes one by
 * one to the largest remainders, ties to the earlier.
 * @param amount   whole steps of anything; below zero it is shared as its size and taken away
 * @param weights  none below zero, and at least one above
 * @returns shares that come to the amount exactly
 */
export function sharedOut(amount: bigint, weights: readonly bigint[]): readonly bigint[] {
  const all = weights.reduce((sum, weight) => sum + weight, 0n);
  if (all <= 0n || weights.some((weight) => weight < 0n)) throw new RangeError("there is nothing to share by");
  if (amount < 0n) return sharedOut(-amount, weights).map((share) => -share);
  const shares = weights.map((weight) => (amount * weight) / all);
  const remainders = weights.map((weight, at) => ({ at, rest: (amount * weight) % all }));
  const left = amount - shares.reduce((sum, share) => sum + share, 0n);
  const first = remainders.toSorted((a, b) => (a.rest === b.rest ? a.at - b.at : a.rest < b.rest ? 1 : -1));
  for (const { at } of first.slice(0, Number(left))) shares[at] = (shares[at] ?? 0n) + 1n;
  return shares;
}

/**
 * Shares money out: in whole coins where it is whole coins, so that an invoice is shared to the last cent, and in
 * micro-units where it is not.
 * @param coin  the smallest coin of the currency, in micro-units
 */
export const sharedMoney = (amount: bigint, weights: readonly bigint[], coin: bigint): readonly bigint[] =>
  amount % coin === 0n ? sharedOut(amount / coin, weights).map((share) => share * coin) : sharedOut(amount, weights);
