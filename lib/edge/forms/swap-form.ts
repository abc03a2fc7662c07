/** A swap of materials as its form asks for it, and the draft that it makes. @rule SWAP-1 */
import { swapped, type SwapAsked } from "@/lib/domain/formula-book/swap";
import type { Books } from "@/lib/domain/desk";
import { times, whole } from "@/lib/domain/fraction";
import { type DecimalText, decimalValue, type PartsPerMillion, quantity, WHOLE } from "@/lib/domain/quantity";
import type { Workshop } from "@/lib/domain/workshop";
import { type DraftKept, putDraft } from "./change-draft";
import type { Refused } from "./change-record";
import { readTypedPercent } from "./typed-amount";
import { writtenRecord } from "./written-record";

/** What was typed or chosen; empty for nothing. */
export interface TypedSwap {
  readonly from: string;
  readonly to: string;
  readonly percent: string;
  readonly phase: string;
}

export type SwapReading =
  | { readonly kind: "asked"; readonly asked: SwapAsked }
  | { readonly kind: "nothing asked" }
  | { readonly kind: "refused"; readonly field: keyof TypedSwap; readonly message: string };

/** @param formula  the id of a formula of the workshop */
export function readSwap(workshop: Workshop, formula: string, typed: TypedSwap): SwapReading {
  if (typed.from === "" && typed.to === "") return { kind: "nothing asked" };
  const lines = workshop.formulas.find(({ id }) => id === formula)?.lines ?? [];
  const [from, to] = [typed.from, typed.to].map((id) => workshop.materials.find((one) => one.id === id));
  if (from === undefined || !lines.some(({ of }) => of.kind === "material" && of.id === from.id))
    return { kind: "refused", field: "from", message: "is not in this formula; choose one that is" };
  if (to === undefined || to.measure !== "mass" || to.id === from.id)
    return { kind: "refused", field: "to", message: "must be another material that is weighed; choose one" };
  const percent = percentOf(typed.percent);
  if (percent === undefined) return { kind: "refused", field: "percent", message: "must be a percent above 0, as 0.8" };
  const phase = typed.phase.trim() === "" ? null : typed.phase.trim();
  return { kind: "asked", asked: { formula, from: from.id, to: to.id, percent, phase } };
}

/** Null where nothing is typed, undefined where it is no percent that a formula can hold. */
function percentOf(typed: string): PartsPerMillion | null | undefined {
  if (typed.trim() === "") return null;
  const read = readTypedPercent(typed);
  if ("fault" in read) return undefined;
  const ppm = times(decimalValue(read.value as DecimalText), whole(WHOLE / 100n));
  const share = ppm.over / ppm.under;
  return ppm.over % ppm.under !== 0n || share <= 0n || share > WHOLE ? undefined : quantity<PartsPerMillion>(share);
}

/**
 * Keeps what the swap makes as a draft beside the formula, which stays as it is.
 * @param draftId  made when the page was drawn, so that a second press keeps no second draft
 */
export function putSwap(books: Books, formula: string, typed: TypedSwap, draftId: string): DraftKept | Refused {
  const { workshop } = books;
  const reading = readSwap(workshop, formula, typed);
  const before = workshop.formulas.find(({ id }) => id === formula);
  const to = workshop.materials.find(({ id }) => id === typed.to);
  if (reading.kind !== "asked" || before === undefined || to === undefined) {
    const message = reading.kind === "refused" ? reading.message : "choose what is to be swapped, and for what";
    return { kind: "refused", faults: [{ field: null, message }], breaks: [] };
  }
  const after = { ...swapped(before, to, reading.asked).formula, name: `${before.name} with ${to.name}`.slice(0, 200) };
  const record = writtenRecord({ ...workshop, formulas: [after] }, "formulas", formula) ?? {};
  return putDraft(books, null, { ...record, id: draftId });
}
