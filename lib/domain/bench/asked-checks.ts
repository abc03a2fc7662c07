/** What a formula asks to be looked at before a batch of it is released, and what was found. @rule BENCH-11 */
import type { FormulaCheck, FormulaFacts } from "@/lib/domain/formula-book/facts";
import { compare } from "@/lib/domain/fraction";
import { type DecimalText, decimalValue } from "@/lib/domain/quantity";
import { type Batch, type NoteOf, standing } from "./batch";

/** What the pH is called among the checks. */
export const PH = "pH";

/** The pH that is aimed at comes first. */
export function checksAsked({ phFrom, phTo, checks }: FormulaFacts): readonly FormulaCheck[] {
  const aimed = phFrom !== null || phTo !== null;
  const ph: FormulaCheck = { what: PH, from: phFrom, to: phTo, unit: null, looks: null };
  return aimed ? [ph, ...checks.filter(({ what }) => what !== PH)] : checks;
}

/** Whether what is asked is a figure between limits, and not something to be seen. */
export const isMeasured = ({ from, to }: FormulaCheck): boolean => from !== null || to !== null;

/** Whether a figure is within its limits, both of them among what is within. */
export function isWithin({ from, to }: Pick<FormulaCheck, "from" | "to">, found: DecimalText): boolean {
  const value = decimalValue(found);
  return (
    (from === null || compare(value, decimalValue(from)) >= 0) && (to === null || compare(value, decimalValue(to)) <= 0)
  );
}

export interface CheckFound {
  readonly check: FormulaCheck;
  /** The last that was written down of it and stands. */
  readonly note: NoteOf<"checked"> | NoteOf<"acidity"> | null;
  /** A pH outside its limits that was only measured on the way is no answer yet. */
  readonly isAnswered: boolean;
}

/** Each check that is asked with what was found. */
export const checksFound = (batch: Pick<Batch, "notes">, checks: readonly FormulaCheck[]): readonly CheckFound[] =>
  checks.map((check) => {
    const note = lastOf(batch, check);
    return { check, note, isAnswered: note !== null && (note.kind === "checked" || isWithin(check, note.ph)) };
  });

/** Of the pH what was measured on the way counts as well, where that came later. */
function lastOf(batch: Pick<Batch, "notes">, { what }: FormulaCheck): CheckFound["note"] {
  const said = standing(batch, "checked").findLast((note) => note.what === what) ?? null;
  const measured = what === PH ? (standing(batch, "acidity").at(-1) ?? null) : null;
  if (said === null || measured === null) return said ?? measured;
  return batch.notes.indexOf(measured) > batch.notes.indexOf(said) ? measured : said;
}
