/** Fixed points from outside: 32 °F is 0 °C and 212 °F is 100 °C (the scales' definition, NIST SP 811 (2008), B.8). */
import { expect, test } from "vitest";
import { readTypedTemperature } from "@/lib/edge/forms/typed-temperature";

const read = (typed: string): string => {
  const outcome = readTypedTemperature(typed);
  return "value" in outcome ? outcome.value : `refused: ${outcome.fault}`;
};

test.each([
  ["70", "70"],
  [" 37,5 ", "37.5"],
  ["70 °C", "70"],
  ["70c", "70"],
  ["70°", "70"],
  ["120 °C", "120"],
  ["100", "100"],
  ["32 °F", "0"],
  ["212 °F", "100"],
  ["104F", "40"],
  ["104 degrees F", "40"],
  ["158 °f", "70"],
  ["100 °F", "37.78"],
  ["20 °F", "refused: 20 °F is below 0 °C, and nothing here is"],
  ["104", "refused: is above 100 without a unit; write 104 °F (that is 40 °C) or 104 °C"],
  [
    "100.00000000000000001",
    "refused: is above 100 without a unit; write 100.00000000000000001 °F (that is 37.78 °C) or 100.00000000000000001 °C",
  ],
  ["warm", 'refused: must be a temperature, as 70, 70 °C or 158 °F, not "warm"'],
  ["300 K", 'refused: must be a temperature, as 70, 70 °C or 158 °F, not "300 K"'],
  ["-5", 'refused: must not be below zero, as "-5" is'],
])("[CHECK-11] %s is %s", (typed, celsius) => {
  expect(read(typed)).toBe(celsius);
});
