/**
 * Densities of materials that many makers use, each with the publication it is from. They are offered beside the field
 * and never filled in by themselves: what is in the bottle is what its supplier's data sheet says. @rule QTY-5
 */
import { wordsOf } from "./name-matching";

/** How the figure came here: seen in a copy of the publication, or remembered and still to be seen. */
export type SourceMark = "read in a copy" | "from memory";

export interface PublishedDensity {
  /** Its name first, then others of the same thing. */
  readonly names: readonly [string, ...(readonly string[])];
  readonly celsius: number;
  /**
   * One figure in g/mL, which can be taken over; or a range within which a standard lets the material lie, as it is
   * published: relative to water at 20 °C. A range gives no single value.
   */
  readonly density:
    | { readonly kind: "value"; readonly gramsPerMillilitre: string }
    | { readonly kind: "range of relative density"; readonly from: string; readonly to: string };
  readonly source: string;
  readonly mark: SourceMark;
}

const HANDBOOK = "CRC Handbook of Chemistry and Physics, Physical Constants of Organic Compounds";
const TANAKA = "Tanaka et al., Metrologia 38 (2001) 301–309";
const CODEX = "Codex Alimentarius CXS 210-1999, Table 2";

type Names = PublishedDensity["names"];

const value = (names: Names, gramsPerMillilitre: string, source = HANDBOOK, celsius = 20): PublishedDensity => ({
  names,
  celsius,
  density: { kind: "value", gramsPerMillilitre },
  source,
  mark: "read in a copy",
});

const range = (
  names: Names,
  from: string,
  to: string,
  source: string,
  mark: SourceMark,
  celsius = 20,
): PublishedDensity => ({ names, celsius, density: { kind: "range of relative density", from, to }, source, mark });

export const PUBLISHED_DENSITIES: readonly PublishedDensity[] = [
  value(["Water", "Aqua"], "0.9982", TANAKA),
  value(["Glycerol", "Glycerin"], "1.2613"),
  value(["Propylene glycol", "1,2-Propanediol", "Propane-1,2-diol"], "1.0361"),
  value(["1,3-Propanediol", "Propane-1,3-diol"], "1.0538"),
  value(["Ethanol", "Ethyl alcohol"], "0.7893"),
  value(["2-Propanol", "Isopropanol", "Isopropyl alcohol", "Propan-2-ol"], "0.7809", HANDBOOK, 25),
  value(["Isopropyl myristate"], "0.8532"),
  value(["2-Phenoxyethanol", "Phenoxyethanol"], "1.102", HANDBOOK, 22),
  value(["d-Limonene", "Limonene"], "0.8411"),
  value(["Oleic acid"], "0.8935"),
  range(
    ["Castor oil", "Ricinus communis seed oil"],
    "0.952",
    "0.965",
    "British Pharmacopoeia 1993, castor oil",
    "read in a copy",
  ),
  range(["Lavandin oil", "Lavandin Abrial oil"], "0.885", "0.897", "ISO 3054:1987", "read in a copy"),
  range(["Sunflower oil", "Sunflower seed oil", "Helianthus annuus seed oil"], "0.918", "0.923", CODEX, "from memory"),
  range(["Coconut oil", "Cocos nucifera oil"], "0.908", "0.921", CODEX, "from memory", 40),
  range(["Grape seed oil", "Grapeseed oil", "Vitis vinifera seed oil"], "0.92", "0.926", CODEX, "from memory"),
  range(["Rapeseed oil, low in erucic acid", "Rapeseed oil", "Canola oil"], "0.914", "0.92", CODEX, "from memory"),
];

/** Words that change nothing about what a material weighs. */
const HARMLESS = new Set(
  "organic natural pure vegetable cosmetic grade usp bp ep distilled deionised deionized demineralised purified".split(
    " ",
  ),
);

const TELLS_NOTHING = new Set(["oil", "acid", "alcohol", "seed", "glycol", "water"]);

interface Row {
  readonly published: PublishedDensity;
  readonly words: readonly ReadonlySet<string>[];
}

const ROWS: readonly Row[] = PUBLISHED_DENSITIES.map((published) => ({
  published,
  words: published.names.map(wordsOf),
}));

/**
 * The rows for a name as it is typed: those of that very name, else those whose name has all the words typed. A name
 * that says more ("Ethanol 70 %", "Rose water", "High-oleic sunflower oil") is of something else, and finds nothing.
 */
export function densitiesFor(name: string): readonly PublishedDensity[] {
  const typed = [...wordsOf(name)].filter((word) => !HARMLESS.has(word));
  if (typed.length === 0) return [];
  const holding = ROWS.filter(({ words }) => words.some((known) => hasAll(known, typed)));
  const same = holding.filter(({ words }) =>
    words.some((known) => known.size === typed.length && hasAll(known, typed)),
  );
  const tellsNothing = typed.every((word) => TELLS_NOTHING.has(word));
  return (same.length > 0 || tellsNothing ? same : holding).map(({ published }) => published);
}

const hasAll = (known: ReadonlySet<string>, typed: readonly string[]): boolean =>
  typed.every((word) => known.has(word));
