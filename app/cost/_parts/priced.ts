import type { Basis, ProductCost, UnitCost } from "@/lib/domain/plan-figures";
import { type Kept, keptToCustomers, keptToShops } from "@/lib/domain/pricing";
import type { Product, Settings } from "@/lib/domain/workshop";

/** One product's cost on one basis, with what is kept of its prices where both are known. */
export interface Priced {
  readonly product: Product;
  readonly cost: UnitCost;
  readonly toShops: Kept | null;
  readonly toCustomers: Kept | null;
}

export function onePriced({ product, byBasis }: ProductCost, basis: Basis, settings: Settings): Priced {
  const cost = byBasis[basis];
  const { priceToShops, priceToCustomers } = product;
  const { perUnit } = cost;
  return {
    product,
    cost,
    toShops: perUnit && priceToShops !== null ? keptToShops(priceToShops, perUnit) : null,
    toCustomers: perUnit && priceToCustomers !== null ? keptToCustomers(priceToCustomers, perUnit, settings) : null,
  };
}
