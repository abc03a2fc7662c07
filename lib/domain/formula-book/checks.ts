/** What would go wrong at the bench, said before anything is weighed. @rule CHECK-1 to CHECK-8 */
import type { Day } from "@/lib/domain/calendar";
import { type Composition, compositions } from "@/lib/domain/formula";
import { addsUp, formulaTotal } from "@/lib/domain/formula-total";
import { compare, ratio } from "@/lib/domain/fraction";
import { byId } from "@/lib/domain/index-by-id";
import { decimalValue, type Micrograms, WHOLE } from "@/lib/domain/quantity";
import type { Formula, Lot, Material } from "@/lib/domain/workshop";
import { isBeyondReckoning } from "./expansion";
import { type Finding, type PhRange, ranked } from "./findings";
import { heatFindings } from "./heat-checks";
import { limitFindings } from "./limit-checks";
import { lotFindings } from "./lot-checks";
import { weighUpWithPremixes } from "./weigh-up-premixes";

/** What the checks are made of. */
export interface Checked {
  readonly formulas: readonly Formula[];
  readonly materials: readonly Material[];
  readonly lots: readonly Lot[];
  readonly today: Day;
  /** Of the balance. */
  readonly step: Micrograms;
  /** The mass of the batch that is thought of, µg; null for none. */
  readonly batch: Micrograms | null;
}

/**
 * Everything that is found about one formula, errors first. The formula may be a draft that adds up to anything; what
 * it holds must be in the workshop and add up.
 * @rule CHECK-1
 */
export function checksOf(formula: Formula, checked: Checked): readonly Finding[] {
  const total = formulaTotal(formula);
  const others = checked.formulas.filter(({ id }) => id !== formula.id);
  const formulas = [...others, formula];
  const findings: Finding[] = addsUp(total) ? [] : [{ code: "does not add up", result: total.result }];
  if (isBeyondReckoning(formula)) return findings;
  const compositionOf = compositions(formulas);
  const composition = compositionOf(formula.id);
  const materialOf = byId("material", checked.materials);
  const inIt = [...composition.keys()].map(materialOf);
  findings.push(
    ...limitFindings(formula, composition, inIt),
    ...heatFindings(formula, compositionOf, { formulaOf: byId("formula", formulas), materialOf }),
    ...useFindings(composition, inIt),
    ...phFindings(formula, inIt),
    ...waterFindings(inIt),
  );
  if (addsUp(total) && checked.batch !== null)
    findings.push(...balanceFindings(formula, formulas, checked.batch, checked.step));
  findings.push(...lotFindings(formula, inIt, checked), ...cautions(inIt));
  return ranked(findings);
}

/** @rule CHECK-4 */
function useFindings(composition: Composition, inIt: readonly Material[]): readonly Finding[] {
  return inIt.flatMap((material): readonly Finding[] => {
    const amount = composition.get(material.id);
    if (amount === undefined) return [];
    const { useMin, useMax } = material;
    if (useMax !== null && compare(amount, ratio(useMax, WHOLE)) > 0) {
      return [{ code: "outside its use range", material, amount, side: "above", bound: useMax }];
    }
    if (useMin !== null && compare(amount, ratio(useMin, WHOLE)) < 0) {
      return [{ code: "outside its use range", material, amount, side: "below", bound: useMin }];
    }
    return [];
  });
}

/** The pH that a formula aims at; one that says one side alone aims at a point. */
export function targetPh({ phFrom, phTo }: Pick<Formula, "phFrom" | "phTo">): PhRange | null {
  const from = phFrom ?? phTo;
  const to = phTo ?? phFrom;
  return from === null || to === null ? null : { from, to };
}

/** @rule CHECK-5 */
function phFindings(formula: Formula, inIt: readonly Material[]): readonly Finding[] {
  const target = targetPh(formula);
  return inIt
    .filter(({ phFrom, phTo }) => phFrom !== null || phTo !== null)
    .flatMap((material): readonly Finding[] => {
      if (target === null) return [{ code: "no target pH", material }];
      return isOutsideWindow(target, material) ? [{ code: "pH outside its window", material, target }] : [];
    });
}

/** Whether any part of what is aimed at lies outside the material's window. */
export function isOutsideWindow(target: PhRange, { phFrom, phTo }: Material): boolean {
  const isBelow = phFrom !== null && compare(decimalValue(target.from), decimalValue(phFrom)) < 0;
  return isBelow || (phTo !== null && compare(decimalValue(target.to), decimalValue(phTo)) > 0);
}

/** @rule CHECK-6 */
function waterFindings(inIt: readonly Material[]): readonly Finding[] {
  const water = inIt.filter(({ role }) => role === "water");
  const isPreserved = inIt.some(({ role }) => role === "preservative");
  if (water.length > 0 && !isPreserved) return [{ code: "water and no preservative", water }];
  const unmarked = inIt.filter(({ role }) => role === null);
  if (water.length > 0 || unmarked.length === 0) return [];
  return [{ code: "nothing marked as water or preservative", unmarked }];
}

/** @rule WEIGH-3 */
const balanceFindings = (
  formula: Formula,
  formulas: readonly Formula[],
  batch: Micrograms,
  step: Micrograms,
): readonly Finding[] =>
  weighUpWithPremixes(formulas, formula.id, { over: batch, under: 1n }, step).flatMap((sheet) =>
    sheet.targets
      .filter(({ tooCoarse }) => tooCoarse)
      .map(({ line, target }): Finding => ({ code: "balance too coarse", formula: sheet.formula, line, target, step })),
  );

const cautions = (inIt: readonly Material[]): readonly Finding[] =>
  inIt.flatMap((material) => [
    ...(material.flammable ? [{ code: "caution", material, of: "flammable" } as const] : []),
    ...(material.allergen ? [{ code: "caution", material, of: "allergen" } as const] : []),
    ...(material.eyeHazard ? [{ code: "caution", material, of: "eye hazard" } as const] : []),
  ]);
