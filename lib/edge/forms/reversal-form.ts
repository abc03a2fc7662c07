/** What the form that takes a posting back sends, and what it is told. @rule LEDGER-16 */
import type { Day } from "@/lib/domain/calendar";
import type { ReversalResult } from "@/lib/domain/ledger/reverse";
import { inARow } from "@/lib/edge/counted";
import { dayShown } from "@/lib/edge/figures";
import { POSTING_WORDS } from "@/lib/edge/posting-words";
import {
  type Faults,
  faultsOf,
  placedRefusal,
  readDayOfPosting,
  readReasonTyped,
  type SentForm,
  shownIn,
} from "./posting-forms";
import { refusalWords } from "./refusal-words";
import { readNewId, textIn } from "./week-forms";

export const REVERSAL_FIELDS = ["day", "reason"] as const;

export interface ReversalAsked {
  readonly key: string;
  readonly reverses: string;
  readonly day: Day;
  readonly reason: string;
}

/** @returns null where the form does not say what it is about */
export function readReversal(form: SentForm): { readonly asked: ReversalAsked } | { readonly faults: Faults } | null {
  const [key, reverses] = [readNewId(form, "key"), textIn(form, "posting")];
  if (key === null || reverses === "") return null;
  const [day, reason] = [readDayOfPosting(form), readReasonTyped(textIn(form, "reason"))];
  if ("fault" in day || "fault" in reason) return { faults: faultsOf({ day, reason }) };
  return { asked: { key, reverses, day: day.value, reason: reason.value } };
}

type NotReversed =
  | Exclude<ReversalResult, { readonly kind: "posted" }>
  | { readonly kind: "belongs to a batch"; readonly batch: { readonly code: string } };

/** Why a posting was not taken back, and what to do instead. */
export function reversalRefused(
  told: NotReversed,
  form: SentForm,
): { readonly faults: Faults; readonly says: string | null } {
  switch (told.kind) {
    case "no such posting":
      return above("There is no such posting any more. Load the page again.");
    case "already reversed":
      return above(`It was taken back already, on ${inFull(told.by.day)}: nothing more was posted.`);
    case "belongs to a batch":
      return above(
        `It is part of the record of batch ${told.batch.code}. Strike the weight there while the batch is open; after that, add to the record what is to be said, and count or write off what is really there.`,
      );
    case "is a reversal":
      return above("A posting that takes another one back is not taken back itself; post anew what it took back.");
    case "before the posting":
      return {
        faults: { day: `must not be before the posting itself, on ${inFull(told.posting.day)}` },
        says: null,
      };
    case "drawn since":
      return above(drawnSinceWords(told, form));
    case "future day":
    case "no such lot":
    case "before the lot":
    case "nothing to post":
    case "asked twice":
    case "not there":
    case "out of date":
    case "cost came later":
    case "out of range":
      return placedRefusal(refusalWords(told, shownIn(form)), () => null);
  }
}

const above = (says: string): { readonly faults: Faults; readonly says: string } => ({ faults: {}, says });
const inFull = (day: Day): string => dayShown(day, day, { year: true });

const MOST_NAMED = 3;

function drawnSinceWords(
  { refusal, since }: Extract<ReversalResult, { readonly kind: "drawn since" }>,
  form: SentForm,
): string {
  const shown = shownIn(form);
  const { lot, there, asked } = refusal;
  const gone = since
    .slice(0, MOST_NAMED)
    .map(
      ({ posting, quantity }) =>
        `${shown(lot, quantity)} ${POSTING_WORDS[posting.kind].toLowerCase()} on ${inFull(posting.day)}`,
    );
  const more = since.length > MOST_NAMED ? [`${String(since.length - MOST_NAMED)} more`] : [];
  const why = gone.length > 0 ? ` Since then: ${inARow([...gone, ...more])}.` : "";
  return `Lot ${lot.id} would fall below nothing: taking this back needs ${shown(lot, asked)} of it, and ${there === 0n ? "nothing" : shown(lot, there)} can be spared.${why} Take that back first, the latest first, or write off or count what is really there.`;
}
