/** What a kilo or a piece costs, as a maker compares it. */
import { compare, type Fraction, times, whole } from "@/lib/domain/fraction";
import type { CurrencyCode } from "@/lib/domain/money";
import type { Measure } from "@/lib/domain/quantity";
import { moneyShown, priceShown } from "./figures";
import { NO_BREAK } from "./shown-digits";

const MICROGRAMS_A_KILO = 1_000_000_000n;

/** `£8.42 a kg`, `£0.4500 each`. @param each  exact micro-units for one µg or piece */
export const largeUnitShown = (each: Fraction, measure: Measure, currency: CurrencyCode): string =>
  measure === "mass"
    ? `${moneyShown(inLargeUnit(each, measure), currency)} a${NO_BREAK}kg`
    : `${moneyShown(each, currency, 2)} each`;

/** Micro-units for a kilogram or for one piece. */
export const inLargeUnit = (each: Fraction, measure: Measure): Fraction =>
  measure === "mass" ? times(each, whole(MICROGRAMS_A_KILO)) : each;

/** A line across a drawing of prices. */
export interface PriceTick {
  /** Millionths of the currency. */
  readonly micros: bigint;
  readonly shown: string;
}

/** No more lines than these, the one at nothing besides. */
const MOST_TICKS = 4n;

/**
 * Lines from nothing up to or above the highest price, at 1, 2 or 5 of a decimal unit, each with the decimals that it
 * needs and no fewer than the currency has.
 * @param highest  micro-units for a kilogram or a piece, above zero
 */
export function priceTicks(highest: Fraction, currency: CurrencyCode): readonly PriceTick[] {
  const reaches = (step: bigint) => compare(highest, whole(step * MOST_TICKS)) <= 0;
  let unit = 1n;
  while (!reaches(unit * 10n)) unit *= 10n;
  const step = [1n, 2n, 5n, 10n].map((each) => each * unit).find(reaches) ?? unit * 10n;
  const ticks: PriceTick[] = [];
  for (let micros = 0n; ticks.length < 2 || compare(whole(micros - step), highest) < 0; micros += step)
    ticks.push({ micros, shown: priceShown(micros, currency) });
  return ticks;
}
