/** The basket problem of a shopping list. @rule BUY-1, BUY-2, BUY-3 */
import { byCodePoint } from "../code-point-order";
import type { MicroUnits } from "../money";
import type { Workshop } from "../workshop";
import type { BasketProblem } from "./basket-problem";
import type { ShoppingList } from "./shopping-list";

/**
 * What the list asks, sorted by id throughout, so that the order of a file does not choose between baskets that cost
 * the same. @rule BUY-6, BUY-16, BUY-17
 */
export function problemOf(
  workshop: Workshop,
  { purchases }: ShoppingList,
  cap: MicroUnits | null = null,
): BasketProblem {
  const candidates = purchases.flatMap((purchase) => purchase.candidates);
  const used = new Set(candidates.map(({ offer }) => offer.supplier));
  return {
    // A cap changes what is the least only where leftovers might tempt beyond it.
    cap: purchases.some(({ leftOver }) => leftOver !== null) ? cap : null,
    materials: sorted(
      purchases.map(({ material, wanted, leftOver, keeping }) => ({ id: material.id, wanted, leftOver, keeping })),
    ),
    suppliers: sorted(
      workshop.suppliers
        .filter(({ id }) => used.has(id))
        .map(({ id, shipping, shippingFreeFrom, minimumOrder }) => ({ id, shipping, shippingFreeFrom, minimumOrder })),
    ),
    offers: sorted(
      candidates.map(({ offer: { id, material, supplier, pack, price, breaks, minPacks }, arrives, expires }) => ({
        id,
        material,
        supplier,
        pack: pack.quantity,
        price,
        breaks,
        minPacks,
        maxPacks: null,
        keeps: { arrives, expires },
      })),
    ),
  };
}

const sorted = <T extends { readonly id: string }>(records: readonly T[]): readonly T[] =>
  [...records].sort((a, b) => byCodePoint(a.id, b.id));
