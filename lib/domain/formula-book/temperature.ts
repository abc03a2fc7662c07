/** Degrees Fahrenheit as degrees Celsius. @rule CHECK-11 */
import { type Fraction, minus, roundedHalfEven, times, whole } from "@/lib/domain/fraction";
import { type DecimalText, decimalValue } from "@/lib/domain/quantity";

/**
 * (°F − 32) × 5/9, to the nearest hundredth of a degree, half to even.
 * @returns null below 0 °C, which no field here holds
 */
export function celsiusOf(fahrenheit: DecimalText): DecimalText | null {
  const exact: Fraction = times(minus(decimalValue(fahrenheit), whole(32n)), { over: 5n, under: 9n });
  const hundredths = roundedHalfEven(times(exact, whole(100n)));
  if (hundredths < 0n) return null;
  const decimals = (hundredths % 100n).toString().padStart(2, "0").replace(/0+$/, "");
  return `${(hundredths / 100n).toString()}${decimals && `.${decimals}`}` as DecimalText;
}
