/** Why a note is not written down: closed, with the figures that a person needs. @rule BENCH-3 to BENCH-8 */
import { byId } from "@/lib/domain/index-by-id";
import type { Stock } from "@/lib/domain/quantity";
import type { Product, Workshop } from "@/lib/domain/workshop";
import { type Batch, type BatchState, type BenchNote, type NoteOf, type SheetLine, stateOf } from "./batch";
import { type Judged, judged, linesWeighed, massIn } from "./weights";

export type NoteRefused =
  | { readonly kind: "not now"; readonly state: BatchState }
  | { readonly kind: "no such line" }
  | { readonly kind: "lot is needed"; readonly line: SheetLine }
  | { readonly kind: "lot of another material"; readonly lot: string; readonly is: string; readonly wanted: string }
  /** Something of the line was written down that whoever wrote this had not seen: on another device, or the same twice. */
  | { readonly kind: "weighed already"; readonly line: SheetLine; readonly by: NoteOf<"weighed"> }
  | { readonly kind: "out of tolerance"; readonly line: SheetLine; readonly judged: Judged }
  | { readonly kind: "no such note" }
  | { readonly kind: "struck already" }
  | { readonly kind: "lines not weighed"; readonly lines: readonly SheetLine[] }
  | { readonly kind: "more than was weighed"; readonly weighed: Stock; readonly holds: Stock }
  | { readonly kind: "reason is needed" };

/** A note as somebody wants to write it down. */
export interface NoteToWrite {
  readonly note: BenchNote;
  /** The keys of all that whoever writes it has seen of the same line. */
  readonly seen: readonly string[];
}

/** Null where nothing is against it but what the ledger may say. */
export function refusedNote(batch: Batch, { note, seen }: NoteToWrite, workshop: Workshop): NoteRefused | null {
  const state = stateOf(batch);
  switch (note.kind) {
    case "weighed":
      return state === "open" ? refusedWeight(batch, note, seen, workshop) : { kind: "not now", state };
    case "added":
      return state === "open" ? refusedLot(note.lot, note.material, workshop) : { kind: "not now", state };
    case "struck":
      return state === "open" ? refusedStrike(batch, note) : { kind: "not now", state };
    case "temperature":
    case "acidity":
    case "seen":
      return state === "open" || state === "held" ? null : { kind: "not now", state };
    case "closed":
      return state === "open" ? refusedClosing(batch, note, workshop) : { kind: "not now", state };
    case "released":
      return state === "held" ? null : { kind: "not now", state };
    case "rejected":
      if (state !== "held") return { kind: "not now", state };
      return note.why === null ? { kind: "reason is needed" } : null;
    case "annexed":
      return null;
  }
}

function refusedWeight(
  batch: Batch,
  note: NoteOf<"weighed">,
  seen: readonly string[],
  workshop: Workshop,
): NoteRefused | null {
  const found = linesWeighed(batch).find(({ line }) => line.key === note.line);
  if (found === undefined) return { kind: "no such line" };
  const { line, weights, total, state } = found;
  const unseen = weights.find(({ key }) => !seen.includes(key)) ?? (state === "done" ? weights.at(-1) : undefined);
  if (unseen !== undefined) return { kind: "weighed already", line, by: unseen };
  if (line.of.kind === "material") {
    if (note.lot === null) return { kind: "lot is needed", line };
    const other = refusedLot(note.lot, line.of.id, workshop);
    if (other !== null) return other;
  }
  const after = judged(line, total, note.net);
  const isShort = note.more && after.off <= 0n;
  return after.within || isShort || note.why !== null ? null : { kind: "out of tolerance", line, judged: after };
}

/** A lot that there is not is for the ledger to refuse. */
function refusedLot(lot: string | null, material: string, { lots, materials }: Workshop): NoteRefused | null {
  const found = lots.find(({ id }) => id === lot);
  if (found === undefined || found.material === material) return null;
  // A material may have been taken out of the Book since the sheet was made.
  const named = (id: string): string => materials.find((each) => each.id === id)?.name ?? id;
  return { kind: "lot of another material", lot: found.id, is: named(found.material), wanted: named(material) };
}

/** What closes a batch, and what strikes, is not struck itself: it is said anew, or annexed. */
function refusedStrike({ notes }: Batch, { strikes, why }: NoteOf<"struck">): NoteRefused | null {
  const struck = notes.find(({ key }) => key === strikes);
  if (struck === undefined || struck.kind === "struck" || struck.kind === "annexed") return { kind: "no such note" };
  if (notes.some((note) => note.kind === "struck" && note.strikes === strikes)) return { kind: "struck already" };
  return why === null ? { kind: "reason is needed" } : null;
}

function refusedClosing(batch: Batch, note: NoteOf<"closed">, workshop: Workshop): NoteRefused | null {
  // Whatever is unusual is said by whoever closes it; then it stands in the record.
  if (note.why !== null) return null;
  if (note.units === 0n) return { kind: "reason is needed" };
  const open = linesWeighed(batch).filter(({ state }) => state !== "done");
  if (open.length > 0) return { kind: "lines not weighed", lines: open.map(({ line }) => line) };
  const holds = heldBy(byId("product", workshop.products)(batch.run.product), note);
  const weighed = massIn(batch);
  return holds > weighed ? { kind: "more than was weighed", weighed, holds } : null;
}

/** What so many filled units hold, and what was left over. */
export const heldBy = ({ fill }: Product, { units, leftOver }: Pick<NoteOf<"closed">, "units" | "leftOver">): Stock =>
  (units * fill.quantity + (leftOver ?? 0n)) as Stock;
