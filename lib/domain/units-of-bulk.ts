/** How many whole units a batch of a given mass fills: NEED-1 backwards. @rule NEED-1 */
import { roundedDown } from "./fraction";
import { bulkOf } from "./needs";
import { type Micrograms, quantity, type Units } from "./quantity";
import type { Product } from "./workshop";

/**
 * The most units whose bulk is not above what the vessel holds, µg.
 * @returns 0 where it does not fill one
 */
export function unitsOfBulk(product: Product, vessel: Micrograms): Units {
  const { perUnit, fixed, under } = bulkOf(product);
  const forUnits = vessel * under - fixed;
  return quantity<Units>(forUnits <= 0n ? 0n : roundedDown({ over: forUnits, under: perUnit }));
}
