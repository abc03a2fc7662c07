/** Batches at the bench as the past in the file holds them. @rule FILE-5, BENCH-1, BENCH-4 */
import {
  type Batch,
  type BenchNote,
  type Instant,
  NOTE_FIELDS,
  NOTE_KINDS,
  type SheetLine,
} from "@/lib/domain/bench/batch";
import type { FormulaLine } from "@/lib/domain/workshop";
import type { ClosedRun } from "@/lib/domain/desk";
import type { Posted } from "@/lib/domain/ledger/posting";
import { LARGEST_FIGURE, type Micrograms, quantity, type Stock } from "@/lib/domain/quantity";
import type { Run } from "@/lib/domain/workshop";
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
  sequence,
  textField,
  units,
  wholeNumber,
  yesOrNo,
} from "@/lib/edge/fields";
import { celsius, ph } from "@/lib/edge/figure-fields";
import type { Json } from "@/lib/edge/json-tree";
import { complete, indexById, readEntries, readEntry, records, referredTo } from "@/lib/edge/record-reading";
import { quoted } from "@/lib/edge/shown-value";
import { type BookIndexes, readVersionsUsed } from "./formula-history";
import type { ProductIndex } from "./products";

const LARGEST = Number(LARGEST_FIGURE);
const KEY = note(300);
const WHY = note(1000);

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
const mass = wholeNumber(0, LARGEST).transform((value) => quantity<Micrograms>(BigInt(value)));

/** What a note may say, by field. */
const SAID = {
  line: id,
  material: reference("material"),
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
  what: name,
  found: note(5000),
  units: units(0),
  leftOver: orElse(mass, null),
  bestBefore: orElse(day, null),
  held: orElse(yesOrNo, false),
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

const BATCH = {
  id,
  product: reference("product"),
  date: day,
  sequence: orElse(sequence, 0),
  units: units(1),
  code: name,
  startedOn: day,
  startedAt: instant,
  startedBy: name,
  despite: orElse(WHY, null),
  versions: orElse(records, []),
  lines: records,
  notes: orElse(records, []),
};
const LINE = {
  key: note(20),
  part: reference("formula"),
  material: orElse(id, null),
  premix: orElse(id, null),
  called: name,
  phase: orElse(phase, null),
  target: mass,
  tolerance: mass,
};

export function readBatches(
  list: readonly Json[] | undefined,
  indexes: BookIndexes & { readonly products: ProductIndex },
  faults: FaultList,
): readonly Batch[] {
  const entries = readEntries(list, BATCH, "batches", faults);
  indexById(list, entries, faults);
  const codes = new Set<string>();
  return entries.flatMap(({ path, fields }): readonly Batch[] => {
    referredTo(indexes.products, "product", fields.product, `${path}.product`, faults);
    const read = complete(fields);
    if (!read) return [];
    const { id: run, product, date, sequence: place, units: planned, versions, lines, notes, ...batch } = read;
    if (codes.has(batch.code)) faults.tell(`${path}.code`, `another batch has the code ${quoted(batch.code)} already`);
    codes.add(batch.code);
    return [
      {
        ...batch,
        run: { id: run, product, date, sequence: place, units: planned } satisfies Run,
        versions: readVersionsUsed(versions, `${path}.versions`, indexes, faults),
        lines: readLines(lines, `${path}.lines`, faults),
        notes: readNotes(notes, `${path}.notes`, faults),
      },
    ];
  });
}

function readLines(list: readonly Json[], path: string, faults: FaultList): readonly SheetLine[] {
  const keys = new Set<string>();
  return readEntries(list, LINE, path, faults).flatMap(({ path: at, fields }): readonly SheetLine[] => {
    const read = complete(fields);
    if (!read) return [];
    const { material, premix, ...line } = read;
    const of = ofLine(material, premix);
    if (of === null) faults.tell(at, "names either a material or a premix");
    if (keys.has(line.key)) faults.tell(`${at}.key`, `another line has the key ${quoted(line.key)} already`);
    keys.add(line.key);
    return of === null ? [] : [{ ...line, of }];
  });
}

function ofLine(material: string | null, premix: string | null): FormulaLine["of"] | null {
  if (material !== null && premix === null) return { kind: "material", id: material };
  return premix !== null && material === null ? { kind: "formula", id: premix } : null;
}

function readNotes(list: readonly Json[], path: string, faults: FaultList): readonly BenchNote[] {
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

/** The batches against the rest of the past: what was weighed is posted, and what was closed is closed. @rule BENCH-5, BENCH-7 */
export function checkBatches(
  batches: readonly Batch[],
  past: { readonly closedRuns: readonly ClosedRun[]; readonly postings: readonly Posted[] },
  planned: ReadonlySet<string>,
  faults: FaultList,
): void {
  const posted = new Set(past.postings.map(({ id: key }) => key));
  checkNotes(batches, faults);
  const closed = new Set(past.closedRuns.map(({ run }) => run.id));
  batches.forEach(({ run, notes }, at) => {
    const path = `batches[${String(at)}]`;
    const isClosed = notes.some(({ kind }) => kind === "closed");
    if (isClosed !== closed.has(run.id) || (!isClosed && !planned.has(run.id)))
      faults.tell(`${path}.id`, "an open batch is of a planned run, a closed one of a run that is closed");
    notes.forEach((each, index) => {
      const moves = each.kind === "added" || (each.kind === "weighed" && each.lot !== null) || each.kind === "closed";
      if (moves && !posted.has(each.key))
        faults.tell(`${path}.notes[${String(index)}].key`, `nothing is posted under ${quoted(each.key)}`);
    });
  });
}

/** Each note stands once, names a line of its sheet, and strikes one before it. */
function checkNotes(batches: readonly Batch[], faults: FaultList): void {
  const keys = new Set<string>();
  batches.forEach(({ lines, notes }, at) => {
    notes.forEach((each, index) => {
      const path = `batches[${String(at)}].notes[${String(index)}]`;
      if (keys.has(each.key)) faults.tell(`${path}.key`, `another note has the key ${quoted(each.key)} already`);
      keys.add(each.key);
      if (each.kind === "weighed" && !lines.some(({ key }) => key === each.line))
        faults.tell(`${path}.line`, `the sheet has no line ${quoted(each.line)}`);
      if (each.kind === "struck" && !notes.slice(0, index).some(({ key }) => key === each.strikes))
        faults.tell(`${path}.strikes`, `no note before it has the key ${quoted(each.strikes)}`);
    });
  });
}
