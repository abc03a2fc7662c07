/** Batches at the bench as the file holds them. @rule FILE-4, BENCH-4 */
import { type Batch, type BenchNote, NOTE_FIELDS, type SheetLine, type StartedAs } from "@/lib/domain/bench/batch";
import { isoDate, type Day } from "@/lib/domain/calendar";
import type { KeptLabel } from "@/lib/domain/label/kept-label";
import { amountText } from "@/lib/edge/written-figures";

type Written = Readonly<Record<string, unknown>>;

export const batchWritten = ({ run, as, versions, lines, notes, labels, ...batch }: Batch): Written => ({
  id: run.id,
  product: run.product,
  date: isoDate(run.date),
  sequence: run.sequence === 0 ? undefined : run.sequence,
  units: Number(run.units),
  code: batch.code,
  startedOn: isoDate(batch.startedOn),
  startedAt: batch.startedAt,
  startedBy: batch.startedBy,
  despite: batch.despite ?? undefined,
  as: as === null ? undefined : asWritten(as),
  versions:
    versions.length === 0
      ? undefined
      : versions.map(({ formula, number, called }) => ({ formula, number, called: called ?? undefined })),
  lines: lines.map(lineWritten),
  notes: notes.length === 0 ? undefined : notes.map(noteWritten),
  labels: labels.length === 0 ? undefined : labels.map(keptLabelWritten),
});

const asWritten = ({ workshop, product, fill, bulk, step }: StartedAs): Written => ({
  workshop,
  product,
  fill: amountText(fill.typed),
  fillMass: Number(fill.quantity),
  bulk: Number(bulk),
  step: Number(step),
});

const keptLabelWritten = ({ label, market, parts, code, size }: KeptLabel): Written => ({
  label,
  market,
  code: code?.kind,
  codeText: code?.text,
  gs1: code?.isGs1 === true ? true : undefined,
  width: size?.width,
  height: size?.height,
  parts: parts.map(({ called, text, isBold }) => ({ called, text, bold: isBold ? true : undefined })),
});

const lineWritten = ({ of, target, tolerance, phase, ...line }: SheetLine): Written => ({
  key: line.key,
  part: line.part,
  [of.kind === "material" ? "material" : "premix"]: of.id,
  called: line.called,
  phase: phase ?? undefined,
  target: Number(target),
  tolerance: Number(tolerance),
});

/** Days are the only fields of a note that are numbers. */
const DAYS: ReadonlySet<string> = new Set(["calibrated", "bestBefore"]);

function noteWritten(note: BenchNote): Written {
  const said = note as unknown as Readonly<Record<string, unknown>>;
  const fields = NOTE_FIELDS[note.kind].map((field) => [field, valueWritten(field, said[field])]);
  return { key: note.key, at: note.at, who: note.who, kind: note.kind, ...(Object.fromEntries(fields) as Written) };
}

function valueWritten(field: string, value: unknown): unknown {
  if (value === null || value === false) return undefined;
  if (typeof value === "bigint") return Number(value);
  return DAYS.has(field) ? isoDate(value as Day) : value;
}
