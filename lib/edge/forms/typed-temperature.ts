/** A temperature as a person types it: `70`, `70 °C`, `158 °F`. Held in °C. @rule CHECK-11 */
import { compare, whole } from "@/lib/domain/fraction";
import { celsiusOf } from "@/lib/domain/formula-book/temperature";
import { type DecimalText, decimalValue } from "@/lib/domain/quantity";
import type { Outcome } from "@/lib/edge/fields";
import { quoted } from "@/lib/edge/shown-value";
import { isTooLong, readTypedNumber, tooLong, withoutEnds } from "./typed-number";

/** Above it a number alone is more likely to be °F, and as °C it would be hotter than water boils. */
const HOTTEST_WITHOUT_A_UNIT = whole(100n);

/**
 * Reads °C, and °F with its unit.
 * @returns a plain decimal in °C, or why there is none: it is never taken for the other scale
 */
export function readTypedTemperature(typed: string): Outcome<string> {
  if (isTooLong(typed)) return tooLong(typed);
  const text = withoutEnds(typed);
  const [, number = "", scale = ""] = /^(.*?)\s*(?:(?:°|º|deg(?:rees)?\.?|\s)\s*)?([CcFf])?$/su.exec(text) ?? [];
  const read = readTypedNumber(scale === "" ? text.replace(/\s*[°º]$/u, "") : number);
  if ("fault" in read) {
    return /\p{L}|°/u.test(text)
      ? { fault: `must be a temperature, as 70, 70 °C or 158 °F, not ${quoted(text)}` }
      : read;
  }
  const degrees = read.value as DecimalText;
  if (scale === "" && compare(decimalValue(degrees), HOTTEST_WITHOUT_A_UNIT) > 0) return { fault: askForUnit(degrees) };
  if (scale.toLowerCase() !== "f") return read;
  const celsius = celsiusOf(degrees);
  return celsius === null ? { fault: `${text} is below 0 °C, and nothing here is` } : { value: celsius };
}

function askForUnit(number: DecimalText): string {
  const celsius = celsiusOf(number) ?? "";
  return `is above 100 without a unit; write ${number} °F (that is ${celsius} °C) or ${number} °C`;
}
