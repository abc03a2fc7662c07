/** The forms that start, close and judge a batch, and say how batches are called. @rule BENCH-1, BENCH-2, BENCH-7, BENCH-8 */
import type { Instant, NoteOf } from "@/lib/domain/bench/batch";
import { type BatchCodeScheme, DATINGS, LONGEST_CODE, MOST_DIGITS } from "@/lib/domain/bench/batch-code";
import type { Fraction } from "@/lib/domain/fraction";
import type { Draw } from "@/lib/domain/ledger/make-run";
import { type Micrograms, quantity } from "@/lib/domain/quantity";
import { name, type Outcome } from "@/lib/edge/fields";
import { readMinutesTyped } from "./make-form";
import { readWho } from "./bench-fields";
import {
  type Faults,
  faultsOf,
  type Read,
  readNoteTyped,
  readReasonTyped,
  readTakes,
  type SentForm,
} from "./posting-forms";
import { readTypedWholeNumber } from "./typed-amount";
import { withoutEnds } from "./typed-number";
import { readTypedStock } from "./typed-stock";
import { readLastDayTyped, readNewId, readUnitsMade, type SeenRun, seenRunIn, textIn } from "./week-forms";

/** One for each thing that a closing asks about. @rule BENCH-7 */
const REASONS = ["whyNotWeighed", "whyMoreFilled", "whyOutOfDate", "whyNotChecked"] as const;

export const START_FIELDS = ["who", "code", "despite"] as const;
export const CLOSE_FIELDS = ["who", "units", "leftOver", "bestBefore", "minutes", "held", "why", ...REASONS] as const;
export const JUDGE_FIELDS = ["who", "why", "whyNotChecked"] as const;
export const SCHEME_FIELDS = ["before", "dating", "between", "digits"] as const;

export interface StartAsked {
  readonly run: SeenRun;
  readonly who: string;
  readonly code: string | null;
  readonly despite: string | null;
}

/** @returns null where the form does not say what it is about */
export function readStart(form: SentForm): Read<StartAsked> | null {
  const run = seenRunIn(form);
  if (run === null) return null;
  const read = {
    who: readWho(textIn(form, "who")),
    code: readCode(textIn(form, "code")),
    despite: readNoteTyped(textIn(form, "despite")),
  };
  const { who, code, despite } = read;
  if ("fault" in who || "fault" in code || "fault" in despite) return { faults: faultsOf(read) };
  return { asked: { run, who: who.value, code: code.value, despite: despite.value } };
}

function readCode(typed: string): Outcome<string | null> {
  const text = withoutEnds(typed);
  if (text === "") return { value: null };
  const read = name.safeParse(text);
  if (!read.success) return { fault: read.error.issues[0]?.message ?? "must be a code" };
  return { value: read.data };
}

export interface CloseAsked {
  readonly batch: string;
  readonly note: NoteOf<"closed">;
  readonly draws: readonly Draw[];
  readonly minutes: Fraction | null;
}

const readUnitsFilled = (typed: string): ReturnType<typeof readUnitsMade> =>
  typed.trim() === "" ? { fault: "write how many came out, or 0" } : readUnitsMade(typed);

/** @returns null where the form does not say what it is about */
export function readClosing(form: SentForm, now: Instant): Read<CloseAsked> | null {
  const [batch, key] = [textIn(form, "batch"), readNewId(form, "key")];
  if (batch === "" || key === null) return null;
  const read = {
    who: readWho(textIn(form, "who")),
    units: readUnitsFilled(textIn(form, "units")),
    leftOver: readTypedStock(textIn(form, "leftOver"), "mass"),
    bestBefore: readLastDayTyped(textIn(form, "bestBefore")),
    minutes: readMinutesTyped(textIn(form, "minutes")),
    why: readNoteTyped(textIn(form, "why")),
  };
  const takes = readTakes(form);
  const reasons = readReasons(form);
  const { who, units, leftOver, bestBefore, minutes, why } = read;
  const faults: Faults = {
    ...faultsOf(read),
    ...("faults" in reasons && reasons.faults),
    ...("faults" in takes && takes.faults),
  };
  if ("fault" in who || "fault" in units || "fault" in leftOver || "fault" in bestBefore) return { faults };
  if ("fault" in minutes || "fault" in why || "faults" in takes || "faults" in reasons) return { faults };
  const note: NoteOf<"closed"> = {
    key,
    at: now,
    who: who.value,
    kind: "closed",
    units: units.value,
    leftOver: leftOver.value === null ? null : quantity<Micrograms>(leftOver.value),
    bestBefore: bestBefore.value,
    held: textIn(form, "held") === "yes",
    why: why.value,
    ...reasons.asked,
  };
  const draws = takes.asked.map(({ lot, quantity: taken }) => ({ lot, quantity: taken, spilt: 0n }));
  return { asked: { batch, note, draws, minutes: minutes.value } };
}

type Reasons = Pick<NoteOf<"closed">, (typeof REASONS)[number]>;

function readReasons(form: SentForm): Read<Reasons> {
  const read = REASONS.map((name) => [name, readNoteTyped(textIn(form, name))] as const);
  const faults = faultsOf(Object.fromEntries(read));
  if (Object.keys(faults).length > 0) return { faults };
  return { asked: Object.fromEntries(read.map(([name, why]) => [name, "fault" in why ? null : why.value])) as Reasons };
}

export interface JudgeAsked {
  readonly batch: string;
  readonly note: NoteOf<"released"> | NoteOf<"rejected">;
}

/** @returns null where the form does not say what it is about */
export function readJudgement(form: SentForm, now: Instant): Read<JudgeAsked> | null {
  const [batch, key, deed] = [textIn(form, "batch"), readNewId(form, "key"), textIn(form, "deed")];
  if (batch === "" || key === null) return null;
  const rejects = deed === "rejected";
  const typed = textIn(form, "why");
  const read = {
    who: readWho(textIn(form, "who")),
    why: rejects ? readReasonTyped(typed) : readNoteTyped(typed),
    whyNotChecked: readNoteTyped(textIn(form, "whyNotChecked")),
  };
  const { who, why, whyNotChecked } = read;
  if ("fault" in who || "fault" in why || "fault" in whyNotChecked) return { faults: faultsOf(read) };
  const said = { key, at: now, who: who.value, why: why.value };
  if (rejects) return { asked: { batch, note: { ...said, kind: "rejected" } } };
  return { asked: { batch, note: { ...said, kind: "released", whyNotChecked: whyNotChecked.value } } };
}

/** How batches are called. */
export function readScheme(form: SentForm): Read<BatchCodeScheme> {
  const dating = DATINGS.find((known) => known === textIn(form, "dating"));
  const read = {
    before: readPart(textIn(form, "before"), 100),
    between: readPart(textIn(form, "between"), 20),
    digits: readDigits(textIn(form, "digits")),
  };
  const { before, between, digits } = read;
  if ("fault" in before || "fault" in between || "fault" in digits) return { faults: faultsOf(read) };
  if (dating === undefined) return { faults: { dating: "is needed; choose one" } };
  if (dating === "none" && before.value === "")
    return { faults: { before: "is needed where no date stands in a code: a number alone names many things" } };
  return { asked: { before: before.value, dating, between: between.value, digits: digits.value } };
}

function readPart(typed: string, most: number): Outcome<string> {
  if (/[\p{Cc}\p{Cs}]/u.test(typed)) return { fault: "holds a character that cannot be printed; take it out" };
  return [...typed].length > most
    ? { fault: `must have at most ${String(most)} characters, so that a code has no more than ${String(LONGEST_CODE)}` }
    : { value: typed };
}

function readDigits(typed: string): Outcome<number> {
  const count = readTypedWholeNumber(typed);
  if ("fault" in count) return count;
  return count.value >= 1 && count.value <= MOST_DIGITS
    ? { value: count.value }
    : { fault: `must be 1 to ${String(MOST_DIGITS)}` };
}
