/**
 * Regulation (EU) 2023/1545 (OJ L 188, 27.7.2023, p. 1), its recital and annex read in a third party's transcription on
 * 28 November 2026. GS1's worked check digits: gs1.org (629104150021), GS1 India (890400021003) and GS1 Sweden
 * (730001100001), read as web pages. Factors of NIST SP 811, Appendix B.8.
 */
import { describe, expect, test } from "vitest";
import { allergenNamed, FRAGRANCE_ALLERGENS } from "@/lib/domain/label/fragrance-allergens";
import { checkDigit, isGtin } from "@/lib/domain/label/gs1";
import { NAMED_ABOVE } from "@/lib/domain/label/ingredient-list";

describe("Annex III", () => {
  test("[LABEL-3] 0.001 % of what stays on, 0.01 % of what is rinsed off", () => {
    expect(Number(NAMED_ABOVE["leave-on"].over) / Number(NAMED_ABOVE["leave-on"].under)).toBe(0.001 / 100);
    expect(Number(NAMED_ABOVE["rinse-off"].over) / Number(NAMED_ABOVE["rinse-off"].under)).toBe(0.01 / 100);
  });

  test("[LABEL-3] sixteen entries that were substituted, 45 that were added, 19 that stood before", () => {
    const entries = FRAGRANCE_ALLERGENS.map(({ entry }) => entry);
    const substituted = [45, 70, 73, 86, 88, 109, 114, 122, 124, 131, 133, 154, 157, 175, 196, 324];
    const added = Array.from({ length: 45 }, (_, at) => 327 + at);
    const before = [67, 69, 71, 72, 74, 75, 76, 77, 78, 80, 81, 82, 84, 85, 87, 89, 90, 91, 92];
    expect(entries).toEqual([...substituted, ...added, ...before].sort((a, b) => a - b));
  });

  test.each([
    ["Linalool", 84],
    ["LIMONENE", 88],
    ["Geranial", 70],
    ["Citrus Sinensis Peel Oil", 351],
    ["Rosa Canina Flower Oil", 366],
    ["Methyl Salicylate", 324],
    ["alpha-Pinene", 371],
    // Deleted: prohibited since, or moved to another entry.
    ["Butylphenyl Methylpropional", null],
    ["Hydroxyisohexyl 3-Cyclohexene Carboxaldehyde", null],
    ["Aqua", null],
  ] as const)("[LABEL-3] %s is entry %s", (inci, entry) => {
    expect(allergenNamed(inci)?.entry ?? null).toBe(entry);
  });

  test("[LABEL-3] no name stands in two entries", () => {
    const names = FRAGRANCE_ALLERGENS.flatMap(({ names }) => names);
    expect(names.filter((name, at) => names.indexOf(name) !== at)).toEqual([]);
  });
});

test.each([
  ["629104150021", 3],
  ["890400021003", 7],
  ["730001100001", 7],
])("[LABEL-7] the check digit of %s is %d", (number, digit) => {
  expect(checkDigit(number)).toBe(digit);
  expect(isGtin(`${number}${String(digit)}`)).toBe(true);
});
