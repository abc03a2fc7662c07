/** What the form for a run that was made sends. @rule LEDGER-11, LEDGER-12 */
import type { Day } from "@/lib/domain/calendar";
import type { Fraction } from "@/lib/domain/fraction";
import type { Draw } from "@/lib/domain/ledger/make-run";
import { decimalValue, type Units } from "@/lib/domain/quantity";
import type { Outcome } from "@/lib/edge/fields";
import { decimal } from "@/lib/edge/figure-fields";
import { type Faults, faultsOf, readDayOfPosting, readNoteTyped, readTakes, type SentForm } from "./posting-forms";
import { readTypedNumber, withoutEnds } from "./typed-number";
import { readLastDayTyped, readNewId, readUnitsMade, type SeenRun, seenRunIn, textIn } from "./week-forms";

export const MAKE_FIELDS = ["made", "day", "bestBefore", "minutes", "note"] as const;

export interface MakingAsked {
  readonly key: string;
  readonly run: SeenRun;
  readonly day: Day;
  readonly unitsMade: Units;
  readonly finishedLot: { readonly id: string; readonly bestBefore: Day | null };
  /** Null for what is planned. */
  readonly minutes: Fraction | null;
  readonly note: string | null;
  readonly draws: readonly Draw[];
}

/** @returns null where the form does not say what it is about */
export function readMaking(form: SentForm): { readonly asked: MakingAsked } | { readonly faults: Faults } | null {
  const [run, key, lot] = [seenRunIn(form), readNewId(form, "key"), readNewId(form, "lot")];
  if (run === null || key === null || lot === null) return null;
  const made = readUnitsMade(textIn(form, "made"));
  const day = readDayOfPosting(form);
  const bestBefore = readLastDayTyped(textIn(form, "bestBefore"));
  const minutes = readMinutesTyped(textIn(form, "minutes"));
  const note = readNoteTyped(textIn(form, "note"));
  const takes = readTakes(form);
  if ("fault" in made || "fault" in day || "fault" in bestBefore || "fault" in minutes || "fault" in note)
    return {
      faults: { ...faultsOf({ made, day, bestBefore, minutes, note }), ...("faults" in takes && takes.faults) },
    };
  if ("faults" in takes) return takes;
  return {
    asked: {
      key,
      run,
      day: day.value,
      unitsMade: made.value,
      finishedLot: { id: lot, bestBefore: bestBefore.value },
      minutes: minutes.value,
      note: note.value,
      draws: takes.asked.map((take) => ({ ...take, spilt: 0n })),
    },
  };
}

function readMinutesTyped(typed: string): Outcome<Fraction | null> {
  if (withoutEnds(typed) === "") return { value: null };
  const number = readTypedNumber(typed);
  if ("fault" in number) return number;
  const read = decimal.safeParse(number.value);
  if (!read.success) return { fault: read.error.issues[0]?.message ?? "must be a number" };
  const minutes = decimalValue(read.data);
  return minutes.over > MOST_MINUTES * minutes.under
    ? { fault: "is more than a year; write the minutes that the run took" }
    : { value: minutes };
}

const MOST_MINUTES = 366n * 24n * 60n;
