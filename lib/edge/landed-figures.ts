/** What a kilo or a piece costs, as a maker compares it. */
import { type Fraction, times, whole } from "@/lib/domain/fraction";
import type { CurrencyCode } from "@/lib/domain/money";
import type { Measure } from "@/lib/domain/quantity";
import { moneyShown, NO_BREAK } from "./figures";

const MICROGRAMS_A_KILO = 1_000_000_000n;

/** `£8.42 a kg`, `£0.4500 each`. @param each  exact micro-units for one µg or piece */
export const largeUnitShown = (each: Fraction, measure: Measure, currency: CurrencyCode): string =>
  measure === "mass"
    ? `${moneyShown(inLargeUnit(each, measure), currency)} a${NO_BREAK}kg`
    : `${moneyShown(each, currency, 2)} each`;

/** Micro-units for a kilogram or for one piece. */
export const inLargeUnit = (each: Fraction, measure: Measure): Fraction =>
  measure === "mass" ? times(each, whole(MICROGRAMS_A_KILO)) : each;
