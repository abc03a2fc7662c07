/** Offers that no least-cost basket needs, left out before the search. @rule BUY-8 */
import { byCodePoint } from "../code-point-order";
import type { BasketOffer, BasketProblem, BasketSupplier } from "./basket-problem";
import { couples } from "./components";

/**
 * The problem without the offers that another of the same material replaces at no more cost: as large a pack, as few
 * packs at the least, never dearer at any number of packs, from the same supplier or one without shipping and minimum.
 * An offer whose goods may help its supplier's order over a threshold stays, and so do all of a material whose packs
 * must keep: one that does the work of another may not keep as long.
 */
export function withoutDominated(problem: BasketProblem): BasketProblem {
  const supplierById = new Map(problem.suppliers.map((supplier) => [supplier.id, supplier]));
  const mustKeep = new Set(problem.materials.flatMap(({ id, keeping }) => (keeping ? [id] : [])));
  const offers = problem.offers.filter(
    (offer) =>
      mustKeep.has(offer.material) ||
      !problem.offers.some((other) => other !== offer && replaces(other, offer, supplierById)),
  );
  const used = new Set(offers.map(({ supplier }) => supplier));
  return { ...problem, offers, suppliers: problem.suppliers.filter(({ id }) => used.has(id)) };
}

type SupplierById = ReadonlyMap<string, BasketSupplier>;

/** Of two that do each other's work the lower id stays. */
const replaces = (one: BasketOffer, other: BasketOffer, supplierById: SupplierById): boolean =>
  doesTheWorkOf(one, other, supplierById) &&
  (!doesTheWorkOf(other, one, supplierById) || byCodePoint(one.id, other.id) < 0);

function doesTheWorkOf(one: BasketOffer, other: BasketOffer, supplierById: SupplierById): boolean {
  const [its, others] = [supplierById.get(one.supplier), supplierById.get(other.supplier)];
  if (one.material !== other.material || !its || !others || hasThreshold(others)) return false;
  if (one.supplier !== other.supplier && couples(its)) return false;
  const isAsGood = one.pack >= other.pack && one.minPacks <= other.minPacks && one.maxPacks === null;
  return isAsGood && isNeverDearer(one, other);
}

const hasThreshold = ({ shipping, shippingFreeFrom, minimumOrder }: BasketSupplier): boolean =>
  (shipping > 0n && shippingFreeFrom !== null) || (minimumOrder !== null && minimumOrder > 0n);

/** At every number of packs; and more packs never raise the price of one, so that two lines may become one. */
function isNeverDearer(one: BasketOffer, other: BasketOffer): boolean {
  const counts = [1n, ...one.breaks.map(({ packs }) => packs), ...other.breaks.map(({ packs }) => packs)];
  counts.sort((a, b) => (a < b ? -1 : a > b ? 1 : 0));
  return counts.every((count, at) => {
    const before = counts[at - 1];
    return (
      priceAt(one, count) <= priceAt(other, count) &&
      (before === undefined || priceAt(one, count) <= priceAt(one, before))
    );
  });
}

function priceAt({ price, breaks }: BasketOffer, packs: bigint): bigint {
  let [from, found]: [bigint, bigint] = [0n, price];
  for (const each of breaks) if (each.packs <= packs && each.packs > from) [from, found] = [each.packs, each.price];
  return found;
}
