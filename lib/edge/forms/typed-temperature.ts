/** A temperature as a person types it: `70`, `70 °C`, `158 °F`. Held in °C. @rule CHECK-11 */
import { celsiusOf } from "@/lib/domain/formula-book/temperature";
import type { DecimalText } from "@/lib/domain/quantity";
import type { Outcome } from "@/lib/edge/fields";
import { quoted } from "@/lib/edge/shown-value";
import { isTooLong, readTypedNumber, tooLong, withoutEnds } from "./typed-number";

/** Above it a number alone is more likely to be °F, and as °C it would be hotter than water boils. */
const HOTTEST_WITHOUT_A_UNIT = 100;

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
  if (scale === "" && Number(read.value) > HOTTEST_WITHOUT_A_UNIT) return { fault: askForUnit(read.value) };
  if (scale.toLowerCase() !== "f") return read;
  const celsius = celsiusOf(read.value as DecimalText);
  return celsius === null ? { fault: `${text} is below 0 °C, and nothing here is` } : { value: celsius };
}

function askForUnit(number: string): string {
  const celsius = celsiusOf(number as DecimalText) ?? "";
  return `is above 100 without a unit; write ${number} °F (that is ${celsius} °C) or ${number} °C`;
}
