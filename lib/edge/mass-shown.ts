/** Masses as the screens say them, in the units of the workshop's notation. @rule SHOW-1 */
import { dividedBy, type Fraction, ratio } from "@/lib/domain/fraction";
import type { UnitSystem } from "@/lib/domain/notation";
import { UNITS } from "@/lib/domain/quantity";
import { notation } from "./notation";
import {
  asFraction,
  type Direction,
  inDecimals,
  isNothing,
  NO_BREAK,
  numberShown,
  REVERSED,
  sizeOf,
  tenTo,
} from "./shown-digits";

interface MassStep {
  /** Up to and not including so many of its units; null for the last. */
  readonly below: bigint | null;
  readonly unit: "g" | "kg" | "oz" | "lb";
  readonly decimals: number;
}

/** How a mass is shown, by its size, ascending. @rule SHOW-1 */
const MASS_STEPS: Readonly<Record<UnitSystem, readonly MassStep[]>> = {
  metric: [
    { below: 10n, unit: "g", decimals: 1 },
    { below: 1_000n, unit: "g", decimals: 0 },
    { below: 10n, unit: "kg", decimals: 2 },
    { below: null, unit: "kg", decimals: 1 },
  ],
  US: [
    { below: 1n, unit: "oz", decimals: 3 },
    { below: 16n, unit: "oz", decimals: 2 },
    { below: 10n, unit: "lb", decimals: 2 },
    { below: null, unit: "lb", decimals: 1 },
  ],
};

/**
 * A mass, µg: `9.4 g`, `84 g`, `2.93 kg`, `46.0 kg`, or `0.331 oz`, `2.96 oz`, `6.46 lb`, `101.4 lb`; 0 only for nothing
 * at all.
 */
export function massShown(micrograms: bigint | Fraction, direction: Direction): string {
  const exact = asFraction(micrograms);
  const steps = MASS_STEPS[notation().units];
  if (isNothing(exact)) return `0${NO_BREAK}${steps[0]?.unit ?? "g"}`;
  const size = sizeOf(exact);
  const towards = exact.over < 0n ? REVERSED[direction] : direction;
  for (const { below, unit, decimals } of steps) {
    const inUnit = dividedBy(size, UNITS[unit].size);
    if (below !== null && inDecimals(inUnit, decimals, towards) >= below * tenTo(decimals)) continue;
    return `${numberShown(exact.over < 0n ? ratio(-inUnit.over, inUnit.under) : inUnit, { least: decimals, most: decimals }, direction)}${NO_BREAK}${unit}`;
  }
  throw new Error("the last step of a mass has no limit");
}
