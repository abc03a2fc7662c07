/** The next version of a formula, put into its place through the checks of the file. @rule VERSION-2, TRIAL-5 */
import type { Day } from "@/lib/domain/calendar";
import type { Books } from "@/lib/domain/desk";
import { swapped } from "@/lib/domain/formula-book/swap";
import { formulaOfTrial } from "@/lib/domain/formula-book/trials";
import type { Formula, Workshop } from "@/lib/domain/workshop";
import { putRecord, type Refused } from "./change-record";
import { fingerprint } from "./fingerprint";
import { readSwap, type TypedSwap } from "./swap-form";
import { writtenRecord } from "./written-record";

export type FormulaPut = { readonly kind: "changed"; readonly workshop: Workshop } | Refused;

const refused = (message: string): Refused => ({ kind: "refused", faults: [{ field: null, message }], breaks: [] });

/** The formula of that id with other lines: it must add up, and may hold no circle of premixes. */
export function putFormula(workshop: Workshop, formula: Formula, realToday: Day): FormulaPut {
  const record = writtenRecord({ ...workshop, formulas: [formula] }, "formulas", formula.id);
  const gone = refused("this formula is no longer in the workshop");
  if (record === null) return gone;
  const put = putRecord(workshop, "formulas", formula.id, record, realToday);
  return put.kind === "already kept" ? gone : put;
}

const printOf = (workshop: Workshop, formula: Formula): string =>
  fingerprint(writtenRecord({ ...workshop, formulas: [formula] }, "formulas", formula.id) ?? {});

/** What a swap makes of the formula, as its form remembers it; empty where nothing can be made. @rule SWAP-1 */
export function madeBySwap(workshop: Workshop, id: string, typed: TypedSwap): string {
  const reading = readSwap(workshop, id, typed);
  const before = workshop.formulas.find((formula) => formula.id === id);
  const to = workshop.materials.find((material) => material.id === typed.to);
  if (reading.kind !== "asked" || before === undefined || to === undefined) return "";
  return printOf(workshop, swapped(before, to, reading.asked).formula);
}

/**
 * What a swap makes, in the place of the formula.
 * @param made  what it was to make when the form was drawn: sent again it stands already, and has nothing to swap
 * @rule SWAP-1
 */
export function putSwapInPlace(
  { workshop }: Books,
  id: string,
  typed: TypedSwap,
  made: string,
  realToday: Day,
): FormulaPut {
  const reading = readSwap(workshop, id, typed);
  const before = workshop.formulas.find((formula) => formula.id === id);
  if (before !== undefined && printOf(workshop, before) === made) return { kind: "changed", workshop };
  const to = workshop.materials.find((material) => material.id === typed.to);
  if (reading.kind !== "asked" || before === undefined || to === undefined)
    return refused(reading.kind === "refused" ? reading.message : "choose what is to be swapped, and for what");
  return putFormula(workshop, swapped(before, to, reading.asked).formula, realToday);
}

/** A trial's percents, in the place of its formula's. @rule TRIAL-1, TRIAL-5 */
export function putTrialInPlace({ workshop, desk }: Books, trialId: string, realToday: Day): FormulaPut {
  const trial = desk.trials.find(({ id }) => id === trialId);
  const formula = workshop.formulas.find(({ id }) => id === trial?.formula);
  if (trial === undefined || formula === undefined) return refused("this trial is not there any more");
  const after = formulaOfTrial(formula, trial);
  return after === null
    ? refused(
        "a line of this trial is less than 0.0001 %, which no formula can hold; weigh it again as another trial without that line",
      )
    : putFormula(workshop, after, realToday);
}
