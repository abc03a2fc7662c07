/** The size of a run as a maker says it: so many units, or so much in the vessel. @rule NEED-1 */
import type { Books } from "@/lib/domain/desk";
import type { Micrograms, Units } from "@/lib/domain/quantity";
import { unitsOfBulk } from "@/lib/domain/units-of-bulk";

export type RunSize =
  | { readonly kind: "units"; readonly units: Units }
  /** Turned into whole units, rounded down. */
  | { readonly kind: "vessel"; readonly mass: Micrograms };

/** Not enough in the vessel for one unit. */
export interface FillsNone {
  readonly kind: "fills none";
}

export function unitsOfSize(
  { workshop }: Books,
  productId: string,
  size: RunSize,
): { readonly kind: "units"; readonly units: Units } | FillsNone | { readonly kind: "no such product" } {
  if (size.kind === "units") return size;
  const product = workshop.products.find(({ id }) => id === productId);
  if (!product) return { kind: "no such product" };
  const units = unitsOfBulk(product, size.mass);
  return units > 0n ? { kind: "units", units } : { kind: "fills none" };
}
