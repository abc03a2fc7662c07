/** The size of a run as a maker says it: so many units, or so much in the vessel. @rule NEED-1, QTY-6 */
import type { Books } from "@/lib/domain/desk";
import { bulkOf, roundedUpFor } from "@/lib/domain/needs";
import { LARGEST_FIGURE, type Micrograms, type Units } from "@/lib/domain/quantity";
import { unitsOfBulk } from "@/lib/domain/units-of-bulk";

export type RunSize =
  | { readonly kind: "units"; readonly units: Units }
  /** Turned into whole units, rounded down. */
  | { readonly kind: "vessel"; readonly mass: Micrograms };

/** Not enough in the vessel for one unit, or so many that no figure of them could be kept. */
export interface NoSuchSize {
  readonly kind: "fills none" | "too many";
}

export function unitsOfSize(
  { workshop }: Books,
  productId: string,
  size: RunSize,
): { readonly kind: "units"; readonly units: Units } | NoSuchSize | { readonly kind: "no such product" } {
  const product = workshop.products.find(({ id }) => id === productId);
  if (!product) return { kind: "no such product" };
  const units = size.kind === "units" ? size.units : unitsOfBulk(product, size.mass);
  if (units === 0n) return { kind: "fills none" };
  return roundedUpFor(bulkOf(product), units) > LARGEST_FIGURE ? { kind: "too many" } : { kind: "units", units };
}
