/**
 * The cheapest way to cover one material from its offers. Prices are weighed by supplier, in parts of WHOLE_WEIGHT, so
 * that goods which help an order over a threshold can count for less.
 */
import type { ScaledMaterial, ScaledOffer } from "./scaled-problem";

/** A price weighed by this is counted in full. */
export const WHOLE_WEIGHT = 1024;

/** Packs of each of a material's offers, in their order, and what they cost. */
export interface Cover {
  readonly packs: readonly number[];
  readonly cost: number;
  /** Cost by weighed prices, in parts of a unit of money. */
  readonly weighed: number;
}

/** Steps that a search may still take. Counted, not timed, so that the same problem ends the same way anywhere. */
export interface Effort {
  left: number;
}

export type WeightOf = (supplier: number) => number;

export interface OpenOffer {
  readonly offer: ScaledOffer;
  readonly place: number;
  readonly weight: number;
}

/** The least that one unit of the material costs, as a fraction: weighed money for so much of it. */
export interface UnitPrice {
  readonly over: number;
  readonly under: number;
}

export const NO_PRICE: UnitPrice = { over: Infinity, under: 1 };

/** The open offers, lowest weighed unit price first, with the lowest of those from each place on. */
export function inOrder(material: ScaledMaterial, isOpen: (supplier: number) => boolean, weightOf: WeightOf) {
  const open = material.offers.flatMap((offer, place): readonly (OpenOffer & { readonly least: UnitPrice })[] => {
    if (!isOpen(offer.supplier)) return [];
    const weight = weightOf(offer.supplier);
    const least = offer.steps.reduce<UnitPrice>((best, { price }) => {
      const each = { over: price * weight, under: offer.pack };
      return isLower(each, best) ? each : best;
    }, NO_PRICE);
    return [{ offer, place, weight, least }];
  });
  open.sort((a, b) => (isLower(a.least, b.least) ? -1 : isLower(b.least, a.least) ? 1 : a.place - b.place));
  return open;
}

function isLower(a: UnitPrice, b: UnitPrice): boolean {
  const [left, right] = [a.over * b.under, b.over * a.under];
  if (left <= Number.MAX_SAFE_INTEGER || right <= Number.MAX_SAFE_INTEGER) return left < right;
  if (left === Infinity || right === Infinity) return left < right;
  return BigInt(a.over) * BigInt(b.under) < BigInt(b.over) * BigInt(a.under);
}

/** The least that `rest` can cost at a unit price: rounded up to whole money, and never above the true figure. */
export function least(rest: number, { over, under }: UnitPrice): number {
  if (rest <= 0) return 0;
  if (over === Infinity) return Infinity;
  const product = rest * over;
  if (product <= Number.MAX_SAFE_INTEGER) return Math.ceil(product / under);
  return Number((BigInt(rest) * BigInt(over) + BigInt(under) - 1n) / BigInt(under));
}

/**
 * The cover of the least weighed cost from the open suppliers; of several, the first in the order of unit prices.
 * @returns null where the open offers cannot cover the need; with no effort left, perhaps not the cheapest
 */
export function cheapestCover(
  material: ScaledMaterial,
  isOpen: (supplier: number) => boolean,
  weightOf: WeightOf,
  effort: Effort,
): Cover | null {
  const open = inOrder(material, isOpen, weightOf);
  const packs = material.offers.map(() => 0);
  let best: Cover | null = null;
  let limit = Infinity;

  const go = (at: number, rest: number, weighed: number, cost: number): void => {
    effort.left -= 1;
    if (effort.left < 0) return;
    if (rest <= 0) {
      if (weighed >= limit) return;
      limit = weighed;
      best = { packs: [...packs], cost, weighed };
      return;
    }
    const item = open[at];
    if (item === undefined || weighed + least(rest, item.least) >= limit) return;
    const { offer, place, weight } = item;
    const after = open[at + 1]?.least ?? NO_PRICE;
    // Endless where the effort has run out, so that no loop goes on for packs of a microgram.
    const bound = (taken: number, price: number) =>
      effort.left < 0 ? Infinity : weighed + taken * price * weight + least(rest - taken * offer.pack, after);
    const take = (taken: number, price: number): void => {
      packs[place] = taken;
      if (material.isKept === null || material.isKept(packs))
        go(at + 1, rest - taken * offer.pack, weighed + taken * price * weight, cost + taken * price);
      packs[place] = 0;
    };
    for (const { from, to, price } of offer.steps) {
      const enough = Math.min(to, Math.max(from, Math.ceil(rest / offer.pack)));
      if (bound(enough, price) < limit) take(enough, price);
      // Fewer packs leave more to the offers after this one: dearer where those are dearer, cheaper where not.
      if (!isLower(after, { over: price * weight, under: offer.pack })) {
        for (let taken = enough - 1; taken >= from && bound(taken, price) < limit; taken -= 1) take(taken, price);
      } else {
        for (let taken = from; taken < enough && bound(taken, price) < limit; taken += 1) take(taken, price);
      }
    }
    go(at + 1, rest, weighed, cost);
  };
  go(0, material.need, 0, 0);
  return best;
}
