/** Why something was not posted, as its form says it. @rule LEDGER-4, LEDGER-5, LEDGER-8 */
import type { Day } from "@/lib/domain/calendar";
import type { LotName } from "@/lib/domain/ledger/posting";
import type { Refusal } from "@/lib/domain/ledger/refusal";
import { dayShown } from "@/lib/edge/figures";
import { whereWords } from "@/lib/edge/posting-words";

export interface RefusalWords {
  /** Beside the day, beside the lot, or above the form. */
  readonly at: "day" | "lot" | "form";
  /** The lot, where it is about one. */
  readonly lot: LotName | null;
  readonly words: string;
}

/** @param shown  so much of a lot, with its unit */
export function refusalWords(refusal: Refusal, shown: (lot: LotName, quantity: bigint) => string): RefusalWords {
  switch (refusal.kind) {
    case "future day":
      return said("day", null, `must not be after today, ${dayInFull(refusal.today)}`);
    case "before the lot":
      return said(
        "day",
        refusal.lot,
        `is before lot ${refusal.lot.id} came, on ${dayInFull(refusal.since)}; write that day or a later one`,
      );
    case "no such lot":
      return said("form", refusal.lot, `Lot ${refusal.lot.id} is not written down any more. Load the page again.`);
    case "nothing to post":
      return refusal.lot === null
        ? said("form", null, "Nothing is written here yet, so that nothing was changed.")
        : said("lot", refusal.lot, "must be above zero");
    case "asked twice":
      return said("form", refusal.lot, `Lot ${refusal.lot.id} stands here twice. Load the page again.`);
    case "not there":
      return said("lot", refusal.lot, notThereWords(refusal, shown));
    case "out of date":
      return said(
        "lot",
        refusal.lot,
        `lot ${refusal.lot.id} is out of date: its last day was ${dayInFull(refusal.expires)}`,
      );
    case "cost came later":
      return said(
        "form",
        refusal.lot,
        `A cost of lot ${refusal.lot.id} that was posted for ${dayInFull(refusal.on)} would belong to nothing. Take that posting back first, or choose that day or a later one.`,
      );
    case "out of range":
      return said("lot", refusal.lot, "is too large; write less");
  }
}

const said = (at: RefusalWords["at"], lot: LotName | null, words: string): RefusalWords => ({ at, lot, words });

const dayInFull = (day: Day): string => dayShown(day, day, { year: true });

/** What is asked beside what there is of it, and where; of a day that is past, what can be spared from then on. */
export function notThereWords(
  { lot, place, asked, there, on, onTheDay, now, held }: Extract<Refusal, { readonly kind: "not there" }>,
  shown: (lot: LotName, quantity: bigint) => string,
): string {
  const some = (quantity: bigint): string => (quantity === 0n ? "nothing" : shown(lot, quantity));
  const onHold = place.kind !== "hold" && held > 0n ? `; ${some(held)} more is on hold` : "";
  if (there === now && there === onTheDay)
    return `asks for ${some(asked)}; there is ${some(there)} ${whereWords(place)}${onHold}`;
  return `asks for ${some(asked)}, which would be missing at the end of ${dayInFull(on)}: at most ${some(there)} can be spared${onHold}`;
}
