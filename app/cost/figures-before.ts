import "server-only";
import type { Basis, ProductCost } from "@/lib/domain/plan-figures";
import type { Settings } from "@/lib/domain/workshop";
import { moneyShown } from "@/lib/edge/figures";
import { shownBefore } from "../shown-before";
import { onePriced, type Priced } from "./_parts/priced";

/** What the pages of this place showed. */
interface Shown {
  readonly settings: Settings;
  readonly costs: readonly ProductCost[];
  /** The same for the same figures. */
  readonly figures: string;
}

const DECIMALS_BEYOND = 2;

const remembered = shownBefore<Shown>({
  areOfOne: ({ settings: one }, { settings: other }) => one.name === other.name && one.currency === other.currency,
  differ: (one, other) => one.figures !== other.figures,
});

/** The figures of a product as these pages last showed them otherwise; null where it has not changed. */
export function figuresBefore(
  settings: Settings,
  costs: readonly ProductCost[],
): (product: string, basis: Basis) => Priced | null {
  const before = remembered({ settings, costs, figures: figuresOf(settings, costs) });
  return (id, basis) => {
    const cost = before?.costs.find(({ product }) => product.id === id);
    return before && cost ? onePriced(cost, basis, before.settings) : null;
  };
}

function figuresOf({ currency, tax, paymentFee, paymentFeeFixed }: Settings, costs: readonly ProductCost[]): string {
  const ofProducts = costs.map(({ product, byBasis }) => [
    product.id,
    product.priceToShops?.toString(),
    product.priceToCustomers?.toString(),
    ...Object.values(byBasis).map(({ perUnit }) => perUnit && moneyShown(perUnit, currency, DECIMALS_BEYOND)),
  ]);
  return JSON.stringify([[tax, paymentFee, paymentFeeFixed].map(String), ...ofProducts]);
}
