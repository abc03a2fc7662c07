/** The form that takes a posting back, and why it could not be. @rule LEDGER-16 */
import type { Day } from "@/lib/domain/calendar";
import type { ReversalResult } from "@/lib/domain/ledger/reverse";
import { day, id, name } from "@/lib/edge/fields";
import { POSTING_WORDS } from "@/lib/edge/posting-words";
import { DAY, type FormField, ID, needed, TEXT } from "./form-fields";
import { type FieldFault, type FormReading, readFormOf, type SentForm } from "./form-reading";
import { judging } from "./judged-fields";
import { refusalInWords, type Saying } from "./posting-refusals";

export const TAKE_BACK_FORM: readonly FormField[] = [
  ID,
  needed("day", "On", DAY, { hint: "The day of the posting, or a later one." }),
  needed("reason", "Why", TEXT, { hint: "Both stay to be read: what was posted, and that it was taken back." }),
];

export type TakeBackReading =
  | { readonly kind: "read"; readonly asked: { readonly key: string; readonly day: Day; readonly reason: string } }
  | { readonly kind: "refused"; readonly faults: readonly FieldFault[]; readonly reading: FormReading };

export function readTakeBack(form: SentForm): TakeBackReading {
  const reading = readFormOf(TAKE_BACK_FORM, form);
  const judged = judging(reading);
  const key = judged.value(id, reading.record.id, "id");
  const on = judged.value(day, reading.record.day, "day");
  const reason = judged.value(name, reading.record.reason, "reason");
  if (key === undefined || on === undefined || reason === undefined)
    return { kind: "refused", faults: judged.faults(), reading };
  return { kind: "read", asked: { key, day: on, reason } };
}

type NotTakenBack = Exclude<ReversalResult, { readonly kind: "posted" }>;

/** Why a posting was not taken back: at its field, or with what was drawn since. */
export function takeBackRefused(
  told: NotTakenBack,
  saying: Saying,
): { readonly faults: readonly FieldFault[]; readonly breaks: readonly string[] } {
  const whole = (message: string) => ({ faults: [{ field: null, message }], breaks: [] });
  const ofDay = (message: string) => ({ faults: [{ field: "day", message }], breaks: [] });
  switch (told.kind) {
    case "no such posting":
      return whole("there is no such posting any more; load the page again");
    case "already reversed":
      return whole(`it was taken back already, on ${saying.day(told.by.day)}`);
    case "is a reversal":
      return whole("what takes a posting back is not taken back itself; post what it took back anew");
    case "before the posting":
      return ofDay(`is before it was posted; write ${saying.day(told.posting.day)} or a later day`);
    case "future day":
      return ofDay(refusalInWords(told, saying));
    case "drawn since":
      return {
        faults: [
          {
            field: null,
            message: `${refusalInWords(told.refusal, saying)}. Take back what was drawn since, or write off or count what is left`,
          },
        ],
        breaks: told.since.map(
          ({ posting, quantity }) =>
            `${POSTING_WORDS[posting.kind]} on ${saying.day(posting.day)}: ${saying.amount(told.refusal.lot, quantity)}`,
        ),
      };
    case "no such lot":
    case "before the lot":
    case "nothing to post":
    case "asked twice":
    case "not there":
    case "out of date":
    case "cost came later":
    case "out of range":
      return whole(refusalInWords(told, saying));
  }
}
