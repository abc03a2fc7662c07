/** Batches as the rows of the store, and the rows as them. */
import type { Desk } from "@/lib/domain/desk";
import { type Batch, type BenchNote, NOTE_FIELDS, type Said } from "@/lib/domain/bench/batch";
import { ingredientCells, within } from "./rows-of-workshop";
import type { DeskRows, Row } from "./tables";
import { ingredientOf, inner } from "./workshop-of-rows";

/** What a note of another kind would say. */
const UNSAID: { readonly [Key in keyof Said]: null } = {
  line: null,
  material: null,
  lot: null,
  net: null,
  gross: null,
  tare: null,
  more: null,
  why: null,
  strikes: null,
  phase: null,
  celsius: null,
  ph: null,
  meter: null,
  calibrated: null,
  what: null,
  found: null,
  units: null,
  leftOver: null,
  bestBefore: null,
  held: null,
};

export const rowsOfBatches = (batches: Desk["batches"]) => ({
  batches: batches.map(({ run: { id: run, ...planned }, versions: _v, lines: _l, notes: _n, ...batch }, position) => ({
    ...planned,
    ...batch,
    run,
    position,
  })),
  batchVersions: within(
    batches,
    ({ versions }: Batch) => versions,
    ({ run }, version, position) => ({ ...version, run: run.id, position }),
  ),
  batchLines: within(
    batches,
    ({ lines }: Batch) => lines,
    ({ run }, { of, ...line }, position) => ({ ...line, ...ingredientCells(of), run: run.id, position }),
  ),
  benchNotes: within(
    batches,
    ({ notes }: Batch) => notes,
    ({ run }, note, position) => ({ ...UNSAID, ...note, run: run.id, position }),
  ),
});

type BenchRows = Pick<DeskRows, "batches" | "batchVersions" | "batchLines" | "benchNotes">;

export function batchesOfRows(rows: BenchRows): Desk["batches"] {
  const versionsOf = inner(rows.batchVersions, ({ run }) => run);
  const linesOf = inner(rows.batchLines, ({ run }) => run);
  const notesOf = inner(rows.benchNotes, ({ run }) => run);
  return rows.batches.map(({ run, position: _position, product, date, sequence, units, ...batch }) => ({
    ...batch,
    run: { id: run, product, date, sequence, units },
    versions: versionsOf(run).map(({ formula, number }) => ({ formula, number })),
    lines: linesOf(run).map(({ key, part, material, premix, called, phase, target, tolerance }) => ({
      key,
      part,
      of: ingredientOf(material, premix),
      called,
      phase,
      target,
      tolerance,
    })),
    notes: notesOf(run).map(noteOf),
  }));
}

/** CHECKs hold that a note of a kind says what its kind says. */
function noteOf({ key, at, who, kind, ...said }: Row<"benchNotes">): BenchNote {
  const says = Object.fromEntries(NOTE_FIELDS[kind].map((field) => [field, said[field]]));
  return { key, at, who, kind, ...says } as BenchNote;
}
