/** The ways in which a material comes into a formula: straight, or through premixes. @rule FORMULA-3 */
import { type Composition, percentOf } from "./formula";
import { type Fraction, ONE, times } from "./fraction";
import { byId } from "./index-by-id";
import { type PartsPerMillion, shareOf } from "./quantity";
import type { Formula } from "./workshop";

/** One way down from a formula to a material. Its shares, multiplied, are its part of the material's fraction. */
export interface FormulaPath {
  readonly steps: readonly FormulaStep[];
  readonly fraction: Fraction;
}

export interface FormulaStep {
  /** The formula in which the line stands. */
  readonly formula: Formula;
  readonly percent: PartsPerMillion;
  /** Whether the percent was worked out, as what is left to 100 %. */
  readonly takesTheRest: boolean;
  readonly phase: string | null;
}

/** The paths from a formula to a material, and whether there are more than were asked for. */
export interface FormulaPaths {
  readonly paths: readonly FormulaPath[];
  readonly more: boolean;
}

/**
 * Follows the lines of a formula down to one material, in the order in which they stand.
 * @param compositionOf  what each formula holds, so that only those that hold the material are entered
 * @param most           paths to give at most: eight premixes deep there can be very many
 */
export function formulaPaths(
  formulas: readonly Formula[],
  formulaId: string,
  materialId: string,
  compositionOf: (formulaId: string) => Composition,
  most: number,
): FormulaPaths {
  const formulaOf = byId("formula", formulas);
  const paths: FormulaPath[] = [];

  function follow(formula: Formula, above: readonly FormulaStep[], fraction: Fraction): void {
    for (const line of formula.lines) {
      if (paths.length > most) return;
      const { kind, id } = line.of;
      if (kind === "material" ? id !== materialId : !compositionOf(id).has(materialId)) continue;
      const percent = percentOf(line, formula);
      const steps = [...above, { formula, percent, takesTheRest: line.percent === "qs", phase: line.phase }];
      const reached = times(fraction, shareOf(percent));
      if (kind === "material") paths.push({ steps, fraction: reached });
      else follow(formulaOf(id), steps, reached);
    }
  }
  follow(formulaOf(formulaId), [], ONE);
  return { paths: paths.slice(0, most), more: paths.length > most };
}

/** The materials of a formula in the order in which its lines name them, premixes opened where they stand. */
export function inFormulaOrder(
  formulas: readonly Formula[],
  formulaId: string,
  compositionOf: (formulaId: string) => Composition,
): readonly string[] {
  const formulaOf = byId("formula", formulas);
  const entered = new Set<string>();
  const found = new Set<string>();

  function follow(id: string): void {
    if (entered.has(id)) return;
    entered.add(id);
    for (const { of } of formulaOf(id).lines) {
      if (of.kind === "formula") follow(of.id);
      else found.add(of.id);
    }
  }
  follow(formulaId);
  return [...found].filter((id) => compositionOf(formulaId).has(id));
}
