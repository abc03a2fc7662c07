/**
 * A basket problem in small whole numbers, for the search: money in the largest unit that divides every price and
 * charge, quantities in the largest that divides every pack. Whole numbers below 2^53 are exact as doubles, and the
 * search is many times faster on them than on bigints; where they would not stay below, `scaled` says so.
 */
import { quantity, type Stock } from "../quantity";
import type { BasketOffer, BasketProblem, BasketSupplier } from "./basket-problem";
import { type Keeping, lostOf } from "./keeping";

export interface ScaledProblem {
  /** Micro-units in one unit of money. */
  readonly moneyUnit: bigint;
  readonly materials: readonly ScaledMaterial[];
  readonly suppliers: readonly ScaledSupplier[];
}

export interface ScaledMaterial {
  readonly id: string;
  readonly need: number;
  readonly offers: readonly ScaledOffer[];
  /** Its suppliers, by their place in the problem, ascending. */
  readonly suppliers: readonly number[];
  /**
   * Whether packs of the offers, in their order, keep until they are used; with packs that do, fewer do as well.
   * Null where any number does.
   */
  readonly isKept: ((packs: readonly number[]) => boolean) | null;
}

export interface ScaledOffer {
  readonly id: string;
  readonly supplier: number;
  /** No more than the need: a larger pack covers it as well. */
  readonly pack: number;
  /** Each price with the packs that it holds for, ascending, from the least packs to the most that can be of use. */
  readonly steps: readonly Step[];
}

export interface Step {
  readonly from: number;
  readonly to: number;
  readonly price: number;
}

export interface ScaledSupplier {
  readonly id: string;
  readonly shipping: number;
  /** Infinity where shipping is never waived, 0 where there is none. */
  readonly freeFrom: number;
  readonly minimum: number;
}

/** Sums of money in the search stay below this, also when they are taken in finer parts. */
export const LARGEST_SUM = 2 ** 51;

/** The problem scaled, or null where its figures are too large to be searched exactly. */
export function scaled(problem: BasketProblem): ScaledProblem | null {
  const prices = problem.offers.flatMap(({ price, breaks }) => [price, ...breaks.map((each) => each.price)]);
  const moneyUnit = [...prices, ...problem.suppliers.map(({ shipping }) => shipping)].reduce<bigint>(divisor, 0n) || 1n;
  const placeById = new Map(problem.suppliers.map(({ id }, place) => [id, place]));
  const suppliers = problem.suppliers.map((supplier) => scaledSupplier(supplier, moneyUnit));
  const materials = problem.materials.map(({ id, wanted, keeping }): ScaledMaterial => {
    const offers = problem.offers.filter(({ material }) => material === id);
    const unit = offers.reduce<bigint>((sum, { pack }) => divisor(sum, pack), 0n) || 1n;
    const need = dividedUp(wanted, unit);
    const inUse = offers.flatMap((offer): readonly ScaledOffer[] => {
      const place = placeById.get(offer.supplier) ?? -1;
      const supplier = problem.suppliers[place];
      const pack = offer.pack / unit;
      const steps = supplier ? stepsOf(offer, dividedUp(need, pack), supplier, moneyUnit) : [];
      const least = pack < need ? pack : need;
      return steps.length === 0 ? [] : [{ id: offer.id, supplier: place, pack: Number(least), steps }];
    });
    const places = [...new Set(inUse.map(({ supplier }) => supplier))].sort((a, b) => a - b);
    const kept = offers.filter((offer) => inUse.some((each) => each.id === offer.id));
    return {
      id,
      need: Number(need),
      offers: inUse,
      suppliers: places,
      isKept: keeping ? keptBy(keeping, kept) : null,
    };
  });
  const made = { moneyUnit, materials, suppliers };
  return staysExact(made) ? made : null;
}

/** Remembers what it was asked: the search comes back to the same packs. */
function keptBy(keeping: Keeping, offers: readonly BasketOffer[]): (packs: readonly number[]) => boolean {
  const known = new Map<string, boolean>();
  return (packs) => {
    const key = packs.join(" ");
    let isKept = known.get(key);
    if (isKept === undefined) {
      const bought = offers.flatMap(({ keeps, pack }, place) =>
        keeps && packs[place] ? [{ ...keeps, quantity: quantity<Stock>(pack * BigInt(packs[place])) }] : [],
      );
      isKept = lostOf(keeping, bought) <= keeping.mostLost;
      known.set(key, isKept);
    }
    return isKept;
  };
}

function scaledSupplier(supplier: BasketSupplier, moneyUnit: bigint): ScaledSupplier {
  const { id, shipping, shippingFreeFrom, minimumOrder } = supplier;
  // Goods are whole units, so a threshold between two units is reached with the next.
  return {
    id,
    shipping: Number(shipping / moneyUnit),
    freeFrom:
      shipping === 0n ? 0 : shippingFreeFrom === null ? Infinity : Number(dividedUp(shippingFreeFrom, moneyUnit)),
    minimum: minimumOrder === null ? 0 : Number(dividedUp(minimumOrder, moneyUnit)),
  };
}

/**
 * An offer's prices, each for the packs that can be of use: at one price, beyond the need and the supplier's thresholds
 * one pack fewer would do all the same and cost less. @rule BUY-5
 */
function stepsOf(offer: BasketOffer, cover: bigint, supplier: BasketSupplier, moneyUnit: bigint): readonly Step[] {
  const threshold = larger(supplier.shippingFreeFrom ?? 0n, supplier.minimumOrder ?? 0n);
  const breaks = [...offer.breaks].sort((a, b) => (a.packs < b.packs ? -1 : 1));
  const starts = [{ packs: 0n, price: offer.price }, ...breaks];
  return starts.flatMap(({ packs, price }, at) => {
    const from = larger(packs, offer.minPacks);
    const useful = larger(from, larger(cover, dividedUp(threshold, price)));
    const next = starts[at + 1]?.packs;
    const ends = [useful, next === undefined ? null : next - 1n, offer.maxPacks].filter((end) => end !== null);
    const to = ends.reduce((a, b) => (a < b ? a : b));
    return from > to ? [] : [{ from: Number(from), to: Number(to), price: Number(price / moneyUnit) }];
  });
}

function staysExact({ materials, suppliers }: ScaledProblem): boolean {
  const dearest = materials.flatMap(({ offers }) => offers.flatMap(({ steps }) => steps));
  const figures = [
    ...materials.map(({ need }) => need),
    ...suppliers.flatMap(({ shipping, freeFrom, minimum }) => [
      shipping,
      freeFrom === Infinity ? 0 : freeFrom,
      minimum,
    ]),
    ...dearest.flatMap(({ to, price }) => [to, price]),
  ];
  return figures.every((figure) => figure <= LARGEST_SUM);
}

function divisor(a: bigint, b: bigint): bigint {
  while (b > 0n) [a, b] = [b, a % b];
  return a;
}

const larger = (a: bigint, b: bigint): bigint => (a > b ? a : b);
const dividedUp = (over: bigint, under: bigint): bigint => (over + under - 1n) / under;
