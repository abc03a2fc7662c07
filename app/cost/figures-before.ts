import "server-only";
import type { Basis, ProductCost } from "@/lib/domain/plan-figures";
import type { Settings } from "@/lib/domain/workshop";
import { moneyShown } from "@/lib/edge/figures";
import { onePriced, type Priced } from "./_parts/priced";

/** What the pages of this place showed. */
interface Shown {
  readonly settings: Settings;
  readonly costs: readonly ProductCost[];
  /** The same for the same figures. */
  readonly figures: string;
}

/** What is shown now, and what was shown before it. It is lost with the server, and nothing depends on it. */
let last: { readonly shown: Shown; readonly before: Shown | null; readonly since: number } | null = null;

const MARKED_FOR_MS = 15 * 60 * 1000;
const DECIMALS_BEYOND = 2;

/**
 * The figures of a product as these pages last showed them otherwise, so that whatever has changed them, here or in
 * another place, each can be marked with what it was. The marks stay until the figures change again, and a quarter of
 * an hour at most.
 */
export function figuresBefore(
  settings: Settings,
  costs: readonly ProductCost[],
): (product: string, basis: Basis) => Priced | null {
  const shown = { settings, costs, figures: figuresOf(settings, costs) };
  const now = Date.now();
  if (last === null || !isSameWorkshop(last.shown, shown)) last = { shown, before: null, since: now };
  else if (last.shown.figures !== shown.figures) last = { shown, before: last.shown, since: now };
  const before = now - last.since < MARKED_FOR_MS ? last.before : null;
  return (id, basis) => {
    const cost = before?.costs.find(({ product }) => product.id === id);
    return before && cost ? onePriced(cost, basis, before.settings) : null;
  };
}

const isSameWorkshop = (one: Shown, other: Shown): boolean =>
  one.settings.name === other.settings.name && one.settings.currency === other.settings.currency;

function figuresOf({ currency, tax, paymentFee, paymentFeeFixed }: Settings, costs: readonly ProductCost[]): string {
  const ofProducts = costs.map(({ product, byBasis }) => [
    product.id,
    product.priceToShops?.toString(),
    product.priceToCustomers?.toString(),
    ...Object.values(byBasis).map(({ perUnit }) => perUnit && moneyShown(perUnit, currency, DECIMALS_BEYOND)),
  ]);
  return JSON.stringify([[tax, paymentFee, paymentFeeFixed].map(String), ...ofProducts]);
}
