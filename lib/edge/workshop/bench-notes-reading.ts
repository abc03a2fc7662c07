/** Notes of the bench as the past in the file holds them: each kind has its own fields. @rule FILE-5, BENCH-4 */
import { type BenchNote, type Instant, NOTE_FIELDS, NOTE_KINDS } from "@/lib/domain/bench/batch";
import { LARGEST_FIGURE, type Micrograms, quantity, type Stock } from "@/lib/domain/quantity";
import type { FaultList } from "@/lib/edge/fault-list";
import {
  day,
  id,
  name,
  note,
  oneOf,
  orElse,
  phase,
  reference,
  textField,
  units,
  wholeNumber,
  yesOrNo,
} from "@/lib/edge/fields";
import { celsius, ph } from "@/lib/edge/figure-fields";
import type { Json } from "@/lib/edge/json-tree";
import { complete, readEntries, readEntry } from "@/lib/edge/record-reading";
import { quoted } from "@/lib/edge/shown-value";

const LARGEST = Number(LARGEST_FIGURE);
const KEY = note(300);
export const WHY = note(1000);

/** A moment in universal time, to the second. @rule BENCH-4 */
export const instant = textField(
  'a moment in double quotes, as "2026-11-25T09:30:00Z"',
  (typed): { readonly value: Instant } | { readonly fault: string } =>
    /^[12]\d{3}-[01]\d-[0-3]\dT[0-2]\d:[0-5]\d:[0-5]\dZ$/.test(typed) && !Number.isNaN(Date.parse(typed))
      ? { value: typed as Instant }
      : { fault: `must be a moment as 2026-11-25T09:30:00Z (universal time), not ${quoted(typed)}` },
);

const stock = wholeNumber(1, LARGEST).transform((value) => quantity<Stock>(BigInt(value)));
const mayBeNothing = orElse(
  wholeNumber(0, LARGEST).transform((value) => quantity<Stock>(BigInt(value))),
  null,
);
export const mass = wholeNumber(0, LARGEST).transform((value) => quantity<Micrograms>(BigInt(value)));

/** What a note may say, by field. */
const SAID = {
  line: id,
  material: reference("material"),
  called: orElse(name, null),
  lot: orElse(id, null),
  net: stock,
  gross: mayBeNothing,
  tare: mayBeNothing,
  more: orElse(yesOrNo, false),
  why: orElse(WHY, null),
  strikes: KEY,
  phase: orElse(phase, null),
  celsius,
  ph,
  meter: orElse(name, null),
  calibrated: orElse(day, null),
  code: name,
  what: name,
  asked: note(2000),
  found: note(5000),
  within: orElse(yesOrNo, false),
  units: units(0),
  leftOver: orElse(mass, null),
  bestBefore: orElse(day, null),
  held: orElse(yesOrNo, false),
  whyNotWeighed: orElse(WHY, null),
  whyMoreFilled: orElse(WHY, null),
  whyOutOfDate: orElse(WHY, null),
  whyNotChecked: orElse(WHY, null),
};
const MARK = {
  key: KEY,
  at: instant,
  who: name,
  kind: oneOf(NOTE_KINDS as [BenchNote["kind"], ...BenchNote["kind"][]]),
};

/** Of each kind the fields that it has. */
const FIELDS_OF = Object.fromEntries(
  NOTE_KINDS.map((kind) => [
    kind,
    { ...MARK, ...Object.fromEntries(NOTE_FIELDS[kind].map((field) => [field, SAID[field]])) },
  ]),
);

export function readNotes(list: readonly Json[], path: string, faults: FaultList): readonly BenchNote[] {
  const kinds = readEntries(
    list.map((value) => (value instanceof Map ? new Map([["kind", value.get("kind") ?? null]]) : value)),
    { kind: MARK.kind },
    path,
    faults,
  );
  return kinds.flatMap(({ fields: { kind } }, at): readonly BenchNote[] => {
    const fields = kind === undefined ? undefined : FIELDS_OF[kind];
    if (fields === undefined) return [];
    const entry = readEntry(list[at] ?? null, fields, `${path}[${String(at)}]`, faults);
    const read = entry && complete(entry.fields);
    // Which fields a kind has is data, and of each its schema has read what it may hold.
    return read ? [read as unknown as BenchNote] : [];
  });
}
