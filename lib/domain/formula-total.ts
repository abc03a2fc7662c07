/** What the lines of a formula add up to, whether or not it is one that can be made. @rule FORMULA-1, BOOK-3 */
import { withoutQs } from "./formula";
import { type PartsPerMillion, quantity, WHOLE } from "./quantity";
import type { Formula } from "./workshop";

export interface FormulaTotal {
  /** The percents that are written down, added up; lines with `qs` left out. May be over the whole. */
  readonly written: PartsPerMillion;
  readonly result: FormulaResult;
}

/** Lines are numbered from 0, as they stand. */
export type FormulaResult =
  | { readonly kind: "whole" }
  | { readonly kind: "qs takes the rest"; readonly line: number; readonly rest: PartsPerMillion }
  | { readonly kind: "no lines" }
  | { readonly kind: "short"; readonly by: PartsPerMillion }
  | { readonly kind: "over"; readonly by: PartsPerMillion }
  /** `over` is zero where the other lines are exactly the whole. */
  | { readonly kind: "nothing left for qs"; readonly line: number; readonly over: PartsPerMillion }
  | { readonly kind: "several qs"; readonly lines: readonly number[] };

/** What the lines add up to; a draft may come to anything. @rule BOOK-3 */
export function formulaTotal(formula: Pick<Formula, "lines">): FormulaTotal {
  const written = quantity<PartsPerMillion>(withoutQs(formula));
  return { written, result: resultOf(formula, quantity<PartsPerMillion>(WHOLE - written)) };
}

function resultOf({ lines }: Pick<Formula, "lines">, rest: PartsPerMillion): FormulaResult {
  const withQs = lines.flatMap(({ percent }, line) => (percent === "qs" ? [line] : []));
  const [line] = withQs;
  if (lines.length === 0) return { kind: "no lines" };
  if (withQs.length > 1) return { kind: "several qs", lines: withQs };
  const over = quantity<PartsPerMillion>(-rest);
  if (line !== undefined) {
    return rest > 0n ? { kind: "qs takes the rest", line, rest } : { kind: "nothing left for qs", line, over };
  }
  if (rest === 0n) return { kind: "whole" };
  return rest > 0n ? { kind: "short", by: rest } : { kind: "over", by: over };
}

/** Whether a formula with such a total can stand in the workshop. @rule FORMULA-1 */
export const addsUp = ({ result: { kind } }: FormulaTotal): boolean => kind === "whole" || kind === "qs takes the rest";
