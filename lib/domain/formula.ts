/** What a formula is made of, premixes opened. @rule FORMULA-1 to FORMULA-3 */
import type { Fraction } from "./fraction";
import { byId } from "./index-by-id";
import { type PartsPerMillion, quantity, WHOLE } from "./quantity";
import type { Formula, FormulaLine } from "./workshop";

/** Each material's fraction of the finished mass, by material id. The fractions add up to one. */
export type Composition = ReadonlyMap<string, Fraction>;

/** The percent of a line, `qs` worked out from the others. @rule FORMULA-1 */
export function percentOf(line: FormulaLine, formula: Pick<Formula, "lines">): PartsPerMillion {
  if (line.percent !== "qs") return line.percent;
  return quantity<PartsPerMillion>(WHOLE - withoutQs(formula));
}

/** What the lines without `qs` add up to, ppm. */
export const withoutQs = (formula: Pick<Formula, "lines">): bigint =>
  formula.lines.reduce((sum, { percent }) => (percent === "qs" ? sum : sum + percent), 0n);

/**
 * Opens every formula down to its materials; each formula is opened once, however many others use it.
 * @returns by formula id, the exact fraction of each material: over every path the product of the percents, summed
 * @rule FORMULA-3
 */
export function compositions(formulas: readonly Formula[]): (formulaId: string) => Composition {
  const formulaOf = byId("formula", formulas);
  const opened = new Map<string, Opened>();

  function open(id: string): Opened {
    const known = opened.get(id);
    if (known) return known;
    const formula = formulaOf(id);
    const inLines = formula.lines.map((line) => ({
      ppm: percentOf(line, formula),
      parts: line.of.kind === "formula" ? open(line.of.id) : { over: new Map([[line.of.id, 1n]]), under: 1n },
    }));
    // Denominators are powers of a million, so the largest is common to all: no sum lengthens the numbers.
    const below = inLines.reduce((largest, { parts }) => (parts.under > largest ? parts.under : largest), 1n);
    const over = new Map<string, bigint>();
    for (const { ppm, parts } of inLines) {
      const scale = ppm * (below / parts.under);
      for (const [material, part] of parts.over) over.set(material, (over.get(material) ?? 0n) + part * scale);
    }
    const result = { over, under: below * WHOLE };
    opened.set(id, result);
    return result;
  }
  const asked = new Map<string, Composition>();
  return (id) => {
    const known = asked.get(id);
    if (known) return known;
    const { over, under } = open(id);
    const composition = new Map([...over].map(([material, part]) => [material, { over: part, under }]));
    asked.set(id, composition);
    return composition;
  };
}

/** A formula opened down to materials, all parts over one power of a million. */
interface Opened {
  readonly over: ReadonlyMap<string, bigint>;
  readonly under: bigint;
}
