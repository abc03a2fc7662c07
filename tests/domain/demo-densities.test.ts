/** The densities of the demo against the handbooks, g/mL at 20 °C. */
import { describe, expect, test } from "vitest";
import { ratio, roundedHalfEven, times } from "@/lib/domain/fraction";
import { quantity, readAmount, type Density } from "@/lib/domain/quantity";
import { decimal, inGrams } from "@/tests/helpers/notation";
import { readDemo } from "./demo-workshop";

const { workshop } = readDemo();

const CRC = "CRC Handbook, Physical Constants of Organic Compounds (read in a CSV copy)";

const HANDBOOK = [
  { material: "m-water", density: "0.9982", book: "Tanaka et al., Metrologia 38 (2001) 301 (recomputed)" },
  { material: "m-glycerin", density: "1.2613", book: CRC },
  { material: "m-propanediol", density: "1.0538", book: CRC },
  { material: "m-ethanol", density: "0.7893", book: CRC },
  { material: "m-ipm", density: "0.8532", book: CRC },
  { material: "m-limonene", density: "0.8411", book: CRC },
] as const;

/** Relative densities to water at 20 °C; the demo takes the middle of the range times that of water. */
const RANGES = [
  { material: "m-sunflower", from: "0.918", to: "0.923", middle: 9205n, book: "Codex CXS 210-1999 (from memory)" },
  {
    material: "m-castor",
    from: "0.952",
    to: "0.965",
    middle: 9585n,
    book: "Castor oil BP 1993 (range read on a data page)",
  },
  { material: "m-lavandin", from: "0.885", to: "0.897", middle: 8910n, book: "ISO 3054:1987 (read in its abstract)" },
] as const;

const densityOf = (id: string): Density | null =>
  workshop.materials.find((material) => material.id === id)?.density ?? null;

describe("[QTY-1] the demo's densities", () => {
  test.each(HANDBOOK)("$material is $density, $book", ({ material, density }) => {
    expect(inGrams(densityOf(material) ?? 0n)).toBe(density);
  });

  test.each(RANGES)("$material is the middle of $from to $to times water, $book", ({ material, from, to, middle }) => {
    const [low, high] = [Number(from), Number(to)];
    expect((low + high) / 2).toBeCloseTo(Number(middle) / 10_000, 9);
    // 0.9982 for water; the file keeps four decimals.
    const tenThousandths = roundedHalfEven(times(ratio(middle, 10_000n), ratio(9_982n, 1n)));
    expect(densityOf(material)).toBe(tenThousandths * 100n);
  });

  test("every other material is weighed: no density, and a volume of it is refused", () => {
    const sourced = new Set<string>([...HANDBOOK, ...RANGES].map(({ material }) => material));
    const others = workshop.materials.filter(({ id }) => !sourced.has(id));
    expect(others).toHaveLength(28);
    for (const { density, measure } of others) {
      expect(density).toBeNull();
      if (measure === "count") continue;
      const typed = { number: decimal("1"), unit: "mL" } as const;
      expect(readAmount(typed, measure, density).kind).toBe("no density");
    }
  });

  test("[QTY-4] a litre of glycerin comes to 1261.3 g, half a litre of conditioner to 490 g", () => {
    const litre = { number: decimal("1"), unit: "L" } as const;
    expect(readAmount(litre, "mass", densityOf("m-glycerin"))).toEqual({
      kind: "read",
      quantity: quantity(1_261_300_000n),
    });
    expect(workshop.products.find(({ id }) => id === "p-refill")?.fill.quantity).toBe(490_000_000n);
  });
});
