/** Where two baskets for one list differ, material by material and in delivery. @rule BUY-7, BUY-12 */
import { byCodePoint } from "../code-point-order";
import { grouped } from "../index-by-id";
import type { MicroUnits } from "../money";
import { quantity } from "../quantity";
import type { Material } from "../workshop";
import type { PlannedBasket, PlannedLine } from "./basket-of-plan";
import type { BasketProblem } from "./basket-problem";

export interface MaterialDifference {
  readonly material: Material;
  readonly here: readonly PlannedLine[];
  readonly there: readonly PlannedLine[];
  /** What the goods cost there more than here; below zero where they cost less. */
  readonly more: MicroUnits;
}

export interface BasketDifference {
  /** What the other basket costs more than this one, in all. */
  readonly more: MicroUnits;
  /** The part of that which is delivery. */
  readonly moreDelivery: MicroUnits;
  /** Materials of which other packs are bought, by id. What they cost more is the rest. */
  readonly materials: readonly MaterialDifference[];
}

/** The other basket held beside this one. */
export function differenceOf(here: PlannedBasket, there: PlannedBasket): BasketDifference {
  const [linesHere, linesThere] = [linesByMaterial(here), linesByMaterial(there)];
  const ids = [...new Set([...linesHere.keys(), ...linesThere.keys()])].sort(byCodePoint);
  const materials = ids.flatMap((id): readonly MaterialDifference[] => {
    const [mine, other] = [linesHere.get(id) ?? [], linesThere.get(id) ?? []];
    const material = (mine[0] ?? other[0])?.material;
    if (material === undefined || packsOf(mine) === packsOf(other)) return [];
    return [{ material, here: mine, there: other, more: quantity(goodsOf(other) - goodsOf(mine)) }];
  });
  return {
    more: quantity(there.total - here.total),
    moreDelivery: quantity(deliveryOf(there) - deliveryOf(here)),
    materials,
  };
}

export const deliveryOf = ({ orders }: PlannedBasket): bigint =>
  orders.reduce((sum, { shipping }) => sum + shipping, 0n);

const goodsOf = (lines: readonly PlannedLine[]): bigint => lines.reduce((sum, { cost }) => sum + cost, 0n);

const linesByMaterial = ({ orders }: PlannedBasket): ReadonlyMap<string, readonly PlannedLine[]> =>
  grouped(
    orders.flatMap(({ lines }) => lines),
    ({ material }) => material.id,
  );

const packsOf = (lines: readonly PlannedLine[]): string =>
  JSON.stringify(lines.map(({ offer, packs }) => [offer.id, packs.toString()]).sort());

/** The problem without one of its offers; null where nothing else serves its material. */
export function withoutOffer(problem: BasketProblem, offer: string): BasketProblem | null {
  const material = problem.offers.find(({ id }) => id === offer)?.material;
  const offers = problem.offers.filter(({ id }) => id !== offer);
  return offers.some((each) => each.material === material) ? { ...problem, offers } : null;
}
