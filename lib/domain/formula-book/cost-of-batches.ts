/** What one unit costs where it is made in batches of given sizes. @rule SCALE-5 */
import type { Day } from "@/lib/domain/calendar";
import { compareFormulas } from "@/lib/domain/formula-comparison";
import { dividedBy, type Fraction, plus, times, whole, ZERO } from "@/lib/domain/fraction";
import type { Basis } from "@/lib/domain/plan-figures";
import type { Units } from "@/lib/domain/quantity";
import type { Product, Workshop } from "@/lib/domain/workshop";

/**
 * Each batch is priced as a usual run of its size: with a heel, per-run items and minutes of a run of its own.
 * @returns exact micro-units for one unit over all batches; null where a price is not known, or there are no units
 * @rule SCALE-5
 */
export function costOfBatches(
  workshop: Workshop,
  today: Day,
  product: Product,
  sizes: readonly Units[],
  basis: Basis,
): Fraction | null {
  const costBySize = new Map(
    [...new Set(sizes)].map((units) => [units, costAt(workshop, today, { ...product, usualRun: units }, basis)]),
  );
  let [all, count] = [ZERO, 0n];
  for (const units of sizes) {
    const each = costBySize.get(units) ?? null;
    if (each === null) return null;
    all = plus(all, times(each, whole(units)));
    count += units;
  }
  return count === 0n ? null : dividedBy(all, whole(count));
}

function costAt(workshop: Workshop, today: Day, product: Product, basis: Basis): Fraction | null {
  if (product.usualRun === 0n) return null;
  const { formula } = product;
  const compared = compareFormulas(workshop, today, { product, first: formula, second: formula, basis });
  return compared.kind === "compared" ? compared.first.perUnit : null;
}
