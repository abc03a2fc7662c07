/** A basket made of covers, mended by the cheapest extra packs where an order is below its minimum or near free shipping. */
import type { ScaledProblem } from "./scaled-problem";
import { type Choice, goodsBySupplier, priceAt, shippingAt } from "./search-node";

/**
 * Whole baskets that cost little, to hold the search against. Not always the cheapest, and null where extra packs of
 * what is ordered already cannot reach a minimum.
 */
export function toppedUp(problem: ScaledProblem, packs: readonly (readonly number[])[]): Choice | null {
  const goods = [...goodsBySupplier(problem, packs)];
  const mended = [...packs];
  const reach = (supplier: number, threshold: number, limit: number): boolean => {
    const more = morePacks(problem, mended, supplier, goods[supplier] ?? 0, threshold, limit);
    if (more === null) return false;
    mended[more.material] = (mended[more.material] ?? []).with(more.place, more.taken);
    goods[supplier] = more.goods;
    return true;
  };
  for (const [place, supplier] of problem.suppliers.entries()) {
    const spent = goods[place] ?? 0;
    if (spent === 0) continue;
    if (spent < supplier.minimum && !reach(place, supplier.minimum, Infinity)) return null;
    const shipping = shippingAt(supplier, goods[place] ?? 0);
    if (shipping > 0 && supplier.freeFrom !== Infinity) reach(place, supplier.freeFrom, (goods[place] ?? 0) + shipping);
  }
  return { packs: mended, cost: costOfGoods(problem, goods) };
}

/** Goods and shipping of packs that keep every minimum. */
export const costWithShipping = (problem: ScaledProblem, packs: readonly (readonly number[])[]): number =>
  costOfGoods(problem, goodsBySupplier(problem, packs));

const costOfGoods = ({ suppliers }: ScaledProblem, goods: readonly number[]): number =>
  suppliers.reduce((sum, supplier, place) => {
    const spent = goods[place] ?? 0;
    return sum + spent + shippingAt(supplier, spent);
  }, 0);

interface MorePacks {
  readonly material: number;
  readonly place: number;
  readonly taken: number;
  /** The supplier's goods with them. */
  readonly goods: number;
}

/** The packs of one line that bring the supplier's goods to the threshold at the least cost below the limit. */
function morePacks(
  problem: ScaledProblem,
  packs: readonly (readonly number[])[],
  supplier: number,
  goods: number,
  threshold: number,
  limit: number,
): MorePacks | null {
  let best: MorePacks | null = null;
  let least = limit;
  for (const [material, { offers, suppliers, isKept }] of problem.materials.entries()) {
    if (!suppliers.includes(supplier)) continue;
    for (const [place, offer] of offers.entries()) {
      if (offer.supplier !== supplier) continue;
      const had = packs[material]?.[place] ?? 0;
      const others = goods - had * priceAt(offer.steps, had);
      for (const { from, to, price } of offer.steps) {
        const taken = Math.max(from, had + 1, Math.ceil((threshold - others) / price));
        if (taken > to || others + taken * price >= least) continue;
        if (isKept?.((packs[material] ?? []).with(place, taken)) === false) continue;
        least = others + taken * price;
        best = { material, place, taken, goods: least };
      }
    }
  }
  return best;
}
