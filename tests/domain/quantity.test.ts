import { fc, test as property } from "@fast-check/vitest";
import { describe, expect, test } from "vitest";
import {
  decimalValue,
  LARGEST_FIGURE,
  type Measure,
  quantity,
  readAmount,
  type Unit,
  UNITS,
} from "@/lib/domain/quantity";
import { decimal } from "@/tests/helpers/notation";

const read = (number: string, unit: Unit, measure: Measure = "mass", density: string | null = null) => {
  const reading = readAmount(
    { number: decimal(number), unit },
    measure,
    density === null ? null : quantity(BigInt(density)),
  );
  return reading.kind === "read" ? reading.quantity : reading.kind;
};

describe("[QTY-2] [QTY-4] amounts become whole micrograms, rounded once, half to even", () => {
  test.each([
    { number: "1", unit: "mg", micrograms: 1_000n },
    { number: "1", unit: "kg", micrograms: 1_000_000_000n },
    { number: "16", unit: "oz", micrograms: 453_592_370n },
    { number: "1", unit: "lb", micrograms: 453_592_370n },
    { number: "1", unit: "oz", micrograms: 28_349_523n },
    { number: "0.0000015", unit: "g", micrograms: 2n },
    { number: "0.0000025", unit: "g", micrograms: 2n },
    { number: "0.0000005", unit: "g", micrograms: 0n },
  ] as const)("$number $unit is $micrograms µg", ({ number, unit, micrograms }) => {
    expect(read(number, unit)).toBe(micrograms);
  });

  test.each([
    { number: "8", unit: "floz-us", density: "900000", micrograms: 212_929_413n },
    { number: "1", unit: "gal-uk", density: "1000000", micrograms: 4_546_090_000n },
    { number: "1", unit: "gal-us", density: "800000", micrograms: 3_028_329_427n },
    { number: "10", unit: "floz-uk", density: "1000000", micrograms: 284_130_625n },
    { number: "250", unit: "mL", density: "1261300", micrograms: 315_325_000n },
    { number: "1", unit: "L", density: "1", micrograms: 1_000n },
  ] as const)("$number $unit at $density µg/mL is $micrograms µg", ({ number, unit, density, micrograms }) => {
    expect(read(number, unit, "mass", density)).toBe(micrograms);
  });
});

test.each([
  { rule: "QTY-5", number: "1", unit: "mL", measure: "mass", says: "no density" },
  { rule: "QTY-1", number: "1", unit: "each", measure: "mass", says: "wrong measure" },
  { rule: "QTY-1", number: "1", unit: "g", measure: "count", says: "wrong measure" },
  { rule: "QTY-3", number: "12.5", unit: "each", measure: "count", says: "not whole" },
  { rule: "QTY-6", number: "9007199254.740992", unit: "g", measure: "mass", says: "out of range" },
  { rule: "QTY-6", number: "9007199254740992", unit: "each", measure: "count", says: "out of range" },
] as const)("[$rule] $number $unit of something kept by $measure: $says", ({ number, unit, measure, says }) => {
  expect(read(number, unit, measure)).toBe(says);
});

test("[QTY-6] the largest figure itself is read", () => {
  expect(read("9007199254.740991", "g")).toBe(LARGEST_FIGURE);
  expect(read("9007199254740991", "each", "count")).toBe(LARGEST_FIGURE);
});

property.prop([fc.bigInt({ min: 0n, max: 10n ** 12n }), fc.integer({ min: 0, max: 12 })])(
  "[QTY-3] a plain decimal has its exact value",
  (digits, decimals) => {
    const text = digits.toString().padStart(decimals + 1, "0");
    const point = text.length - decimals;
    const written = decimals === 0 ? text : `${text.slice(0, point)}.${text.slice(point)}`;
    const { over, under } = decimalValue(decimal(written));
    expect(over * 10n ** BigInt(decimals)).toBe(digits * under);
  },
);

property.prop([fc.bigInt({ min: 1n, max: 10n ** 9n }), fc.constantFrom("mg", "g", "kg", "oz", "lb")])(
  "[QTY-4] what is read is within half a microgram of what was typed",
  (number, unit) => {
    const { size } = UNITS[unit as "oz"];
    const micrograms = read(number.toString(), unit);
    if (typeof micrograms !== "bigint") return;
    const gap = 2n * (micrograms * size.under - number * size.over);
    expect(gap <= size.under && gap >= -size.under).toBe(true);
  },
);
