import type { Fraction } from "@/lib/domain/fraction";
import type { MicroUnits } from "@/lib/domain/money";
import { type Kept, keptToCustomers, keptToShops } from "@/lib/domain/pricing";
import type { Product, Settings } from "@/lib/domain/workshop";

/** To whom a product is sold: each has its price, its words, and what is taken from it. */
export const SOLD = ["shops", "customers"] as const;
export type Sold = (typeof SOLD)[number];

/** The two prices of a product; null where none is set. */
export type Prices = Pick<Product, "priceToShops" | "priceToCustomers">;
export type PriceName = keyof Prices;

/** What the workshop's settings take from a price, and the money it is in. */
export type SaleSettings = Pick<Settings, "currency" | "tax" | "paymentFee" | "paymentFeeFixed">;

export const PRICE_NAME: Readonly<Record<Sold, PriceName>> = {
  shops: "priceToShops",
  customers: "priceToCustomers",
};

export const PRICE_WORDS: Readonly<Record<Sold, string>> = {
  shops: "To shops, without tax",
  customers: "To customers, with tax",
};

/** What is kept of a price; null where there is no price, or where the cost is not known. */
export function keptOf(
  sold: Sold,
  price: MicroUnits | null,
  perUnit: Fraction | null,
  settings: SaleSettings,
): Kept | null {
  if (price === null || perUnit === null) return null;
  return sold === "shops" ? keptToShops(price, perUnit) : keptToCustomers(price, perUnit, settings);
}
