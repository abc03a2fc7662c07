/** The basket problem of a shopping list. @rule BUY-1, BUY-2, BUY-3 */
import { byCodePoint } from "../code-point-order";
import type { Workshop } from "../workshop";
import type { BasketProblem } from "./basket-problem";
import type { ShoppingList } from "./shopping-list";

/**
 * What the list asks, sorted by id throughout, so that the order of a file does not choose between baskets that cost
 * the same. @rule BUY-6
 */
export function problemOf(workshop: Workshop, { purchases }: ShoppingList): BasketProblem {
  const offers = purchases.flatMap(({ candidates }) => candidates.map(({ offer }) => offer));
  const used = new Set(offers.map(({ supplier }) => supplier));
  return {
    materials: sorted(purchases.map(({ material, wanted }) => ({ id: material.id, wanted }))),
    suppliers: sorted(
      workshop.suppliers
        .filter(({ id }) => used.has(id))
        .map(({ id, shipping, shippingFreeFrom, minimumOrder }) => ({ id, shipping, shippingFreeFrom, minimumOrder })),
    ),
    offers: sorted(
      offers.map(({ id, material, supplier, pack, price, breaks, minPacks }) => ({
        id,
        material,
        supplier,
        pack: pack.quantity,
        price,
        breaks,
        minPacks,
        maxPacks: null,
      })),
    ),
  };
}

const sorted = <T extends { readonly id: string }>(records: readonly T[]): readonly T[] =>
  [...records].sort((a, b) => byCodePoint(a.id, b.id));
