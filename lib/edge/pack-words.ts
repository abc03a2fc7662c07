import { type Measured, type Stock, UNITS } from "@/lib/domain/quantity";
import type { Material } from "@/lib/domain/workshop";
import { amountShown, densityShown } from "./figures";

/** How a pack comes to its grams: through the density, or by a unit's size. */
export function packReason({ density }: Material, { typed }: Measured<Stock>): string {
  const { unit } = typed;
  if (UNITS[unit].kind === "volume" && density !== null) return `${amountShown(typed)} × ${densityShown(density)}`;
  return unit === "oz" || unit === "lb" ? `${amountShown(typed)} in grams` : "in one pack";
}
