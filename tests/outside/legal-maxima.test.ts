/**
 * Regulation (EC) 1223/2009, Annex V, read in a public copy of 13 May 2024 (the line of benzoic acid also at the
 * archive of United Kingdom law). Molar masses 122.123 and 144.105 g/mol by IUPAC's weights, from memory. The shares of
 * the blend are constructed.
 */
import { describe, expect, test } from "vitest";
import { checksOf } from "@/lib/domain/formula-book/checks";
import type { MaterialFacts, WayOfUse } from "@/lib/domain/formula-book/facts";
import { asAcid, molarMass } from "@/lib/domain/formula-book/molar-mass";
import { PUBLISHED_LIMITS } from "@/lib/domain/formula-book/published-limits";
import type { Fraction } from "@/lib/domain/fraction";
import { formula, g, day, material, percent } from "@/tests/helpers/notation";

const number = ({ over, under }: Fraction): number => Number(over) / Number(under);

test.each([
  ["34", "benzyl alcohol", null, "1"],
  ["4", "sorbic acid and its salts, as acid", null, "0.6"],
  ["13", "dehydroacetic acid and its salts, as acid", null, "0.6"],
  ["1", "benzoic acid and its sodium salt, as acid", "leave-on", "0.5"],
  ["2", "propionic acid and its salts, as acid", null, "2"],
  ["14", "formic acid and its sodium salt, as acid", null, "0.5"],
  ["18", "undecylenic acid and its salts, as acid", null, "0.2"],
  ["38", "o-cymen-5-ol", null, "0.1"],
  ["57", "methylisothiazolinone", "rinse-off", "0.0015"],
  ["12", "methylparaben, as acid", null, "0.4"],
  ["12", "ethylparaben, as acid", null, "0.4"],
  ["12a", "propylparaben and butylparaben together, as acid", null, "0.14"],
])("[CHECK-2] Annex V entry %s: %s, %s, at most %s %%", (entry, substance, use, most) => {
  const found = PUBLISHED_LIMITS.filter((limit) => limit.substance === substance);
  expect(found.map((limit) => [limit.market, limit.use, limit.maximum])).toEqual([["EU", use, percent(most)]]);
  expect(found[0]?.source).toBe(`Regulation (EC) 1223/2009, Annex V, entry ${entry}`);
});

test("[CHECK-2] every row that ships is one of those above", () => {
  expect(PUBLISHED_LIMITS).toHaveLength(12);
});

test("[CHECK-3] 0.5 % of sodium benzoate is 0.4237 % of benzoic acid", () => {
  expect([molarMass("C7H6O2"), molarMass("C7H5NaO2")]).toEqual([122_123n, 144_105n]);
  expect(0.5 * number(asAcid("C7H6O2", "C7H5NaO2"))).toBeCloseTo(0.4237292252177232, 12);
  expect(0.5 / number(asAcid("C7H6O2", "C7H5NaO2"))).toBeCloseTo(0.589999426807399, 12);
});

interface Mix {
  readonly says: string;
  readonly use: WayOfUse | null;
  readonly percent: string;
  readonly facts: Partial<MaterialFacts>;
  readonly finds: readonly string[];
}

const of = (...parts: readonly (readonly [string, string])[]): Partial<MaterialFacts> => ({
  composition: parts.map(([inci, share]) => ({ inci, share: percent(share) })),
});
const BLEND = of(["Benzyl Alcohol", "84"], ["Dehydroacetic Acid", "8"], ["Aqua", "8"]);

describe("against the copy", () => {
  test.each<Mix>([
    {
      says: "0.5 % sodium benzoate",
      use: "leave-on",
      percent: "0.5",
      facts: of(["Sodium Benzoate", "100"]),
      finds: [],
    },
    { says: "0.5899 % of it", use: "leave-on", percent: "0.5899", facts: of(["Sodium Benzoate", "100"]), finds: [] },
    {
      says: "0.5901 % of it",
      use: "leave-on",
      percent: "0.5901",
      facts: of(["SODIUM BENZOATE", "100"]),
      finds: ["over a legal maximum: benzoic acid and its sodium salt, as acid 0.5001 %"],
    },
    {
      says: "0.5 % of the acid, exactly at it",
      use: "leave-on",
      percent: "0.5",
      facts: of(["Benzoic Acid", "100"]),
      finds: [],
    },
    {
      says: "benzoic acid, use not said: held against the strictest",
      use: null,
      percent: "0.6",
      facts: of(["Benzoic Acid", "100"]),
      finds: ["over a legal maximum: benzoic acid and its sodium salt, as acid 0.6000 %"],
    },
    {
      says: "benzoic acid to rinse off, for which no row is held",
      use: "rinse-off",
      percent: "0.6",
      facts: of(["Benzoic Acid", "100"]),
      finds: ["no limit held for this use: benzoic acid and its sodium salt, as acid"],
    },
    {
      says: "a blend at 1.2 %: benzyl alcohol 1.008 %, dehydroacetic acid 0.096 %",
      use: "leave-on",
      percent: "1.2",
      facts: BLEND,
      finds: ["over a legal maximum: benzyl alcohol 1.0080 %"],
    },
    { says: "the blend at 1.19 %", use: "leave-on", percent: "1.19", facts: BLEND, finds: [] },
    {
      says: "16 ppm of methylisothiazolinone to rinse off",
      use: "rinse-off",
      percent: "0.0016",
      facts: of(["Methylisothiazolinone", "100"]),
      finds: ["over a legal maximum: methylisothiazolinone 0.0016 %"],
    },
    {
      says: "methylisothiazolinone left on, which the copy has for rinsing off alone",
      use: "leave-on",
      percent: "0.0015",
      facts: of(["Methylisothiazolinone", "100"]),
      finds: ["no limit held for this use: methylisothiazolinone"],
    },
  ])("[CHECK-2, CHECK-3] $says", ({ use, percent: share, facts, finds }) => {
    const checked = {
      formulas: [],
      materials: [material("p", { role: "preservative", ...facts }), material("w", { role: "water" })],
      lots: [],
      today: day("2026-11-25"),
      step: g("0.1"),
      batch: null,
    };
    const found = checksOf({ ...formula("f", { w: "qs", p: share }), market: "EU", use }, checked);
    expect(
      found.map((finding) => {
        if (finding.code === "over a legal maximum")
          return `${finding.code}: ${finding.substance} ${(100 * number(finding.amount)).toFixed(4)} %`;
        return finding.code === "no limit held for this use" ? `${finding.code}: ${finding.substance}` : finding.code;
      }),
    ).toEqual(finds);
  });
});
