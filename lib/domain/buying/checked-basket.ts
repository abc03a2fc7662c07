/**
 * A basket checked and costed from its packs alone, in exact whole numbers. It shares nothing with the model, the
 * search or the solver that chose the packs, so that a mistake there cannot hide here: what fails is never shown.
 * @rule BUY-2, BUY-3, BUY-4, BUY-16, BUY-17
 */
import type { MicroUnits } from "../money";
import { quantity, type Packs, type Stock } from "../quantity";
import type { BasketOffer, BasketProblem, BasketSupplier, LeftOverWorth, PacksByOffer } from "./basket-problem";
import { goneOutOfDate } from "./gone-out-of-date";

export interface Basket {
  /** Goods and shipping of every order. */
  readonly total: MicroUnits;
  /** One for each supplier that is ordered from, in the problem's order. */
  readonly orders: readonly BasketOrder[];
  /** What is left of each material beyond what was wanted, by material id. */
  readonly leftOver: ReadonlyMap<string, Stock>;
  /** What the leftovers count for. The basket is chosen by its total less this. */
  readonly worth: MicroUnits;
}

export interface BasketOrder {
  readonly supplier: string;
  readonly goods: MicroUnits;
  readonly shipping: MicroUnits;
  readonly total: MicroUnits;
  /** In the problem's order of offers. */
  readonly lines: readonly BasketLine[];
}

export interface BasketLine {
  readonly offer: string;
  readonly material: string;
  readonly packs: Packs;
  /** What one pack costs at so many. */
  readonly packPrice: MicroUnits;
  readonly cost: MicroUnits;
}

export type CheckedBasket =
  | { readonly kind: "holds"; readonly basket: Basket }
  | { readonly kind: "broken"; readonly faults: readonly BasketFault[] };

/** A rule that the packs break, with the figures. */
export type BasketFault =
  | { readonly kind: "no such offer"; readonly offer: string }
  | { readonly kind: "packs below the least"; readonly offer: string; readonly packs: bigint; readonly least: bigint }
  | { readonly kind: "packs above the most"; readonly offer: string; readonly packs: bigint; readonly most: bigint }
  | { readonly kind: "material short"; readonly material: string; readonly by: bigint }
  | { readonly kind: "goes out of date"; readonly material: string; readonly by: bigint }
  | { readonly kind: "below minimum order"; readonly supplier: string; readonly by: bigint };

/** Holds the packs to every rule of the problem and adds up what they cost. */
export function checkedBasket(problem: BasketProblem, packsByOffer: PacksByOffer): CheckedBasket {
  const faults: BasketFault[] = [];
  const known = new Set(problem.offers.map(({ id }) => id));
  for (const offer of packsByOffer.keys()) if (!known.has(offer)) faults.push({ kind: "no such offer", offer });

  const taken = problem.offers.flatMap((offer) => {
    const packs = packsByOffer.get(offer.id) ?? 0n;
    return packs === 0n ? [] : [{ offer, packs }];
  });
  for (const { offer, packs } of taken) faults.push(...packsFaults(offer, packs));

  const leftOver = new Map<string, Stock>();
  let worth = 0n;
  for (const { id, wanted, leftOver: counts, keeping } of problem.materials) {
    const bought = taken.reduce(
      (sum, { offer, packs }) => (offer.material === id ? sum + packs * offer.pack : sum),
      0n,
    );
    if (bought < wanted) faults.push({ kind: "material short", material: id, by: wanted - bought });
    leftOver.set(id, quantity<Stock>(bought - wanted));
    worth += worthOf(bought - wanted, counts ?? null);
    const lots = taken.flatMap(({ offer, packs }) => (offer.material === id ? [{ ...offer, packs }] : []));
    const lost = keeping ? goneOutOfDate(keeping, lots) : 0n;
    if (keeping && lost > keeping.mostLost)
      faults.push({ kind: "goes out of date", material: id, by: lost - keeping.mostLost });
  }

  const orders = problem.suppliers.flatMap((supplier) => {
    const lines = taken.flatMap(({ offer, packs }) => (offer.supplier === supplier.id ? [lineOf(offer, packs)] : []));
    return lines.length === 0 ? [] : [orderOf(supplier, lines, faults)];
  });
  if (faults.length > 0) return { kind: "broken", faults };
  const total = quantity<MicroUnits>(orders.reduce((sum, order) => sum + order.total, 0n));
  return { kind: "holds", basket: { total, orders, leftOver, worth: quantity<MicroUnits>(worth) } };
}

function worthOf(left: bigint, counts: LeftOverWorth | null): bigint {
  if (counts === null || left <= 0n) return 0n;
  const steps = left / counts.step;
  return counts.worth * (steps < counts.most ? steps : counts.most);
}

function packsFaults({ id, minPacks, maxPacks }: BasketOffer, packs: bigint): readonly BasketFault[] {
  if (packs < minPacks) return [{ kind: "packs below the least", offer: id, packs, least: minPacks }];
  if (maxPacks !== null && packs > maxPacks)
    return [{ kind: "packs above the most", offer: id, packs, most: maxPacks }];
  return [];
}

function lineOf(offer: BasketOffer, packs: bigint): BasketLine {
  const reached = offer.breaks.filter((each) => each.packs <= packs);
  const highest = reached.reduce((most, each) => (each.packs > most ? each.packs : most), 0n);
  const packPrice = reached.find((each) => each.packs === highest)?.price ?? offer.price;
  return {
    offer: offer.id,
    material: offer.material,
    packs: quantity<Packs>(packs),
    packPrice,
    cost: quantity<MicroUnits>(packs * packPrice),
  };
}

function orderOf(supplier: BasketSupplier, lines: readonly BasketLine[], faults: BasketFault[]): BasketOrder {
  const goods = lines.reduce((sum, { cost }) => sum + cost, 0n);
  const { id, minimumOrder, shippingFreeFrom } = supplier;
  if (minimumOrder !== null && goods < minimumOrder)
    faults.push({ kind: "below minimum order", supplier: id, by: minimumOrder - goods });
  const shipping = shippingFreeFrom !== null && goods >= shippingFreeFrom ? 0n : supplier.shipping;
  return {
    supplier: id,
    goods: quantity<MicroUnits>(goods),
    shipping: quantity<MicroUnits>(shipping),
    total: quantity<MicroUnits>(goods + shipping),
    lines,
  };
}
