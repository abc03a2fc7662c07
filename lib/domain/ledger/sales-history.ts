/** The list of what was sold, which follows the ledger: history for whoever plans by it. @rule LEDGER-15 */
import type { Day } from "@/lib/domain/calendar";
import { quantity, type Units } from "@/lib/domain/quantity";
import type { Sale } from "@/lib/domain/workshop";

export interface UnitsOf {
  readonly product: string;
  readonly units: bigint;
}

/** What was sold on a day, one line a product. */
export const withSold = (sales: readonly Sale[], date: Day, sold: readonly UnitsOf[]): readonly Sale[] => [
  ...sales,
  ...sold.map(({ product, units }) => ({ product, date, units: quantity<Units>(units) })),
];

/** Units that came back come off the latest sales of their product, up to the day. */
export function withTakenBack(sales: readonly Sale[], until: Day, back: readonly UnitsOf[]): readonly Sale[] {
  const left = [...sales];
  for (const { product, units } of back) {
    let open = units;
    while (open > 0n) {
      const at = latestOf(left, product, until);
      const sale = left[at];
      if (!sale) break;
      const kept = sale.units > open ? sale.units - open : 0n;
      open -= sale.units - kept;
      if (kept > 0n) left[at] = { ...sale, units: quantity<Units>(kept) };
      else left.splice(at, 1);
    }
  }
  return left;
}

function latestOf(sales: readonly Sale[], product: string, until: Day): number {
  let found = -1;
  for (const [at, sale] of sales.entries()) {
    if (sale.product !== product || sale.date > until) continue;
    if (found < 0 || sale.date >= (sales[found]?.date ?? sale.date)) found = at;
  }
  return found;
}
