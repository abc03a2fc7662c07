/** Volume to mass through published densities, and the demo's water against the published formula. */
import { describe, expect, test } from "vitest";
import { type Density, quantity, readAmount, type Unit } from "@/lib/domain/quantity";
import { decimal, inGrams } from "@/tests/helpers/notation";
import { readDemo } from "@/tests/domain/demo-workshop";

const densityOf = (gramsPerMillilitre: string): Density => {
  const [wholePart = "0", decimals = ""] = gramsPerMillilitre.split(".");
  return quantity<Density>(BigInt(wholePart + decimals.padEnd(6, "0")));
};
const massOf = (number: string, unit: Unit, density: string): string => {
  const reading = readAmount({ number: decimal(number), unit }, "mass", densityOf(density));
  return reading.kind === "read" ? inGrams(reading.quantity) : reading.kind;
};

const CRC = "CRC Handbook, Physical Constants of Organic Compounds, read in a CSV copy";

describe(`[QTY-1, QTY-4] a volume weighed by its density (${CRC})`, () => {
  test.each([
    { substance: "glycerol, 1 US gallon", amount: "1", unit: "gal-us", density: "1.2613", grams: "4774.539883" },
    { substance: "glycerol, 1 L", amount: "1", unit: "L", density: "1.2613", grams: "1261.3" },
    { substance: "propylene glycol, 250 mL", amount: "250", unit: "mL", density: "1.0361", grams: "259.025" },
    { substance: "1,3-propanediol, 1 L", amount: "1", unit: "L", density: "1.0538", grams: "1053.8" },
    { substance: "isopropyl myristate, 500 mL", amount: "500", unit: "mL", density: "0.8532", grams: "426.6" },
    { substance: "d-limonene, 100 mL", amount: "100", unit: "mL", density: "0.8411", grams: "84.11" },
    { substance: "oleic acid, 1 L", amount: "1", unit: "L", density: "0.8935", grams: "893.5" },
    { substance: "2-propanol at 25 °C, 1 L", amount: "1", unit: "L", density: "0.7809", grams: "780.9" },
    { substance: "2-phenoxyethanol at 22 °C, 1 L", amount: "1", unit: "L", density: "1.102", grams: "1102" },
    // 100 g ÷ 0.7893 g/mL, taken back: recomputed.
    {
      substance: "ethanol, 126.694539465… mL",
      amount: "126.694539465349",
      unit: "mL",
      density: "0.7893",
      grams: "100",
    },
  ] as const)("$substance is $grams g", ({ amount, unit, density, grams }) => {
    expect(massOf(amount, unit, density)).toBe(grams);
  });
});

/** kg/m³ by Tanaka et al., Metrologia 38 (2001) 301–309; coefficients read in copies. Valid from 0 to 40 °C. */
function tanaka(celsius: number): number {
  const [a1, a2, a3, a4, a5] = [-3.983035, 301.797, 522528.9, 69.34881, 999.97495] as const;
  return a5 * (1 - ((celsius + a1) ** 2 * (celsius + a2)) / (a3 * (celsius + a4)));
}

/** kg/m³ by Kell, J. Chem. Eng. Data 20 (1975) 97; the denominator's coefficient is given, for it circulates misprinted. */
function kell(celsius: number, denominator: number): number {
  const t = celsius;
  const over =
    999.83952 +
    16.945176 * t -
    7.9870401e-3 * t ** 2 -
    46.170461e-6 * t ** 3 +
    105.56302e-9 * t ** 4 -
    280.54253e-12 * t ** 5;
  return over / (1 + denominator * t);
}

describe("[QTY-1] water in the demo", () => {
  test.each([
    { says: "Tanaka 2001 at 4 °C (recomputed)", formula: tanaka(4), is: 999.9749 },
    { says: "Tanaka 2001 at 20 °C (recomputed)", formula: tanaka(20), is: 998.2067 },
    {
      says: "Tanaka 2001 at 25 °C (recomputed); IAPWS at 298.15 K, 0.1 MPa: 997.047013",
      formula: tanaka(25),
      is: 997.047,
    },
    { says: "Kell 1975 at 20 °C (recomputed)", formula: kell(20, 16.87985e-3), is: 998.2041 },
    { says: "Kell 1975 at 40 °C (recomputed)", formula: kell(40, 16.87985e-3), is: 992.2158 },
  ])("the formula itself: $says", ({ formula, is }) => {
    expect(Math.abs(formula - is)).toBeLessThan(0.0005);
  });

  const water = readDemo().workshop.materials.find(({ id }) => id === "m-water")?.density;

  test("is the published 998.2 kg/m³, which Tanaka and Kell agree on to that digit", () => {
    expect(water).toBe(998_200n);
    expect([tanaka(20).toFixed(1), kell(20, 16.87985e-3).toFixed(1)]).toEqual(["998.2", "998.2"]);
  });

  test("is not what Kell's misprinted coefficient gives", () => {
    expect(kell(20, 16.89785e-3).toFixed(1)).toBe("997.9");
  });

  test("a US fluid ounce of it weighs 29.520297… g (recomputed)", () => {
    expect(massOf("1", "floz-us", "0.9982")).toBe("29.520297");
  });
});
