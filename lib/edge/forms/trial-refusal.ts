/** Why what was weighed for a trial was not taken off the shelf. @rule TRIAL-2 */
import type { TrialDraws } from "@/lib/domain/formula-book/trials";
import type { Refusal } from "@/lib/domain/ledger/refusal";
import { stockInFull } from "@/lib/edge/figures";
import { type Faults, type SentForm, shownIn } from "./posting-forms";
import { refusalWords } from "./refusal-words";

export type NotTaken = Refusal | { readonly kind: "short"; readonly short: TrialDraws["short"] };

/** Beside the day, or above the form. */
export function notTaken(refusal: NotTaken, form: SentForm): { readonly faults: Faults; readonly says: string | null } {
  if (refusal.kind === "short") {
    const short = refusal.short.map(({ material, by }) => `${stockInFull(by, material.measure)} of ${material.name}`);
    return {
      faults: {},
      says: `The shelf, as it is written down, lacks ${short.join(" and ")} on that day. Count the shelf first, or keep the trial without taking it off the shelf.`,
    };
  }
  const { at, words } = refusalWords(refusal, shownIn(form));
  return at === "day" ? { faults: { day: words }, says: null } : { faults: {}, says: words };
}
