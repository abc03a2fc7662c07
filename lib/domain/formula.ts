/** What a formula is made of, premixes opened. @rule FORMULA-1 to FORMULA-3 */
import { type Fraction, ONE, plus, times } from "./fraction";
import { byId } from "./index-by-id";
import { type PartsPerMillion, quantity, shareOf, WHOLE } from "./quantity";
import type { Formula, FormulaLine } from "./workshop";

/** Each material's fraction of the finished mass, by material id. The fractions add up to one. */
export type Composition = ReadonlyMap<string, Fraction>;

/** The percent of a line, `qs` worked out from the others. @rule FORMULA-1 */
export function percentOf(line: FormulaLine, formula: Formula): PartsPerMillion {
  if (line.percent !== "qs") return line.percent;
  return quantity<PartsPerMillion>(WHOLE - withoutQs(formula));
}

/** What the lines without `qs` add up to, ppm. */
export const withoutQs = (formula: Formula): bigint =>
  formula.lines.reduce((sum, { percent }) => (percent === "qs" ? sum : sum + percent), 0n);

/**
 * Opens every formula down to its materials; each formula is opened once, however many others use it.
 * @returns by formula id, the exact fraction of each material: over every path the product of the percents, summed
 * @rule FORMULA-3
 */
export function compositions(formulas: readonly Formula[]): (formulaId: string) => Composition {
  const formulaOf = byId("formula", formulas);
  const opened = new Map<string, Composition>();

  function open(id: string): Composition {
    const known = opened.get(id);
    if (known) return known;
    const fractions = new Map<string, Fraction>();
    const formula = formulaOf(id);
    for (const line of formula.lines) {
      const share = shareOf(percentOf(line, formula));
      const inLine: Composition = line.of.kind === "formula" ? open(line.of.id) : new Map([[line.of.id, ONE]]);
      for (const [material, fraction] of inLine) {
        const part = times(share, fraction);
        const already = fractions.get(material);
        fractions.set(material, already ? plus(already, part) : part);
      }
    }
    opened.set(id, fractions);
    return fractions;
  }
  return open;
}
