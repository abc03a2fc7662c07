/** A trial and what was read of it, as their forms send them. @rule TRIAL-1, TRIAL-3 */
import type { Trial, TrialLine, TrialReading } from "@/lib/domain/formula-book/trials";
import type { DecimalText, Micrograms } from "@/lib/domain/quantity";
import { quantity } from "@/lib/domain/quantity";
import type { Day } from "@/lib/domain/calendar";
import { name as aName, note, type Outcome, phase as aPhase } from "@/lib/edge/fields";
import { ph as aPh, viscosity as aViscosity } from "@/lib/edge/figure-fields";
import { type Faults, faultsOf, readDayOfPosting, type Read, type SentForm } from "./posting-forms";
import { readTimeAfter } from "./time-after";
import { readTypedNumber, withoutEnds } from "./typed-number";
import { readTypedStock } from "./typed-stock";
import { readNewId, textIn } from "./week-forms";

/** Lines that the formula has not. */
export const FURTHER_LINES = 2;
export const weighedField = (at: number): string => `line.${String(at)}.weighed`;
/** What a line is of, and in which phase; carried for those of the formula, chosen for others. */
export const ofField = (at: number): string => `line.${String(at)}.of`;
export const phaseField = (at: number): string => `line.${String(at)}.phase`;

export const READING_FIELDS = ["after", "ph", "viscosity", "appearance"] as const;
export const TRIAL_FIELDS = ["name", "day", "notes", "shelf", ...READING_FIELDS] as const;

/** As one text, so that a choice can carry it. */
export const ofAsText = ({ kind, id }: TrialLine["of"]): string => `${kind} ${id}`;

function ofFromText(text: string): TrialLine["of"] | null {
  const [, kind, id] = /^(material|formula) (.+)$/s.exec(text) ?? [];
  return (kind === "material" || kind === "formula") && id !== undefined ? { kind, id } : null;
}

export interface TrialAsked {
  readonly key: string;
  readonly day: Day;
  readonly trial: Omit<Trial, "posting">;
  readonly fromShelf: boolean;
}

/** How many lines a form sends, counted by what it carries. */
const linesIn = (form: SentForm): number =>
  [...form.keys()].filter((field) => /^line\.\d{1,4}\.weighed$/.test(field)).length;

/** Every field of the form, so that nothing typed is lost. */
export const trialFieldsOf = (form: SentForm): readonly string[] => [
  ...TRIAL_FIELDS,
  ...Array.from({ length: linesIn(form) }, (_, at) => [weighedField(at), ofField(at)]).flat(),
];

/** @returns null where the form does not say what it is about */
export function readTrial(form: SentForm): Read<TrialAsked> | null {
  const [key, formula] = [readNewId(form, "key"), textIn(form, "formula")];
  if (key === null || formula === "") return null;
  const [called, day, notes] = [readName(form), readDayOfPosting(form), readOrNull(form, "notes", NOTES)];
  const lines = readLines(form);
  const reading = readReading(form);
  const faults = { ...faultsOf({ name: called, day, notes }), ...lines.faults, ...faultsIn(reading) };
  if ("fault" in called || "fault" in day || "fault" in notes || "faults" in reading || Object.keys(faults).length > 0)
    return { faults };
  const readings = reading.asked === null ? [] : [reading.asked];
  const trial = {
    id: key,
    formula,
    name: called.value,
    day: day.value,
    notes: notes.value,
    lines: lines.read,
    readings,
  };
  return { asked: { key, day: day.value, trial, fromShelf: textIn(form, "shelf") !== "no" } };
}

const NOTES = note(5000);
const APPEARANCE = note(1000);

function readName(form: SentForm): Outcome<string> {
  const typed = withoutEnds(textIn(form, "name"));
  if (typed === "") return { fault: "is needed; call it what tells it from the others, as 6 % emulsifier" };
  const read = aName.safeParse(typed);
  return read.success ? { value: read.data } : { fault: read.error.issues[0]?.message ?? "must be a name" };
}

interface Schema<T> {
  readonly safeParse: (
    value: unknown,
  ) => { readonly success: true; readonly data: T } | { readonly success: false; readonly error: Issues };
}
interface Issues {
  readonly issues: readonly { readonly message: string }[];
}

function readOrNull<T>(form: SentForm, field: string, schema: Schema<T>): Outcome<T | null> {
  const typed = withoutEnds(textIn(form, field));
  if (typed === "") return { value: null };
  const read = schema.safeParse(typed);
  return read.success ? { value: read.data } : { fault: read.error.issues[0]?.message ?? "cannot be read" };
}

function readFigure(form: SentForm, field: string, schema: Schema<DecimalText>): Outcome<DecimalText | null> {
  const typed = withoutEnds(textIn(form, field));
  if (typed === "") return { value: null };
  const number = readTypedNumber(typed);
  if ("fault" in number) return number;
  const read = schema.safeParse(number.value);
  return read.success ? { value: read.data } : { fault: read.error.issues[0]?.message ?? "must be a number" };
}

/** What was weighed; a line in which nothing is written was left out of the trial. */
function readLines(form: SentForm): { readonly read: readonly TrialLine[]; readonly faults: Faults } {
  const read: TrialLine[] = [];
  const faults: Record<string, string> = {};
  for (let at = 0; at < linesIn(form); at += 1) {
    const field = weighedField(at);
    const typed = textIn(form, field);
    const of = ofFromText(textIn(form, ofField(at)));
    if (typed.includes("%")) {
      faults[field] = "is a percent; write the grams that the balance showed, as 6.02 g";
      continue;
    }
    const weighed = readTypedStock(typed, "mass");
    if ("fault" in weighed) faults[field] = weighed.fault;
    else if (weighed.value !== null && weighed.value > 0n) {
      const phase = aPhase.safeParse(textIn(form, phaseField(at)));
      if (of === null) faults[ofField(at)] = "is needed; choose what was weighed";
      else read.push({ of, weighed: quantity<Micrograms>(weighed.value), phase: phase.success ? phase.data : null });
    }
  }
  if (read.length === 0 && Object.keys(faults).length === 0)
    faults[weighedField(0)] = "write what was weighed of at least one line, as 6.02 g";
  return { read, faults };
}

/** What was read of a trial, and how long after it was made. Null where nothing is written. */
export function readReading(form: SentForm): Read<TrialReading | null> {
  const after = readTimeAfter(textIn(form, "after"));
  const ph = readFigure(form, "ph", aPh);
  const viscosity = readFigure(form, "viscosity", aViscosity);
  const appearance = readOrNull(form, "appearance", APPEARANCE);
  if ("fault" in after || "fault" in ph || "fault" in viscosity || "fault" in appearance)
    return { faults: faultsOf({ after, ph, viscosity, appearance }) };
  const reading = { afterMinutes: after.value, ph: ph.value, viscosity: viscosity.value, appearance: appearance.value };
  return { asked: ph.value === null && viscosity.value === null && appearance.value === null ? null : reading };
}

const faultsIn = (read: Read<unknown>): Faults => ("faults" in read ? read.faults : {});
