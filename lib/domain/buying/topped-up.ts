/** A basket made of covers, mended by the cheapest extra packs where an order is below its minimum or near free shipping. */
import type { ScaledProblem } from "./scaled-problem";
import { type Choice, goodsBySupplier, priceAt, shippingAt } from "./search-node";

/**
 * Whole baskets that cost little, to hold the search against. Not always the cheapest, and null where extra packs of
 * what is ordered already cannot reach a minimum.
 */
export function toppedUp(problem: ScaledProblem, packs: readonly (readonly number[])[]): Choice | null {
  const mended = packs.map((taken) => [...taken]);
  for (const [place, supplier] of problem.suppliers.entries()) {
    const goods = () => goodsBySupplier(problem, mended)[place] ?? 0;
    const before = goods();
    if (before === 0) continue;
    if (before < supplier.minimum && !addPacks(problem, mended, place, supplier.minimum, Infinity)) return null;
    const shipping = shippingAt(supplier, goods());
    if (shipping > 0 && supplier.freeFrom !== Infinity)
      addPacks(problem, mended, place, supplier.freeFrom, goods() + shipping);
  }
  return { packs: mended, cost: costWithShipping(problem, mended) };
}

/** Goods and shipping of packs that keep every minimum. */
export function costWithShipping(problem: ScaledProblem, packs: readonly (readonly number[])[]): number {
  const goods = goodsBySupplier(problem, packs);
  return problem.suppliers.reduce((sum, supplier, place) => {
    const spent = goods[place] ?? 0;
    return sum + spent + shippingAt(supplier, spent);
  }, 0);
}

/** Adds packs of the one line that brings the supplier's goods to the threshold at the least cost below the limit. */
function addPacks(
  problem: ScaledProblem,
  packs: readonly number[][],
  supplier: number,
  threshold: number,
  limit: number,
): boolean {
  const goods = goodsBySupplier(problem, packs)[supplier] ?? 0;
  let best: { readonly line: number[]; readonly place: number; readonly taken: number } | null = null;
  let least = limit;
  for (const [at, { offers }] of problem.materials.entries()) {
    for (const [place, offer] of offers.entries()) {
      const line = packs[at];
      if (line === undefined || offer.supplier !== supplier) continue;
      const had = line[place] ?? 0;
      const others = goods - had * priceAt(offer.steps, had);
      for (const { from, to, price } of offer.steps) {
        const taken = Math.max(from, had + 1, Math.ceil((threshold - others) / price));
        if (taken > to || others + taken * price >= least) continue;
        least = others + taken * price;
        best = { line, place, taken };
      }
    }
  }
  if (best === null) return false;
  best.line[best.place] = best.taken;
  return true;
}
