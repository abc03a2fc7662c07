/** What is written down at the bench, as its forms and devices send it. @rule BENCH-3, BENCH-4, BENCH-5 */
import type { BenchNote, Instant, NoteMark, NoteOf } from "@/lib/domain/bench/batch";
import { quantity, type Stock } from "@/lib/domain/quantity";
import { name as aName, type Outcome } from "@/lib/edge/fields";
import { celsius as aCelsius, ph as aPh } from "@/lib/edge/figure-fields";
import { instant } from "@/lib/edge/workshop/bench-notes-reading";
import { readChecked } from "./bench-checked";
import { mayBe, needed, readFigure, readFound, readWho } from "./bench-fields";
import { faultsOf, type Read, readNoteTyped, readReasonTyped, type SentForm } from "./posting-forms";
import { readTypedNumber, withoutEnds } from "./typed-number";
import { readTypedStock } from "./typed-stock";
import { readTypedTemperature } from "./typed-temperature";
import { readLastDayTyped, readNewId, textIn } from "./week-forms";

/** The kinds that the page of a batch writes; closing has a form of its own. */
export const WRITTEN_KINDS = [
  "weighed",
  "added",
  "struck",
  "temperature",
  "acidity",
  "seen",
  "checked",
  "recoded",
  "annexed",
] as const;
export type WrittenKind = (typeof WRITTEN_KINDS)[number];

/** The fields that are typed, of each kind. */
export const FIELDS_TYPED: Readonly<Record<WrittenKind, readonly string[]>> = {
  weighed: ["lot", "scanned", "weight", "vessel", "more", "why"],
  added: ["of", "weight", "why"],
  struck: ["why"],
  temperature: ["phase", "celsius", "meter", "calibrated"],
  acidity: ["ph", "meter", "calibrated"],
  seen: ["what", "found"],
  checked: ["found", "within", "why"],
  recoded: ["code", "why"],
  annexed: ["found"],
};

export interface NoteAsked {
  readonly batch: string;
  readonly note: BenchNote;
  readonly seen: readonly string[];
}

/**
 * @param now  where the form says no moment of its own: it was sent without scripts
 * @returns null where the form does not say what it is about
 */
export function readBenchNote(form: SentForm, now: Instant): Read<NoteAsked> | null {
  const [batch, key] = [textIn(form, "batch"), readNewId(form, "key")];
  const kind = WRITTEN_KINDS.find((known) => known === textIn(form, "kind"));
  if (batch === "" || key === null || kind === undefined) return null;
  const who = readWho(textIn(form, "who"));
  const said = READERS[kind](form);
  const faults = { ...faultsOf({ who }), ...("faults" in said ? said.faults : {}) };
  if ("fault" in who || "faults" in said) return { faults };
  const at = instant.safeParse(textIn(form, "at"));
  const mark: NoteMark = { key, at: at.success ? at.data : now, who: who.value };
  return { asked: { batch, note: { ...mark, ...said.asked }, seen: seenIn(form) } };
}

type Unmarked<Kind extends WrittenKind> = Omit<NoteOf<Kind>, keyof NoteMark>;

const READERS: { readonly [Kind in WrittenKind]: (form: SentForm) => Read<Unmarked<Kind>> } = {
  weighed: readWeight,
  added: readAdded,
  struck: (form) => {
    const why = readReasonTyped(textIn(form, "why"));
    if ("fault" in why) return { faults: faultsOf({ why }) };
    return { asked: { kind: "struck", strikes: textIn(form, "strikes"), why: why.value } };
  },
  temperature: (form) => {
    const read = { celsius: readFigure(form, "celsius", readTypedTemperature, aCelsius), ...readMeter(form) };
    const { celsius, meter, calibrated } = read;
    if ("fault" in celsius || "fault" in meter || "fault" in calibrated) return { faults: faultsOf(read) };
    const phase = textIn(form, "phase") || null;
    return {
      asked: { kind: "temperature", phase, celsius: celsius.value, meter: meter.value, calibrated: calibrated.value },
    };
  },
  acidity: (form) => {
    const read = { ph: readFigure(form, "ph", readTypedNumber, aPh), ...readMeter(form) };
    const { ph, meter, calibrated } = read;
    if ("fault" in ph || "fault" in meter || "fault" in calibrated) return { faults: faultsOf(read) };
    return { asked: { kind: "acidity", ph: ph.value, meter: meter.value, calibrated: calibrated.value } };
  },
  seen: (form) => {
    const read = { what: needed(form, "what", aName, "say what was looked at, as colour"), found: readFound(form) };
    const { what, found } = read;
    if ("fault" in what || "fault" in found) return { faults: faultsOf(read) };
    return { asked: { kind: "seen", what: what.value, found: found.value } };
  },
  checked: (form) => {
    const read = readChecked(form);
    return "faults" in read ? read : { asked: { kind: "checked", ...read.asked } };
  },
  recoded: (form) => {
    const read = {
      code: needed(form, "code", aName, "write the code that the jars bear"),
      why: readReasonTyped(textIn(form, "why")),
    };
    const { code, why } = read;
    if ("fault" in code || "fault" in why) return { faults: faultsOf(read) };
    return { asked: { kind: "recoded", code: code.value, why: why.value } };
  },
  annexed: (form) => {
    const found = readFound(form);
    if ("fault" in found) return { faults: faultsOf({ found }) };
    return { asked: { kind: "annexed", found: found.value } };
  },
};

/** What the balance shows; with the vessel on it, what the vessel weighs is taken off. */
function readWeight(form: SentForm): Read<Unmarked<"weighed">> {
  const vessel = readTypedStock(textIn(form, "vessel"), "mass");
  const read = { weight: readNeededStock(textIn(form, "weight")), vessel, why: readNoteTyped(textIn(form, "why")) };
  const { weight, why } = read;
  if ("fault" in weight || "fault" in vessel || "fault" in why) return { faults: faultsOf(read) };
  const tare = vessel.value === 0n ? null : vessel.value;
  if (tare !== null && tare >= weight.value)
    return { faults: { vessel: "weighs as much as all that is on the balance; write what the empty vessel weighs" } };
  const [tapped, scanned] = [textIn(form, "lot"), withoutEnds(textIn(form, "scanned"))];
  if (tapped !== "" && scanned !== "" && tapped !== scanned)
    return { faults: { lot: `${tapped} was tapped and ${scanned} scanned; tap or scan the one that you weigh from` } };
  return {
    asked: {
      kind: "weighed",
      line: textIn(form, "line"),
      lot: scanned || tapped || null,
      net: quantity<Stock>(weight.value - (tare ?? 0n)),
      gross: tare === null ? null : weight.value,
      tare: tare === null ? null : quantity<Stock>(tare),
      more: textIn(form, "more") !== "",
      why: why.value,
    },
  };
}

/** A material and one of its lots, as one choice carries them. */
export const ofAsText = (material: string, lot: string): string => JSON.stringify([material, lot]);

function ofFromText(text: string): readonly [string, string] | null {
  try {
    const of: unknown = JSON.parse(text);
    if (!Array.isArray(of)) return null;
    const [material, lot] = of as unknown[];
    return typeof material === "string" && typeof lot === "string" ? [material, lot] : null;
  } catch {
    return null;
  }
}

function readAdded(form: SentForm): Read<Unmarked<"added">> {
  const of = ofFromText(textIn(form, "of"));
  const read = {
    of: of === null ? { fault: "is needed; choose what was added, and of which lot" } : { value: of },
    weight: readNeededStock(textIn(form, "weight")),
    why: readReasonTyped(textIn(form, "why")),
  };
  const { weight, why } = read;
  if (of === null || "fault" in weight || "fault" in why) return { faults: faultsOf(read) };
  return { asked: { kind: "added", material: of[0], called: null, lot: of[1], net: weight.value, why: why.value } };
}

function readNeededStock(typed: string): Outcome<Stock> {
  const read = readTypedStock(typed, "mass");
  if ("fault" in read) return read;
  if (read.value === null) return { fault: "is needed; write what the balance shows, as 250.5" };
  return read.value === 0n ? { fault: "must be above zero" } : { value: quantity<Stock>(read.value) };
}

const readMeter = (form: SentForm) => ({
  meter: mayBe(form, "meter"),
  calibrated: readLastDayTyped(textIn(form, "calibrated")),
});

/** The keys that a device has seen of the line. */
function seenIn(form: SentForm): readonly string[] {
  try {
    const keys: unknown = JSON.parse(textIn(form, "seen"));
    return Array.isArray(keys) ? keys.filter((each): each is string => typeof each === "string") : [];
  } catch {
    return [];
  }
}
