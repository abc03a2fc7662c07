/** How many units must be sold before what is kept of them pays what a month costs anyway. @rule PRICE-5 */
import { dividedBy, type Fraction, roundedUp, whole } from "./fraction";
import type { MicroUnits } from "./money";
import { quantity, type Units } from "./quantity";

export type BreakEven = { readonly kind: "units"; readonly units: Units } | { readonly kind: "never" };

/**
 * The fewest units at which what is kept pays the fixed costs. What the hourly overhead rate already carries is in the
 * cost of a unit and must not be counted again.
 * @param fixed  costs of a month that no unit carries, and what is to be left over, if anything
 * @param kept   what is kept of one unit, exact micro-units
 * @returns `never` where there is something to pay and nothing is kept
 * @rule PRICE-5
 */
export function breakEven(fixed: MicroUnits, kept: Fraction): BreakEven {
  if (fixed === 0n) return { kind: "units", units: quantity<Units>(0n) };
  if (kept.over <= 0n) return { kind: "never" };
  return { kind: "units", units: quantity<Units>(roundedUp(dividedBy(whole(fixed), kept))) };
}
