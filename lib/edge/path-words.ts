/** The ways down to a material of a formula, in words. @rule FORMULA-3 */
import type { FormulaPath } from "@/lib/domain/formula-paths";
import { type Fraction, times, whole } from "@/lib/domain/fraction";
import { percentShown } from "./figures";

/** A share as a percent. */
export const fractionShown = (fraction: Fraction): string => percentShown(times(fraction, whole(1_000_000n)));

/** One way down to a material: the percents, multiplied, with the formulas that they stand in. */
export function pathWords({ steps, fraction }: FormulaPath): string {
  const percents = steps.map(
    ({ percent, takesTheRest }) => percentShown(percent) + (takesTheRest ? " (the rest)" : ""),
  );
  const where = steps.map(({ formula }, at) => (at === 0 ? formula.name : `in it ${formula.name}`)).join(", ");
  const product = steps.length > 1 ? ` = ${fractionShown(fraction)}` : "";
  const last = steps.at(-1);
  const phase = steps.length === 1 && last?.phase ? `, phase ${last.phase}` : "";
  return `${where}${phase}: ${percents.join(" × ")}${product}.`;
}

/** The ways that say more than the share itself does, and whether there are more. */
export function pathsTold({ paths, more }: { readonly paths: readonly FormulaPath[]; readonly more: boolean }) {
  const told = paths.length > 1 || paths.some(({ steps }) => steps.length > 1 || steps[0]?.takesTheRest);
  return [...(told ? paths.map(pathWords) : []), ...(more ? ["And in more ways."] : [])];
}
