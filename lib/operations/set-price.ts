import type { Books } from "@/lib/domain/desk";
import type { Product } from "@/lib/domain/workshop";
import { onTheBooks } from "./on-the-books";
import { standing } from "./standing";

/** To shops without tax, to customers with it; null where none is set. */
export type Prices = Pick<Product, "priceToShops" | "priceToCustomers">;

export interface SetPrice {
  readonly product: string;
  /** As they were shown. */
  readonly from: Prices;
  /** A price that stays as it was shown is left as it stands. */
  readonly to: Prices;
}

export type SetPriceResult =
  /** `was` and the product's prices, sent back, take it back. */
  | { readonly kind: "set"; readonly product: Product; readonly was: Prices; readonly books: Books }
  | { readonly kind: "already so"; readonly product: Product }
  /** A price that was to be changed is another by now. */
  | { readonly kind: "stale"; readonly now: Prices }
  | { readonly kind: "no such product" };

/** Sets the price of a product to shops, to customers, or both. @rule PRICE-1, PRICE-2 */
export const setPrice = (asked: SetPrice) => onTheBooks((books) => decidePrice(books, asked));

const PRICES = ["priceToShops", "priceToCustomers"] as const;

export function decidePrice({ workshop, desk }: Books, { product: id, from, to }: SetPrice): SetPriceResult {
  const before = workshop.products.find((each) => each.id === id);
  if (!before) return { kind: "no such product" };
  const { priceToShops, priceToCustomers } = before;
  const was = { priceToShops, priceToCustomers };
  const asked = PRICES.filter((price) => from[price] !== to[price]);
  const stands = asked.map((price) => standing(was[price], { from: from[price], to: to[price] }));
  if (stands.includes("changed")) return { kind: "stale", now: was };
  if (!stands.includes("as drawn")) return { kind: "already so", product: before };
  const product = { ...before, ...Object.fromEntries(asked.map((price) => [price, to[price]])) };
  const products = workshop.products.map((each) => (each === before ? product : each));
  return { kind: "set", product, was, books: { workshop: { ...workshop, products }, desk } };
}
