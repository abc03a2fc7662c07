import type { Basis, ProductCost, UnitCost } from "@/lib/domain/plan-figures";
import type { Kept } from "@/lib/domain/pricing";
import type { Product, Settings } from "@/lib/domain/workshop";
import { keptOf } from "./sold";

/** One product's cost on one basis, with what is kept of its prices where both are known. */
export interface Priced {
  readonly product: Product;
  readonly cost: UnitCost;
  readonly toShops: Kept | null;
  readonly toCustomers: Kept | null;
}

export function onePriced({ product, byBasis }: ProductCost, basis: Basis, settings: Settings): Priced {
  const cost = byBasis[basis];
  return {
    product,
    cost,
    toShops: keptOf("shops", product.priceToShops, cost.perUnit, settings),
    toCustomers: keptOf("customers", product.priceToCustomers, cost.perUnit, settings),
  };
}
