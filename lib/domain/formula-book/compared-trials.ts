/** The trials of one formula beside one another. @rule TRIAL-4 */
import type { Day } from "@/lib/domain/calendar";
import { compareBesides } from "@/lib/domain/formula-comparison";
import type { Fraction } from "@/lib/domain/fraction";
import { byId } from "@/lib/domain/index-by-id";
import type { Basis } from "@/lib/domain/plan-figures";
import type { FormulaLine, Product, Workshop } from "@/lib/domain/workshop";
import { formulaOfTrial, shareIn, type Trial } from "./trials";

export interface ComparedTrial {
  readonly trial: Trial;
  /** Of what was varied; null where nothing was. */
  readonly share: Fraction | null;
  /** Of one unit of the product, exact micro-units; null where it is not known, or no product is filled with it. */
  readonly perUnit: Fraction | null;
}

/** @param varied  what is followed from trial to trial */
export const comparedTrials = (
  workshop: Workshop,
  today: Day,
  trials: readonly Trial[],
  varied: FormulaLine["of"] | null,
  product: { readonly product: Product; readonly basis: Basis } | null,
): readonly ComparedTrial[] =>
  trials.map((trial) => ({
    trial,
    share: varied && shareIn(trial, varied),
    perUnit: product && costOfTrial(workshop, today, trial, product),
  }));

/** @rule TRIAL-4, BOOK-5 */
function costOfTrial(
  workshop: Workshop,
  today: Day,
  trial: Trial,
  asked: { readonly product: Product; readonly basis: Basis },
): Fraction | null {
  const formula = byId("formula", workshop.formulas)(trial.formula);
  const tried = formulaOfTrial(formula, trial);
  const compared = tried && compareBesides(workshop, today, [formula, tried], asked);
  return compared?.kind === "compared" ? compared.second.perUnit : null;
}
