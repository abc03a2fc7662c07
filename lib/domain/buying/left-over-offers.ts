/**
 * A problem whose leftovers are worth something, as one whose are not. What is wanted grows by what would be of use, and
 * so much of it may be "bought" back from an offer that is only reckoned with, at what it is worth: to leave nothing
 * over costs what the leftovers would have been worth. A basket costs there what it costs less that worth, and the same
 * amount more for every basket, so that the least basket there is the least here. @rule BUY-17
 */
import type { MicroUnits } from "../money";
import { quantity, type Packs, type Stock } from "../quantity";
import type { BasketOffer, BasketProblem, PacksByOffer, WantedMaterial } from "./basket-problem";

/** Sorts after every id that a file can hold with the same beginning, so that real offers come first. */
const RECKONED = "\u{10FFFF}reckoned";

export interface Reckoned {
  readonly problem: BasketProblem;
  /** What every basket costs more there than it counts for here. */
  readonly more: bigint;
}

/**
 * @param worthless  the least, in micro-units, that the leftovers of a basket must fall short of what they could be
 *                   worth; a cap on cash asks for that (least-basket.ts)
 */
export function reckoned(problem: BasketProblem, worthless: bigint): Reckoned {
  const counted = problem.materials.flatMap(({ id, leftOver }) => (leftOver ? [offerFor(id, leftOver)] : []));
  const [first] = counted;
  if (first === undefined) return { problem: plain(problem), more: 0n };
  const supplier = {
    id: RECKONED,
    shipping: quantity<MicroUnits>(0n),
    shippingFreeFrom: null,
    minimumOrder: worthless > 0n ? quantity<MicroUnits>(worthless + first.price) : null,
  };
  const more = problem.materials.reduce(
    (sum, { leftOver }) => (leftOver ? sum + leftOver.worth * leftOver.most : sum),
    0n,
  );
  // A minimum holds for an order that is made: one thing that must be had from there makes it.
  const must = { id: RECKONED, wanted: quantity<Stock>(1n) };
  const mustOffer = {
    ...first,
    id: RECKONED,
    material: RECKONED,
    pack: quantity<Stock>(1n),
    maxPacks: quantity<Packs>(1n),
  };
  return {
    problem: {
      materials: [...problem.materials.map(grown), ...(worthless > 0n ? [must] : [])],
      suppliers: [...problem.suppliers, supplier],
      offers: [...problem.offers, ...counted, ...(worthless > 0n ? [mustOffer] : [])],
    },
    more: worthless > 0n ? more + first.price : more,
  };
}

const plain = ({ materials, suppliers, offers }: BasketProblem): BasketProblem => ({ materials, suppliers, offers });

function offerFor(material: string, { step, worth, most }: NonNullable<WantedMaterial["leftOver"]>): BasketOffer {
  return {
    id: `${RECKONED} ${material}`,
    material,
    supplier: RECKONED,
    pack: step,
    price: worth,
    breaks: [],
    minPacks: quantity<Packs>(1n),
    maxPacks: quantity<Packs>(most),
  };
}

const grown = ({ leftOver, ...material }: WantedMaterial): WantedMaterial =>
  leftOver ? { ...material, wanted: quantity<Stock>(material.wanted + leftOver.step * leftOver.most) } : material;

/** The same basket with what it does not leave over, or leaves beyond the counted steps, bought back. */
export function withReckoned({ materials, offers }: BasketProblem, packs: PacksByOffer): PacksByOffer {
  const all = new Map(packs);
  for (const { id, wanted, leftOver } of materials) {
    if (!leftOver) continue;
    const bought = offers.reduce(
      (sum, offer) => (offer.material === id ? sum + offer.pack * (packs.get(offer.id) ?? 0n) : sum),
      0n,
    );
    const left = bought > wanted ? (bought - wanted) / leftOver.step : 0n;
    if (left < leftOver.most) all.set(`${RECKONED} ${id}`, leftOver.most - left);
  }
  return all;
}

/** The packs that are really bought. */
export const withoutReckoned = (packs: PacksByOffer): PacksByOffer =>
  new Map([...packs].filter(([offer]) => !offer.startsWith(RECKONED)));
