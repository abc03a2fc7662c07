import { test as propertyTest } from "@fast-check/vitest";
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import type { NameMatch } from "@/lib/edge/forms/name-matching";
import {
  type Known,
  MOST_LINES,
  type PastedLine,
  readPastedFormula,
  weightsAsPercents,
} from "@/lib/edge/pasted-formula";
import { formula, material } from "../helpers/notation";
import { processorMs } from "../helpers/processor-time";

const MATERIALS = [
  "Water",
  "Glycerin",
  "Cetyl alcohol",
  "Cetearyl alcohol",
  "Castor oil",
  "Coconut oil",
  "Coconut oil, fractionated",
  "Shea butter",
  "Olive oil",
  "Beeswax",
  "Polysorbate 20",
  "Polysorbate 80",
  "Ceteareth-20",
  "1,3-Propanediol",
  "Vitamin E",
  "Crème fraîche extract",
  "Oat extract",
  "Wheat extract",
  "Panthenol",
];
const workshop = {
  materials: [
    ...MATERIALS.map((name) => material(name, { name })),
    material("twin-1", { name: "Lavender hydrolat" }),
    material("twin-2", { name: "Hydrolat, lavender" }),
    material("jar", { name: "Jar", measure: "count" }),
  ],
  formulas: [formula("Emulsifier premix", { "Cetyl alcohol": "100" }), formula("Panthenol", { Water: "100" })].map(
    (premix) => ({ ...premix, name: premix.id }),
  ),
};

const matched = (match: NameMatch<Known>): string => {
  switch (match.kind) {
    case "exact":
      return `= ${match.match.id}`;
    case "likely":
      return `~ ${match.match.id}`;
    case "several":
      return `? ${match.candidates.map(({ id }) => id).join(" | ")}`;
    case "none":
      return "none";
  }
};
/** `A: Glycerin, 5, = Glycerin`, and what is asked. */
const inShort = ({ phase, name, percent, weight, match, asks }: PastedLine): string => {
  const figure = percent ?? (weight === null ? "-" : `${weight} µg`);
  return `${phase === null ? "" : `${phase}: `}${name}, ${figure}, ${matched(match)}${asks === null ? "" : ` [${asks}]`}`;
};
const read = (text: string) => readPastedFormula(text, workshop);
const shown = (text: string): readonly string[] => read(text).lines.map(inShort);

describe("[FORMULA-1] one line, with its figure", () => {
  test.each([
    ["Glycerin 5 %", "Glycerin, 5, = Glycerin"],
    ["Glycerin 5%", "Glycerin, 5, = Glycerin"],
    ["Glycerin: 5 %", "Glycerin, 5, = Glycerin"],
    ["Glycerin = 5 %", "Glycerin, 5, = Glycerin"],
    ["Glycerin, 5 %", "Glycerin, 5, = Glycerin"],
    ["Glycerin (5 %)", "Glycerin, 5, = Glycerin"],
    ["Glycerin 5", "Glycerin, 5, = Glycerin"],
    ["Glycerin\t5", "Glycerin, 5, = Glycerin"],
    ["Glycerin 5 percent", "Glycerin, 5, = Glycerin"],
    ["Glycerin 5 % w/w", "Glycerin, 5, = Glycerin"],
    ["5% Glycerin", "Glycerin, 5, = Glycerin"],
    ["5 % of glycerin", "glycerin, 5, = Glycerin"],
    ["5 Glycerin", "Glycerin, 5, = Glycerin"],
    ["Cetyl alcohol – 2,5", "Cetyl alcohol, 2.5, = Cetyl alcohol"],
    ["Cetyl alcohol - 2.5 %", "Cetyl alcohol, 2.5, = Cetyl alcohol"],
    ["Cetyl alcohol ..... 2.5 %", "Cetyl alcohol, 2.5, = Cetyl alcohol"],
    ["• Beeswax 10 %", "Beeswax, 10, = Beeswax"],
    ["- Beeswax 10 %", "Beeswax, 10, = Beeswax"],
    ["* **Beeswax** 10 %", "Beeswax, 10, = Beeswax"],
    ["3. Beeswax 10 %", "Beeswax, 10, = Beeswax"],
    ["3) Beeswax 10 %", "Beeswax, 10, = Beeswax"],
    ["| Beeswax | 10 % |", "Beeswax, 10, = Beeswax"],
    ["Beeswax;10", "Beeswax, 10, = Beeswax"],
    ["Water q.s.", "Water, qs, = Water"],
    ["Water ... qs", "Water, qs, = Water"],
    ["Shea butter . . . . 12.5 %", "Shea butter, 12.5, = Shea butter"],
    ["Beeswax ……… 8", "Beeswax, 8, = Beeswax"],
    ["Water\tq.s. to 100", "Water, qs, = Water"],
    ["Water qs to 100 %", "Water, qs, = Water"],
    ["Water ad 100", "Water, qs, = Water"],
    ["Water to 100 %", "Water, qs, = Water"],
    ["Aqua q.s. ad 100 %", "Aqua, qs, = Water"],
    ["q.s. to 100 % Water", "Water, qs, = Water"],
    ["A\tWater\t50.0\t500 g", "A: Water, 50.0, = Water"],
    ["Phase B\tGlycerin\t5 %", "B: Glycerin, 5, = Glycerin"],
    ["Polysorbate 20", "Polysorbate 20, -, = Polysorbate 20 [no percent here; write one, or qs for what is left]"],
    ["Polysorbate 20 3", "Polysorbate 20, 3, = Polysorbate 20"],
    ["Polysorbate 20 3 %", "Polysorbate 20, 3, = Polysorbate 20"],
    ["Polysorbate 60", "Polysorbate 60, -, none [no percent here; write one, or qs for what is left]"],
    ["Ceteareth-20 1,5 %", "Ceteareth-20, 1.5, = Ceteareth-20"],
    ["1,3-Propanediol 4 %", "1,3-Propanediol, 4, = 1,3-Propanediol"],
    ["4 % 1,3-propanediol", "1,3-propanediol, 4, = 1,3-Propanediol"],
    ["Glycerin 2-3 %", 'Glycerin, -, = Glycerin ["2-3 %" is a range; write one percent]'],
    ["Glycerin 1,500 %", 'Glycerin, -, = Glycerin ["1,500" can be read two ways; write 1500 or 1.5]'],
    ["Glycerin", "Glycerin, -, = Glycerin [no percent here; write one, or qs for what is left]"],
    ["Glycerin 20 mL", "Glycerin, -, = Glycerin [20 mL is no weight; write a percent by weight]"],
  ])("%j is %s", (text, is) => {
    expect(shown(text)).toEqual([is]);
  });
});

describe("a name is matched, and what is unsure is asked", () => {
  test.each([
    ["GLYCERINE", "= Glycerin"],
    ["Glycerol", "= Glycerin"],
    ["Alcohol, cetyl", "= Cetyl alcohol"],
    ["Creme fraiche extract", "= Crème fraîche extract"],
    ["Oil, Castor", "= Castor oil"],
    ["Castor oils", "= Castor oil"],
    ["Water (Aqua)", "= Water"],
    ["Butyrospermum parkii (shea) butter", "~ Shea butter"],
    ["Extra virgin olive oil", "~ Olive oil"],
    ["Bees wax", "none"],
    ["Beeswaxx", "~ Beeswax"],
    ["Glicerin", "~ Glycerin"],
    ["Cetyl alchohol", "~ Cetyl alcohol"],
    ["Coconut oil", "= Coconut oil"],
    ["Coconut oil, refined", "? Coconut oil | Coconut oil, fractionated"],
    ["Coconut", "? Coconut oil | Coconut oil, fractionated"],
    ["Polysorbate", "? Polysorbate 20 | Polysorbate 80"],
    ["Lavender hydrolat", "? twin-1 | twin-2"],
    ["Panthenol", "? Panthenol | Panthenol"],
    ["Emulsifier premix", "= Emulsifier premix"],
    ["Oil", "none"],
    ["Extract", "none"],
    ["Jar", "none"],
    ["Xanthan gum", "none"],
    ["__proto__", "none"],
    ["???", "none"],
  ])("%s: %s", (name, is) => {
    expect(read(`${name} 5 %`).lines.map(({ match }) => matched(match))).toEqual([is]);
  });
});

describe("phases and what is no line", () => {
  test.each([
    ["PHASE A", "A"],
    ["Phase b:", "B"],
    ["Phase A (heated)", "A"],
    ["Phase A - heat to 75 °C", "A"],
    ["Phase C 30 %", "C"],
    ["[C]", "C"],
    ["B:", "B"],
    ["## Phase 2", "2"],
    ["Oil phase", "Oil phase"],
    ["Water phase: 70 %", "Water phase"],
  ])("%j begins phase %s", (heading, phase) => {
    expect(shown(`${heading}\nGlycerin 5 %`)).toEqual([`${phase}: Glycerin, 5, = Glycerin`]);
  });

  test.each([
    "",
    "   ",
    "Total 100 %",
    "TOTAL:\t100.00",
    "Ingredient\t% w/w",
    "Phase\tIngredient\tPercent",
    "INCI name",
  ])("%j is no line", (text) => {
    expect(shown(`${text}\nGlycerin 5 %`)).toEqual(["Glycerin, 5, = Glycerin"]);
  });

  test("a line on the line of its phase", () => {
    expect(shown("Phase A: Water 60 %\nGlycerin 40 %")).toEqual([
      "A: Water, 60, = Water",
      "A: Glycerin, 40, = Glycerin",
    ]);
  });

  test("a whole formula from a note", () => {
    const note =
      "PHASE A\r\nWater\tq.s. to 100\r\n• Glycerine 5%\r\n\r\nPHASE B\r\nCetyl alcohol – 2,5\r\nShea butter: 10 %";
    expect(shown(note)).toEqual([
      "A: Water, qs, = Water",
      "A: Glycerine, 5, = Glycerin",
      "B: Cetyl alcohol, 2.5, = Cetyl alcohol",
      "B: Shea butter, 10, = Shea butter",
    ]);
  });
});

describe("grams are asked about, and turned into percents only then", () => {
  test("weights with their unit", () => {
    const { lines, looksLikeGrams, says } = read("Water 300 g\nGlycerin 0.1 kg\nBeeswax 1 oz");
    expect(lines.map(({ percent, weight }) => [percent, weight])).toEqual([
      [null, "300000000"],
      [null, "100000000"],
      [null, "28349523"],
    ]);
    expect([looksLikeGrams, ...says]).toEqual([true, "These look like grams: turn them into percents?"]);
  });

  test("bare numbers that come to well over a hundred", () => {
    expect(read("Water 300\nGlycerin 100").looksLikeGrams).toBe(true);
    expect(read("Water 60\nGlycerin 40.5").looksLikeGrams).toBe(false);
    expect(read("Water 300 %\nGlycerin 100 %").looksLikeGrams).toBe(false);
  });

  test("a weight among percents is asked", () => {
    expect(shown("Water 60 %\nGlycerin 40 g")).toEqual([
      "Water, 60, = Water",
      "Glycerin, 40000000 µg, = Glycerin [40 g is a weight; write it as a percent]",
    ]);
  });

  test.each([
    ["Water 300 g\nGlycerin 100 g", ["75", "25"]],
    ["Water 1 g\nGlycerin 1 g\nBeeswax 1 g", ["33.3334", "33.3333", "33.3333"]],
    ["Water 200\nGlycerin 100", ["66.6667", "33.3333"]],
  ])("%j", (text, percents) => {
    const turned = weightsAsPercents(read(text).lines);
    expect(turned.kind === "percents" && turned.lines.map(({ percent }) => percent)).toEqual(percents);
  });

  test.each([
    ["Water 300 g\nGlycerin", '"Glycerin" has no weight; write its weight, or write percents'],
    [
      "Water qs\nGlycerin 100 g",
      '"Water" takes what is left, and of how much is not said; write its weight, or write percents',
    ],
    ["Water 1000 kg\nGlycerin 1 mg", '"Glycerin" comes to less than 0.0001 %; take it out or write percents'],
    ["Water 0 g", "there is no weight to take percents of"],
  ])("%j is refused", (text, why) => {
    expect(weightsAsPercents(read(text).lines)).toEqual({ kind: "refused", why });
  });

  propertyTest.prop([fc.array(fc.integer({ min: 1, max: 9_999 }), { minLength: 1, maxLength: 60 })])(
    "percents of weights come to exactly 100",
    (grams) => {
      const turned = weightsAsPercents(read(grams.map((one) => `Glycerin ${String(one)} g`).join("\n")).lines);
      if (turned.kind === "refused") throw new Error(turned.why);
      const parts = turned.lines.map(({ percent }) => {
        const [wholePart = "", decimals = ""] = (percent ?? "").split(".");
        return BigInt(wholePart + decimals.padEnd(4, "0"));
      });
      expect(parts.reduce((sum, part) => sum + part, 0n)).toBe(1_000_000n);
    },
  );
});

describe("whatever is pasted", () => {
  test("ten thousand lines: the first are read, and the sentence says how many were left out", () => {
    const taken = processorMs(() => {
      const { lines, says } = read("Glicerine alcohl 5 %\n".repeat(10_000));
      expect(lines).toHaveLength(MOST_LINES);
      expect(says).toEqual(["The first 500 lines were read; 9500 more were left out."]);
    });
    expect(taken).toBeLessThan(1_000);
  });

  test("one line of three million characters", () => {
    const long = ["a ".repeat(1_500_000), "1 ".repeat(1_500_000), "(".repeat(3_000_000), "-".repeat(3_000_000)];
    const taken = processorMs(() => {
      for (const text of long) {
        expect(read(text).says).toContain("Only the first 2000000 characters were looked at; 1000000 were left out.");
      }
    });
    expect(taken).toBeLessThan(2_000);
  });

  propertyTest.prop([fc.string({ unit: "grapheme", maxLength: 400 })], { numRuns: 500 })(
    "it is read without failing",
    (text) => {
      for (const line of read(text).lines) expect(line.name).not.toBe("");
    },
  );
});
