/** Why nothing was posted, in a sentence that says what to do next. @rule LEDGER-8 */
import type { Day } from "@/lib/domain/calendar";
import type { LotName } from "@/lib/domain/ledger/posting";
import type { Refusal } from "@/lib/domain/ledger/refusal";
import type { Workshop } from "@/lib/domain/workshop";
import { dayShown, stockInFull } from "@/lib/edge/figures";
import { unitsInWords } from "./posting-forms";
import { notThereWords } from "./refusal-words";

/** How lots and days are said: in the measure of what the lot is of. */
export interface Saying {
  readonly amount: (lot: LotName, amount: bigint) => string;
  readonly day: (day: Day) => string;
}

/** @param today  as the workshop has it, else the real day */
export function sayingIn({ lots, materials, settings }: Workshop, realToday: Day): Saying {
  const today = settings.today ?? realToday;
  const measures = new Map(materials.map(({ id, measure }) => [id, measure]));
  const materialOf = new Map(lots.map(({ id, material }) => [id, material]));
  return {
    amount: ({ of, id }, amount) => {
      if (of === "finished") return unitsInWords(amount);
      return stockInFull(amount, measures.get(materialOf.get(id) ?? "") ?? "mass");
    },
    day: (day) => dayShown(day, today),
  };
}

export function refusalInWords(refusal: Refusal, { amount, day }: Saying): string {
  switch (refusal.kind) {
    case "future day":
      return `${day(refusal.day)} is still to come; today is ${day(refusal.today)}`;
    case "no such lot":
      return `there is no lot ${refusal.lot.id} any more; load the page again`;
    case "before the lot":
      return `lot ${refusal.lot.id} came on ${day(refusal.since)}; write that day or a later one`;
    case "nothing to post":
      return "nothing is asked; write an amount above zero";
    case "asked twice":
      return `lot ${refusal.lot.id} stands here twice; write it once, or give one of them another number`;
    case "not there":
      return notThereWords(refusal, amount);
    case "out of date":
      return `lot ${refusal.lot.id} is out of date since ${day(refusal.expires)}`;
    case "cost came later":
      return `a cost was posted on ${day(refusal.on)} that would then belong to nothing; take that back first`;
    case "out of range":
      return `lot ${refusal.lot.id} would be too large; write less`;
  }
}

/** @rule BENCH-8 */
export const waitsAtBenchWords = (code: string): string =>
  `Batch ${code} waits for a second look at the bench. Release or reject it by its record, so that the record says who judged it and why.`;
