/**
 * Unit factors against NIST Special Publication 811 (2008), Appendix B.8, and NIST Handbook 44 (2014), Appendix C,
 * both read as PDFs in a copy; the UK units against the Weights and Measures Act 1985, Schedule 1 (from memory).
 */
import { describe, expect, test } from "vitest";
import { compare, ratio, roundedHalfEven, times } from "@/lib/domain/fraction";
import { type Density, quantity, readAmount, type Unit, UNITS } from "@/lib/domain/quantity";
import { decimal, inGrams } from "@/tests/helpers/notation";

/** At 1 g/mL a gram reads as a millilitre. */
const ONE = quantity<Density>(1_000_000n);

const inGramsOrMillilitres = (number: string, unit: Unit): string => {
  const reading = readAmount({ number: decimal(number), unit }, "mass", ONE);
  return reading.kind === "read" ? inGrams(reading.quantity) : reading.kind;
};

// Amounts large enough that the six decimals of a microgram hold every digit of the definition.
describe("[QTY-2] exact definitions (recomputed; factors read in a copy)", () => {
  test.each([
    { says: "the US gallon, 231 cubic inches", amount: "1", unit: "gal-us", is: "3785.411784" },
    { says: "the US pint, 16 US fluid ounces", amount: "16", unit: "floz-us", is: "473.176473" },
    { says: "the US cup, 8 US fluid ounces", amount: "8", unit: "floz-us", is: "236.588236" },
    { says: "1,000 tablespoons, 500 US fluid ounces", amount: "500", unit: "floz-us", is: "14786.764781" },
    { says: "100,000 tablespoons in full", amount: "50000", unit: "floz-us", is: "1478676.478125" },
    { says: "10,000 US fluid ounces in full", amount: "10000", unit: "floz-us", is: "295735.295625" },
    { says: "the imperial pint, 20 UK fluid ounces", amount: "20", unit: "floz-uk", is: "568.26125" },
    { says: "10 UK fluid ounces in full", amount: "10", unit: "floz-uk", is: "284.130625" },
    { says: "the UK gallon", amount: "1", unit: "gal-uk", is: "4546.09" },
    { says: "the pound", amount: "1", unit: "lb", is: "453.59237" },
    { says: "1,000 ounces in full", amount: "1000", unit: "oz", is: "28349.523125" },
    { says: "16 ounces, a pound", amount: "16", unit: "oz", is: "453.59237" },
  ] as const)("$says", ({ amount, unit, is }) => {
    expect(inGramsOrMillilitres(amount, unit)).toBe(is);
  });

  test.each([
    { says: "16 ounces are a pound", many: "oz", times: 16n, one: "lb" },
    { says: "128 US fluid ounces are a US gallon", many: "floz-us", times: 128n, one: "gal-us" },
    { says: "160 UK fluid ounces are a UK gallon", many: "floz-uk", times: 160n, one: "gal-uk" },
    { says: "1,000 mL are a litre", many: "mL", times: 1_000n, one: "L" },
    { says: "1,000 mg are a gram", many: "mg", times: 1_000n, one: "g" },
    { says: "1,000 g are a kilogram", many: "g", times: 1_000n, one: "kg" },
  ] as const)("$says, without a rest", ({ many, times: count, one }) => {
    expect(compare(times(UNITS[many].size, ratio(count, 1n)), UNITS[one].size)).toBe(0);
  });

  test("a US gallon is 231 cubic inches of 25.4 mm (HB 44 App. C)", () => {
    // 25.4 mm is 2.54 cm; a cubic centimetre is a millilitre, a million nanolitres.
    const nanolitres = ratio(231n * 254n ** 3n, 1n);
    expect(compare(UNITS["gal-us"].size, nanolitres)).toBe(0);
  });
});

describe("[QTY-2] as SP 811 prints them, to seven figures (from memory)", () => {
  test.each([
    { unit: "oz", perUnit: 10_000_000n, prints: "2.834952" },
    { unit: "floz-us", perUnit: 10_000_000n, prints: "2.957353" },
    { unit: "floz-uk", perUnit: 10_000_000n, prints: "2.841306" },
    { unit: "gal-us", perUnit: 1_000_000_000n, prints: "3.785412" },
    { unit: "gal-uk", perUnit: 1_000_000_000n, prints: "4.54609" },
  ] as const)("$unit: $prints", ({ unit, perUnit, prints }) => {
    const inPrinted = times(UNITS[unit].size, ratio(1_000_000n, perUnit));
    expect(inGrams(roundedHalfEven(inPrinted))).toBe(prints);
  });
});

describe("[QTY-2, QTY-4] conversions (recomputed; constructed amounts)", () => {
  test.each([
    { says: "12 US fluid ounces", amount: "12", unit: "floz-us", is: "354.882355" },
    { says: "1 lb 10 oz, 26 ounces", amount: "26", unit: "oz", is: "737.087601" },
  ] as const)("$says", ({ amount, unit, is }) => {
    expect(inGramsOrMillilitres(amount, unit)).toBe(is);
  });

  test("a UK fluid ounce is 0.9607599404 US fluid ounces; HB 44 prints 0.961 (read in a copy)", () => {
    const { size: uk } = UNITS["floz-uk"];
    const { size: us } = UNITS["floz-us"];
    const inBillionths = roundedHalfEven(ratio(uk.over * us.under * 10n ** 10n, uk.under * us.over));
    expect(inBillionths).toBe(9_607_599_404n);
  });
});

describe("[QTY-5] an ounce is weight and a fluid ounce volume (HB 44 App. C, read in a copy)", () => {
  test.each(["floz-us", "floz-uk", "mL", "L", "gal-us", "gal-uk"] as const)("%s needs a density", (unit) => {
    expect(readAmount({ number: decimal("1"), unit }, "mass", null)).toEqual({ kind: "no density" });
  });
  test.each(["oz", "lb", "g"] as const)("%s needs none, and a density changes nothing", (unit) => {
    const typed = { number: decimal("1"), unit };
    expect(readAmount(typed, "mass", null)).toEqual(readAmount(typed, "mass", quantity<Density>(789_300n)));
  });
});
