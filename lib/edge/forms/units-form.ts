/** What the forms that move finished units of one lot send: sold, back from a sale, written off. @rule LEDGER-15 */
import type { Day } from "@/lib/domain/calendar";
import { finishedLot, type LotName } from "@/lib/domain/ledger/posting";
import { type Outcome, units } from "@/lib/edge/fields";
import { type Faults, faultsOf, readDayOfPosting, readNoteTyped, type SentForm } from "./posting-forms";
import { readTypedWholeNumber } from "./typed-amount";
import { withoutEnds } from "./typed-number";
import { readNewId, textIn } from "./week-forms";

export const UNITS_FIELDS = ["units", "day", "note", "why"] as const;

export interface UnitsAsked {
  readonly key: string;
  readonly day: Day;
  readonly reason: string | null;
  readonly lines: readonly { readonly lot: LotName; readonly quantity: bigint }[];
}

/** @returns null where the form does not say what it is about */
export function readUnitsMoved(form: SentForm): { readonly asked: UnitsAsked } | { readonly faults: Faults } | null {
  const [key, lot] = [readNewId(form, "key"), textIn(form, "lot")];
  if (key === null || lot === "") return null;
  const count = readUnits(textIn(form, "units"));
  const [day, note] = [readDayOfPosting(form), readNoteTyped(textIn(form, "note"))];
  if ("fault" in count || "fault" in day || "fault" in note) return { faults: faultsOf({ units: count, day, note }) };
  return {
    asked: { key, day: day.value, reason: note.value, lines: [{ lot: finishedLot(lot), quantity: count.value }] },
  };
}

const aUnitCount = units(1);

function readUnits(typed: string): Outcome<bigint> {
  if (withoutEnds(typed) === "") return { fault: "is needed; write how many units, as 12" };
  const count = readTypedWholeNumber(typed);
  if ("fault" in count) return count;
  if (count.value === 0) return { fault: "must be above zero; write how many units, as 12" };
  const read = aUnitCount.safeParse(count.value);
  return read.success ? { value: read.data } : { fault: read.error.issues[0]?.message ?? "must be a whole number" };
}

/** Why finished units are written off. */
export const WRITE_OFF_REASONS = ["sample", "broken", "given away", "out of date"] as const;
export type WriteOffReason = (typeof WRITE_OFF_REASONS)[number];

export function readWriteOffReason(typed: string): Outcome<WriteOffReason> {
  const reason = WRITE_OFF_REASONS.find((each) => each === typed);
  return reason === undefined ? { fault: "is needed; choose one" } : { value: reason };
}
