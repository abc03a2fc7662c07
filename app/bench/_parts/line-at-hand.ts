/** A line of the sheet with what is written of it: in the books, and waiting on this device. */
import type { Instant, NoteOf } from "@/lib/domain/bench/batch";
import { readBenchNote } from "@/lib/edge/forms/bench-note";
import type { LineOnPage } from "./bench-view";
import type { QueuedNote } from "./note-queue";

export interface LineAtHand extends LineOnPage {
  readonly all: readonly NoteOf<"weighed">[];
  readonly total: bigint;
  readonly isDone: boolean;
}

/** The line with what waits of it on this device: another tap of it would count twice. */
export function atHand(line: LineOnPage, waiting: readonly QueuedNote[]): LineAtHand {
  const own = waiting.filter(({ fields }) => fields.kind === "weighed" && fields.line === line.line.key);
  const queued = own.flatMap(({ fields }) => weightIn(fields));
  const struck = new Set(waiting.flatMap(({ fields }) => (fields.kind === "struck" ? [fields.strikes] : [])));
  const all = [...line.weights, ...queued].filter(({ key }) => !struck.has(key));
  return {
    ...line,
    all,
    total: all.reduce((sum, { net }) => sum + net, 0n),
    isDone: all.at(-1)?.more === false,
  };
}

function weightIn(fields: QueuedNote["fields"]): readonly NoteOf<"weighed">[] {
  const read = readBenchNote(fieldsAsForm(fields), (fields.at ?? "") as Instant);
  return read && "asked" in read && read.asked.note.kind === "weighed" ? [read.asked.note] : [];
}

/** Fields as the reader of a form takes them. */
export const fieldsAsForm = (fields: Readonly<Record<string, string>>): Pick<FormData, "get" | "keys"> => ({
  get: (name: string) => fields[name] ?? null,
  keys: () => Object.keys(fields).values(),
});
