/** What the form for a run that was made sends. @rule LEDGER-11, LEDGER-12 */
import type { Day } from "@/lib/domain/calendar";
import type { Fraction } from "@/lib/domain/fraction";
import type { Draw } from "@/lib/domain/ledger/make-run";
import { decimalValue, type Units } from "@/lib/domain/quantity";
import type { Outcome } from "@/lib/edge/fields";
import { decimal } from "@/lib/edge/figure-fields";
import { countShown } from "@/lib/edge/figures";
import {
  type Faults,
  faultsOf,
  type Read,
  readDayOfPosting,
  readNoteTyped,
  readTakes,
  type SentForm,
  spiltField,
  takesField,
  unitsInWords,
} from "./posting-forms";
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
  const draws = readDraws(form);
  if ("fault" in made || "fault" in day || "fault" in bestBefore || "fault" in minutes || "fault" in note)
    return {
      faults: { ...faultsOf({ made, day, bestBefore, minutes, note }), ...("faults" in draws && draws.faults) },
    };
  if ("faults" in draws) return draws;
  return {
    asked: {
      key,
      run,
      day: day.value,
      unitsMade: made.value,
      finishedLot: { id: lot, bestBefore: bestBefore.value },
      minutes: minutes.value,
      note: note.value,
      draws: draws.asked,
    },
  };
}

/** So many times what was planned hardly ever come out of a batch: it is asked about once more. */
const HARDLY_TIMES = 2n;
const OUT_OF_DATE = "out of date";

/** What the button of the form says beside what is typed: lots out of date are meant, or so many units are. */
export interface MakingMeant {
  readonly outOfDate: "draw" | "refuse";
  /** The units that came out, where they were asked about. */
  readonly units: string | null;
}

export function meantBy(deed: string): MakingMeant {
  const [, units] = /so many (\d+)$/.exec(deed) ?? [];
  return { outOfDate: deed.startsWith(OUT_OF_DATE) ? "draw" : "refuse", units: units ?? null };
}

/** The question about units of which there are far more than were planned, and the deed that says yes to it. */
export function unlikelyUnits(
  { run, unitsMade }: Pick<MakingAsked, "run" | "unitsMade">,
  { outOfDate, units }: MakingMeant,
): { readonly asks: string; readonly deed: string; readonly label: string } | null {
  if (unitsMade <= HARDLY_TIMES * run.units || units === unitsMade.toString()) return null;
  const made = unitsInWords(unitsMade);
  return {
    asks: `${made} came out of a run of ${countShown(run.units)}: is that right? Write another number, or say yes below`,
    deed: `${outOfDate === "draw" ? `${OUT_OF_DATE}, ` : ""}so many ${unitsMade.toString()}`,
    label: `Yes, ${made} came out`,
  };
}

/** What each lot gave to the batch, and what of it was spilt beside it beyond plan. @rule LEDGER-12 */
function readDraws(form: SentForm): Read<readonly Draw[]> {
  const [takes, spilt] = [readTakes(form), readTakes(form, spiltField)];
  if ("faults" in takes || "faults" in spilt)
    return { faults: { ...("faults" in takes && takes.faults), ...("faults" in spilt && spilt.faults) } };
  const [taken, lost] = [takes.asked, spilt.asked].map(
    (asked) => new Map(asked.map(({ lot, quantity }) => [lot, quantity])),
  );
  const lots = [...new Set([...takes.asked, ...spilt.asked].map(({ lot }) => lot))];
  return { asked: lots.map((lot) => ({ lot, quantity: taken?.get(lot) ?? 0n, spilt: lost?.get(lot) ?? 0n })) };
}

/**
 * The field that a refusal of a lot is about: what was spilt of it, where what the batch takes would be there.
 * @param there  what the refusal says is there, if anything
 */
export function drawField({ draws }: Pick<MakingAsked, "draws">, lot: string, there: bigint | null): string {
  const draw = draws.find((each) => each.lot === lot);
  const isSpilt = draw !== undefined && draw.spilt > 0n && there !== null && draw.quantity <= there;
  return isSpilt ? spiltField(lot) : takesField(lot);
}

/** Minutes at the bench; null where none are typed. */
export function readMinutesTyped(typed: string): Outcome<Fraction | null> {
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
