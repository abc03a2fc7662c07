/**
 * Every way to cover one material that may be part of a cheaper basket, with the goods it brings towards thresholds.
 * Offers are taken one after the other; of two ways so far that cover as much and bring as much, the dearer is dropped.
 */
import {
  type Cover,
  type Effort,
  inOrder,
  least,
  NO_PRICE,
  type OpenOffer,
  type UnitPrice,
  type WeightOf,
} from "./material-covers";
import type { ScaledMaterial, Step } from "./scaled-problem";
import { undominated, type Way } from "./threshold-way";

export interface CoverWay extends Way {
  readonly cover: Cover;
}

/** Which ways are of use, and how many are kept in mind at the most. */
export interface WayLimits {
  readonly mostCost: number;
  readonly mostWeighed: number;
  readonly atMost: number;
  /** The suppliers whose orders must reach thresholds, and what is to be reached. */
  readonly active: readonly number[];
  readonly thresholds: readonly number[];
}

/** A way so far: `goods` begins with what is covered of the need, so that covering more counts like bringing more. */
interface WaySoFar extends Way {
  readonly weighed: number;
  readonly packs: readonly number[];
}

/** @returns null where there are more than `atMost`, or where the effort ran out */
export function waysToCover(
  material: ScaledMaterial,
  isOpen: (supplier: number) => boolean,
  weightOf: WeightOf,
  limits: WayLimits,
  effort: Effort,
): readonly CoverWay[] | null {
  const open = inOrder(material, isOpen, weightOf);
  const { need } = material;
  let ways: readonly WaySoFar[] = [
    { cost: 0, weighed: 0, goods: [0, ...limits.active.map(() => 0)], packs: material.offers.map(() => 0) },
  ];
  for (const [at, item] of open.entries()) {
    const after = open[at + 1]?.least ?? NO_PRICE;
    const next: WaySoFar[] = [];
    for (const way of ways) {
      if (way.weighed + least(need - (way.goods[0] ?? 0), after) <= limits.mostWeighed) next.push(way);
      next.push(...withOffer(way, item, after, material, limits, effort));
      if (effort.left < 0 || next.length > limits.atMost * 8) return null;
    }
    // Where packs must keep, one of two ways that do the same may leave more room than the other.
    ways = material.isKept === null ? undominated(next, effort) : next;
    if (effort.left < 0 || ways.length > limits.atMost) return null;
  }
  return ways.flatMap(({ cost, weighed, goods: [covered = 0, ...goods], packs }) =>
    covered < need ? [] : [{ cost, goods, cover: { packs, cost, weighed } }],
  );
}

/** The way with each number of the offer's packs that may be of use. */
function withOffer(
  way: WaySoFar,
  { offer, place, weight }: OpenOffer,
  after: UnitPrice,
  { need, isKept }: ScaledMaterial,
  limits: WayLimits,
  effort: Effort,
): readonly WaySoFar[] {
  const found: WaySoFar[] = [];
  const [covered = 0] = way.goods;
  const counted = limits.active.indexOf(offer.supplier);
  const missing = counted < 0 ? 0 : (limits.thresholds[counted] ?? 0) - (way.goods[counted + 1] ?? 0);
  for (const step of offer.steps) {
    const { from, price } = step;
    const most = mostOfUse(step, Math.max(0, need - covered) / offer.pack, missing / price);
    for (let taken = from; taken <= most; taken += 1) {
      const [cost, weighed] = [way.cost + taken * price, way.weighed + taken * price * weight];
      effort.left -= 1;
      if (effort.left < 0 || cost > limits.mostCost || weighed > limits.mostWeighed) break;
      const packs = way.packs.with(place, taken);
      if (isKept?.(packs) === false) break;
      const nowCovered = Math.min(need, covered + taken * offer.pack);
      if (weighed + least(need - nowCovered, after) > limits.mostWeighed) continue;
      const goods = way.goods.with(0, nowCovered);
      if (counted >= 0)
        goods[counted + 1] = Math.min(limits.thresholds[counted] ?? 0, (goods[counted + 1] ?? 0) + taken * price);
      found.push({ cost, weighed, goods, packs });
    }
  }
  return found;
}

/** More packs at a price than fill the need and the threshold do no good. */
const mostOfUse = ({ from, to }: Step, forNeed: number, forThreshold: number): number =>
  Math.min(to, Math.max(from, Math.ceil(forNeed), Math.ceil(forThreshold)));
