/** Batches at the bench as the past in the file holds them. @rule FILE-5, BENCH-1, BENCH-4, BENCH-9 */
import { z } from "zod";
import type { Batch, SheetLine, StartedAs, VersionInBatch } from "@/lib/domain/bench/batch";
import { UNITS } from "@/lib/domain/quantity";
import type { FormulaLine, Run } from "@/lib/domain/workshop";
import type { FaultList } from "@/lib/edge/fault-list";
import { day, id, name, note, orElse, phase, reference, sequence, units, wanted, wholeNumber } from "@/lib/edge/fields";
import { amount } from "@/lib/edge/figure-fields";
import type { Json } from "@/lib/edge/json-tree";
import { complete, indexById, readEntries, readEntry, records, referredTo } from "@/lib/edge/record-reading";
import { quoted } from "@/lib/edge/shown-value";
import { instant, mass, readNotes, WHY } from "./bench-notes-reading";
import type { BookIndexes } from "./formula-history";
import { readKeptLabels } from "./kept-labels-reading";
import type { ProductIndex } from "./products";

const anObject = z.custom<Json>((value) => value instanceof Map, { error: wanted("an object in braces") });

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
  as: orElse(anObject, null),
  versions: orElse(records, []),
  lines: records,
  notes: orElse(records, []),
  labels: orElse(records, []),
};
const AS = { workshop: name, product: name, fill: amount, fillMass: mass, bulk: mass, step: mass };
const VERSION = { formula: reference("formula"), number: wholeNumber(1, 1_000_000), called: orElse(name, null) };
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
    const {
      id: run,
      product,
      date,
      sequence: place,
      units: planned,
      versions,
      lines,
      notes,
      labels,
      as,
      ...batch
    } = read;
    if (codes.has(batch.code)) faults.tell(`${path}.code`, `another batch has the code ${quoted(batch.code)} already`);
    codes.add(batch.code);
    return [
      {
        ...batch,
        run: { id: run, product, date, sequence: place, units: planned } satisfies Run,
        as: as === null ? null : readAs(as, `${path}.as`, faults),
        versions: readVersionsOf(versions, `${path}.versions`, indexes, faults),
        lines: readLines(lines, `${path}.lines`, faults),
        notes: readNotes(notes, `${path}.notes`, faults),
        labels: readKeptLabels(labels, `${path}.labels`, faults),
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

function readAs(value: Json, path: string, faults: FaultList): StartedAs | null {
  const entry = readEntry(value, AS, path, faults);
  const read = entry && complete(entry.fields);
  if (!read) return null;
  const { fill, fillMass, ...as } = read;
  if (UNITS[fill.unit].kind === "count") faults.tell(`${path}.fill`, "must be a mass or a volume, not pieces");
  for (const key of ["fillMass", "bulk", "step"] as const) if (read[key] === 0n) faults.tell(`${path}.${key}`, ABOVE_0);
  return { ...as, fill: { typed: fill, quantity: fillMass } };
}

const ABOVE_0 = "must be above 0";

const readVersionsOf = (
  list: readonly Json[],
  path: string,
  { formulas }: BookIndexes,
  faults: FaultList,
): readonly VersionInBatch[] =>
  readEntries(list, VERSION, path, faults).flatMap(({ path: at, fields }): readonly VersionInBatch[] => {
    referredTo(formulas, "formula", fields.formula, `${at}.formula`, faults);
    const used = complete(fields);
    return used ? [used] : [];
  });
