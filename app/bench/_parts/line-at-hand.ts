/** The sheet with what is written of it: in the books, and waiting on this device. */
import { type CheckFound, checksFound } from "@/lib/domain/bench/asked-checks";
import { type BenchNote, type Instant, type NoteOf, standing } from "@/lib/domain/bench/batch";
import { drawnByLot, isWithinTolerance } from "@/lib/domain/bench/weights";
import { readBenchNote } from "@/lib/edge/forms/bench-note";
import type { BenchOnPage, LineOnPage, PhaseOnPage } from "./bench-view";
import type { QueuedNote } from "./note-queue";

export interface LineAtHand extends LineOnPage {
  readonly all: readonly NoteOf<"weighed">[];
  readonly total: bigint;
  /** Weighed less target, µg. */
  readonly off: bigint;
  readonly isDone: boolean;
  /** Whether what stands of it is outside its tolerance, whatever follows. */
  readonly isOut: boolean;
}

export interface BenchAtHand {
  readonly sections: readonly (Omit<PhaseOnPage, "lines"> & { readonly lines: readonly LineAtHand[] })[];
  readonly lines: readonly LineAtHand[];
  /** The line that is weighed now. */
  readonly open: (LineAtHand & { readonly section: PhaseOnPage }) | null;
  readonly checks: readonly CheckFound[];
}

/** The batch with what waits of it on this device: another tap of that would count twice. */
export function benchAtHand(view: BenchOnPage, waiting: readonly QueuedNote[]): BenchAtHand {
  const queued = waiting.flatMap(({ fields }) => noteIn(fields));
  const notes = [...view.notes, ...queued];
  const weights = standing({ notes }, "weighed");
  // What waits to leave each lot: what is written in the books has left it.
  const drawn = drawnByLot({ notes: queued });
  const sections = view.sections.map((section) => ({
    ...section,
    lines: section.lines.map((line) => atHand(line, weights, drawn)),
  }));
  const opens = sections.find(({ lines }) => lines.some(({ isDone }) => !isDone));
  const open = opens?.lines.find(({ isDone }) => !isDone);
  return {
    sections,
    lines: sections.flatMap(({ lines }) => lines),
    open: open === undefined || opens === undefined ? null : { ...open, section: opens },
    checks: checksFound({ notes }, view.checks),
  };
}

function atHand(
  line: LineOnPage,
  weights: readonly NoteOf<"weighed">[],
  drawn: ReadonlyMap<string, bigint>,
): LineAtHand {
  const { key, target, tolerance } = line.line;
  const all = weights.filter((weight) => weight.line === key);
  const total = all.reduce((sum, { net }) => sum + net, 0n);
  const isDone = all.at(-1)?.more === false;
  const off = total - target;
  return {
    ...line,
    lots: line.lots.map((lot) => ({ ...lot, remaining: lot.remaining - (drawn.get(lot.id) ?? 0n) })),
    all,
    total,
    off,
    isDone,
    isOut: !isWithinTolerance(off, tolerance) && (isDone || off > 0n),
  };
}

function noteIn(fields: QueuedNote["fields"]): readonly BenchNote[] {
  const read = readBenchNote(fieldsAsForm(fields), (fields.at ?? "") as Instant);
  return read && "asked" in read ? [read.asked.note] : [];
}

/** Fields as the reader of a form takes them. */
export const fieldsAsForm = (fields: Readonly<Record<string, string>>): Pick<FormData, "get" | "keys"> => ({
  get: (name: string) => fields[name] ?? null,
  keys: () => Object.keys(fields).values(),
});
