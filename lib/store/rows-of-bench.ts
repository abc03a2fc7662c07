/** Batches as the rows of the store, and the rows as them. */
import type { Desk } from "@/lib/domain/desk";
import { type Batch, type BenchNote, NOTE_FIELDS, type Said, type StartedAs } from "@/lib/domain/bench/batch";
import type { KeptLabel } from "@/lib/domain/label/kept-label";
import { measuredOrNull } from "./columns";
import { ingredientCells, within } from "./rows-of-workshop";
import type { DeskRows, Row } from "./tables";
import { ingredientOf, inner } from "./workshop-of-rows";

/** What a note of another kind would say. */
const UNSAID: { readonly [Key in keyof Said]: null } = {
  line: null,
  material: null,
  called: null,
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
  code: null,
  what: null,
  asked: null,
  found: null,
  within: null,
  units: null,
  leftOver: null,
  bestBefore: null,
  held: null,
  whyNotWeighed: null,
  whyMoreFilled: null,
  whyOutOfDate: null,
  whyNotChecked: null,
};

export const rowsOfBatches = (batches: Desk["batches"]) => ({
  batches: batches.map(
    ({ run: { id: run, ...planned }, as, versions: _v, lines: _l, notes: _n, labels: _k, ...batch }, position) => ({
      ...planned,
      ...batch,
      ...asCells(as),
      run,
      position,
    }),
  ),
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
  batchLabels: within(
    batches,
    ({ labels }: Batch) => labels,
    ({ run }, label, position) => ({ ...labelCells(label), run: run.id, position }),
  ),
  batchLabelParts: batches.flatMap(({ run, labels }) =>
    labels.flatMap(({ parts }, label) => parts.map((part, position) => ({ ...part, run: run.id, label, position }))),
  ),
});

const asCells = (as: StartedAs | null) => ({
  workshopCalled: as?.workshop ?? null,
  productCalled: as?.product ?? null,
  fill: as?.fill.quantity ?? null,
  fillNumber: as?.fill.typed.number ?? null,
  fillUnit: as?.fill.typed.unit ?? null,
  bulk: as?.bulk ?? null,
  step: as?.step ?? null,
});

type AsCells = ReturnType<typeof asCells>;

const labelCells = ({ label, market, code, size }: KeptLabel) => ({
  label,
  market,
  code: code?.kind ?? null,
  codeText: code?.text ?? null,
  isGs1: code?.isGs1 ?? null,
  width: size?.width ?? null,
  height: size?.height ?? null,
});

type BenchRows = Pick<
  DeskRows,
  "batches" | "batchVersions" | "batchLines" | "benchNotes" | "batchLabels" | "batchLabelParts"
>;

export function batchesOfRows(rows: BenchRows): Desk["batches"] {
  const versionsOf = inner(rows.batchVersions, ({ run }) => run);
  const linesOf = inner(rows.batchLines, ({ run }) => run);
  const notesOf = inner(rows.benchNotes, ({ run }) => run);
  const labelsOf = labelsOfRows(rows);
  return rows.batches.map(({ run, product, date, sequence, units, ...row }) => ({
    run: { id: run, product, date, sequence, units },
    code: row.code,
    startedOn: row.startedOn,
    startedAt: row.startedAt,
    startedBy: row.startedBy,
    despite: row.despite,
    as: asOf(row),
    versions: versionsOf(run).map(({ formula, number, called }) => ({ formula, number, called })),
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
    labels: labelsOf(run),
  }));
}

/** A CHECK holds that all of it is there, or nothing. */
function asOf({ workshopCalled, productCalled, fill, fillNumber, fillUnit, bulk, step }: AsCells): StartedAs | null {
  if (workshopCalled === null || productCalled === null || bulk === null || step === null) return null;
  const filled = measuredOrNull(fill, fillNumber, fillUnit);
  return filled && { workshop: workshopCalled, product: productCalled, fill: filled, bulk, step };
}

function labelsOfRows(rows: Pick<BenchRows, "batchLabels" | "batchLabelParts">): (run: string) => readonly KeptLabel[] {
  const labelsOf = inner(rows.batchLabels, ({ run }) => run);
  const partsOf = inner(rows.batchLabelParts, ({ run, label }) => `${String(label)} ${run}`);
  return (run) =>
    labelsOf(run).map(({ position, label, market, code, codeText, isGs1, width, height }) => ({
      label,
      market,
      parts: partsOf(`${String(position)} ${run}`).map(({ called, text, isBold }) => ({ called, text, isBold })),
      code: code === null || codeText === null ? null : { text: codeText, isGs1: isGs1 === true, kind: code },
      size: width === null || height === null ? null : { width, height },
    }));
}

/** CHECKs hold that a note of a kind says what its kind says. */
function noteOf({ key, at, who, kind, ...said }: Row<"benchNotes">): BenchNote {
  const says = Object.fromEntries(NOTE_FIELDS[kind].map((field) => [field, said[field]]));
  return { key, at, who, kind, ...says } as BenchNote;
}
