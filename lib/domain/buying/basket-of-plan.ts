/** A basket as the maker reads it: per supplier, what to order, when it comes and what it costs. @rule BUY-1, BUY-8 */
import type { Day } from "../calendar";
import { byId } from "../index-by-id";
import type { MicroUnits } from "../money";
import type { Packs } from "../quantity";
import type { Material, Offer, Supplier, Workshop } from "../workshop";
import type { Candidate, ShoppingList } from "./shopping-list";
import type { LeastBasket } from "./least-basket";

export interface PlannedBasket {
  readonly total: MicroUnits;
  /** Null where the basket is proven to cost the least. */
  readonly gap: MicroUnits | null;
  /** By supplier id. */
  readonly orders: readonly PlannedOrder[];
  /** Materials to be bought that nobody offers, in the file's order. */
  readonly unsourced: readonly Material[];
}

export interface PlannedOrder {
  readonly supplier: Supplier;
  readonly goods: MicroUnits;
  readonly shipping: MicroUnits;
  readonly total: MicroUnits;
  /** By offer id. */
  readonly lines: readonly PlannedLine[];
}

export interface PlannedLine {
  readonly offer: Offer;
  readonly material: Material;
  readonly packs: Packs;
  readonly packPrice: MicroUnits;
  readonly cost: MicroUnits;
  readonly arrives: Day;
  readonly late: boolean;
  /** The last day of use of what comes, or null where that is not known. */
  readonly expires: Day | null;
}

/** The basket that was found for a shopping list, with the list's materials, offers and days. */
export function plannedBasket(
  workshop: Workshop,
  list: ShoppingList,
  { basket, gap }: Pick<LeastBasket, "basket" | "gap">,
): PlannedBasket {
  const supplierOf = byId("supplier", workshop.suppliers);
  const candidates = list.purchases.flatMap(({ material, candidates }) =>
    candidates.map((candidate) => ({ id: candidate.offer.id, material, candidate })),
  );
  const candidateOf = byId<{ id: string; material: Material; candidate: Candidate }>("candidate", candidates);
  return {
    total: basket.total,
    gap,
    orders: basket.orders.map(({ supplier, goods, shipping, total, lines }) => ({
      supplier: supplierOf(supplier),
      goods,
      shipping,
      total,
      lines: lines.map(({ offer, packs, packPrice, cost }) => {
        const { material, candidate } = candidateOf(offer);
        return { ...candidate, material, packs, packPrice, cost };
      }),
    })),
    unsourced: list.unsourced,
  };
}
