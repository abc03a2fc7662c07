/** Everything that a formula holds, premixes opened, also of one that does not add up yet. @rule FORMULA-3, FORMULA-4 */
import { byCodePoint } from "@/lib/domain/code-point-order";
import { compositions } from "@/lib/domain/formula";
import { formulaTotal } from "@/lib/domain/formula-total";
import { compare, type Fraction } from "@/lib/domain/fraction";
import type { Formula } from "@/lib/domain/workshop";

export interface Expanded {
  readonly material: string;
  /** Of the finished mass, where it adds up. */
  readonly fraction: Fraction;
}

/**
 * @param formulas  those of the workshop; one with the id of the formula is taken for an earlier state of it
 * @returns the largest first; nothing where shares cannot be reckoned with
 */
export function expansionOf(formula: Formula, formulas: readonly Formula[]): readonly Expanded[] {
  if (isBeyondReckoning(formula)) return [];
  const others = formulas.filter(({ id }) => id !== formula.id);
  return [...compositions([...others, formula])(formula.id)]
    .map(([material, fraction]) => ({ material, fraction }))
    .toSorted((a, b) => compare(b.fraction, a.fraction) || byCodePoint(a.material, b.material));
}

/** It is not known what `qs` takes, or it would take nothing, or less. */
export function isBeyondReckoning(formula: Pick<Formula, "lines">): boolean {
  const { kind } = formulaTotal(formula).result;
  return kind === "no lines" || kind === "nothing left for qs" || kind === "several qs";
}
