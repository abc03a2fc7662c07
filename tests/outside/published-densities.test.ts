/** The densities that the app offers, each against the publication it names. */
import { describe, expect, test } from "vitest";
import { density } from "@/lib/edge/figure-fields";
import { densitiesFor, PUBLISHED_DENSITIES, type PublishedDensity } from "@/lib/edge/forms/published-densities";

const rowOf = (name: string): PublishedDensity => {
  const row = PUBLISHED_DENSITIES.find(({ names }) => names[0] === name);
  if (row === undefined) throw new Error(`no row for ${name}`);
  return row;
};

/** kg/m³ by Tanaka et al., Metrologia 38 (2001) 301–309; coefficients read in copies. */
const tanaka = (t: number): number =>
  999.97495 * (1 - ((t - 3.983035) ** 2 * (t + 301.797)) / (522528.9 * (t + 69.34881)));

const CRC = "CRC Handbook, Physical Constants of Organic Compounds, read in a CSV copy";
const VALUES = [
  { name: "Glycerol", gramsPerMillilitre: "1.2613", celsius: 20 },
  { name: "Propylene glycol", gramsPerMillilitre: "1.0361", celsius: 20 },
  { name: "1,3-Propanediol", gramsPerMillilitre: "1.0538", celsius: 20 },
  { name: "Ethanol", gramsPerMillilitre: "0.7893", celsius: 20 },
  { name: "2-Propanol", gramsPerMillilitre: "0.7809", celsius: 25 },
  { name: "Isopropyl myristate", gramsPerMillilitre: "0.8532", celsius: 20 },
  { name: "2-Phenoxyethanol", gramsPerMillilitre: "1.102", celsius: 22 },
  { name: "d-Limonene", gramsPerMillilitre: "0.8411", celsius: 20 },
  { name: "Oleic acid", gramsPerMillilitre: "0.8935", celsius: 20 },
];

const RANGES = [
  {
    name: "Castor oil",
    from: "0.952",
    to: "0.965",
    celsius: 20,
    source: "British Pharmacopoeia 1993",
    mark: "read in a copy",
  },
  { name: "Lavandin oil", from: "0.885", to: "0.897", celsius: 20, source: "ISO 3054:1987", mark: "read in a copy" },
  { name: "Sunflower oil", from: "0.918", to: "0.923", celsius: 20, source: "CXS 210-1999", mark: "from memory" },
  { name: "Coconut oil", from: "0.908", to: "0.921", celsius: 40, source: "CXS 210-1999", mark: "from memory" },
  { name: "Grape seed oil", from: "0.92", to: "0.926", celsius: 20, source: "CXS 210-1999", mark: "from memory" },
  {
    name: "Rapeseed oil, low in erucic acid",
    from: "0.914",
    to: "0.92",
    celsius: 20,
    source: "CXS 210-1999",
    mark: "from memory",
  },
];

describe("each row says what its publication says", () => {
  test("water at 20 °C: Tanaka 2001, recomputed and rounded to four decimals", () => {
    const { density, celsius, source, mark } = rowOf("Water");
    expect(density).toEqual({ kind: "value", gramsPerMillilitre: (tanaka(20) / 1000).toFixed(4) });
    expect([celsius, mark]).toEqual([20, "read in a copy"]);
    expect(source).toContain("Metrologia 38 (2001)");
  });

  test.each(VALUES)(`$name (${CRC})`, ({ name, gramsPerMillilitre, celsius }) => {
    expect(rowOf(name)).toMatchObject({
      density: { kind: "value", gramsPerMillilitre },
      celsius,
      source: "CRC Handbook of Chemistry and Physics, Physical Constants of Organic Compounds",
      mark: "read in a copy",
    });
  });

  test.each(RANGES)("$name, a range ($source, $mark)", ({ name, from, to, celsius, source, mark }) => {
    const row = rowOf(name);
    expect(row).toMatchObject({ density: { kind: "range of relative density", from, to }, celsius, mark });
    expect(row.source).toContain(source);
  });

  test("there is no row that nothing here checks", () => {
    const checked = ["Water", ...VALUES.map(({ name }) => name), ...RANGES.map(({ name }) => name)];
    expect(PUBLISHED_DENSITIES.map(({ names }) => names[0]).sort()).toEqual(checked.sort());
  });

  test("[QTY-5] every value is one that the field would take, and no range gives one", () => {
    for (const row of PUBLISHED_DENSITIES) {
      if (row.density.kind === "value") expect(density.safeParse(row.density.gramsPerMillilitre).success).toBe(true);
      else expect(Number(row.density.from)).toBeLessThan(Number(row.density.to));
    }
  });

  test("no name is in two rows", () => {
    const names = PUBLISHED_DENSITIES.flatMap((row) => row.names);
    expect(names.filter((name, at) => names.indexOf(name) !== at)).toEqual([]);
  });
});

describe("rows for what is typed", () => {
  test.each([
    ["Glycerin", ["Glycerol"]],
    ["glycerine", ["Glycerol"]],
    ["Vegetable glycerin", ["Glycerol"]],
    ["AQUA", ["Water"]],
    ["Distilled water", ["Water"]],
    ["Water (Aqua)", ["Water"]],
    ["limonene", ["d-Limonene"]],
    ["Propanediol", ["Propylene glycol", "1,3-Propanediol"]],
    ["Isopropyl", ["2-Propanol", "Isopropyl myristate"]],
    ["Organic sunflower oil", ["Sunflower oil"]],
    ["Rose water", []],
    ["Ethanol 70 %", []],
    ["High-oleic sunflower oil", []],
    ["Coconut oil, fractionated", []],
    ["Hydrogenated castor oil", []],
    ["oil", []],
    ["Seed oil", []],
    ["acid", []],
    ["", []],
    ["organic", []],
    ["<b>", []],
  ])("%j finds %j", (typed, found) => {
    expect(densitiesFor(typed).map(({ names }) => names[0])).toEqual(found);
  });
});
