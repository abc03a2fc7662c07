/** Why a note is not written down: closed, with the figures that a person needs. @rule BENCH-3 to BENCH-8 */
import type { Books } from "@/lib/domain/desk";
import type { FormulaCheck } from "@/lib/domain/formula-book/facts";
import type { DecimalText, Stock } from "@/lib/domain/quantity";
import type { Workshop } from "@/lib/domain/workshop";
import { checksAsked, checksFound, isMeasured, isWithin } from "./asked-checks";
import {
  type Batch,
  type BatchState,
  type BenchNote,
  type NoteOf,
  type SheetLine,
  type StartedAs,
  stateOf,
} from "./batch";
import { formulaAsStarted, startedAs } from "./started-as";
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
  | { readonly kind: "reason is needed" }
  /** What the formula asks to be looked at, and nobody has, before it is released. */
  | { readonly kind: "not checked"; readonly checks: readonly FormulaCheck[] }
  | { readonly kind: "no such check" }
  | { readonly kind: "not a figure"; readonly check: FormulaCheck }
  | { readonly kind: "outside its limits"; readonly check: FormulaCheck; readonly found: string };

/** A note as somebody wants to write it down. */
export interface NoteToWrite {
  readonly note: BenchNote;
  /** The keys of all that whoever writes it has seen of the same line. */
  readonly seen: readonly string[];
}

/** Null where nothing is against it but what the ledger may say. */
export function refusedNote(batch: Batch, { note, seen }: NoteToWrite, books: Books): NoteRefused | null {
  const state = stateOf(batch);
  const { workshop } = books;
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
    case "checked":
      return state === "open" || state === "held" ? refusedCheck(batch, note, books) : { kind: "not now", state };
    case "recoded":
      if (state !== "open") return { kind: "not now", state };
      return note.why === null ? { kind: "reason is needed" } : null;
    case "closed":
      return state === "open" ? refusedClosing(batch, note, books) : { kind: "not now", state };
    case "released":
      return state === "held" ? refusedUnchecked(batch, note, books) : { kind: "not now", state };
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

/** What closes a batch, what strikes, and a code given are not struck themselves: they are said anew, or annexed. */
const STANDS: ReadonlySet<BenchNote["kind"]> = new Set<BenchNote["kind"]>(["struck", "annexed", "recoded"]);

function refusedStrike({ notes }: Batch, { strikes, why }: NoteOf<"struck">): NoteRefused | null {
  const struck = notes.find(({ key }) => key === strikes);
  if (struck === undefined || STANDS.has(struck.kind)) return { kind: "no such note" };
  if (notes.some((note) => note.kind === "struck" && note.strikes === strikes)) return { kind: "struck already" };
  return why === null ? { kind: "reason is needed" } : null;
}

/** Each thing that is unusual asks for a reason of its own, and every reason stands in the record. @rule BENCH-7 */
function refusedClosing(batch: Batch, note: NoteOf<"closed">, books: Books): NoteRefused | null {
  if (note.units === 0n) return note.why === null ? { kind: "reason is needed" } : null;
  const open = linesWeighed(batch).filter(({ state }) => state !== "done");
  if (open.length > 0 && note.whyNotWeighed === null)
    return { kind: "lines not weighed", lines: open.map(({ line }) => line) };
  const holds = heldBy(startedAs(batch, books.workshop), note);
  const weighed = massIn(batch);
  if (holds > weighed && note.whyMoreFilled === null) return { kind: "more than was weighed", weighed, holds };
  // What waits for a second look is checked by then.
  return note.held ? null : refusedUnchecked(batch, note, books);
}

/** Nothing is released that nobody has looked at as its formula asks, unless a reason says why. @rule BENCH-11 */
function refusedUnchecked(
  batch: Batch,
  { whyNotChecked }: Pick<NoteOf<"released">, "whyNotChecked">,
  books: Books,
): NoteRefused | null {
  if (whyNotChecked !== null) return null;
  const asked = checksAsked(formulaAsStarted(books, batch));
  const checks = checksFound(batch, asked).flatMap(({ check, isAnswered }) => (isAnswered ? [] : [check]));
  return checks.length === 0 ? null : { kind: "not checked", checks };
}

/** What is measured is judged by its limits, whatever whoever wrote it down says of it. @rule BENCH-11 */
function refusedCheck(batch: Batch, note: NoteOf<"checked">, books: Books): NoteRefused | null {
  const check = checksAsked(formulaAsStarted(books, batch)).find(({ what }) => what === note.what);
  if (check === undefined) return { kind: "no such check" };
  if (isMeasured(check) && !/^\d{1,30}(\.\d{1,30})?$/.test(note.found)) return { kind: "not a figure", check };
  const within = isMeasured(check) ? isWithin(check, note.found as DecimalText) : note.within;
  // The limits are others than those that the form showed.
  if (within !== note.within) return { kind: "no such check" };
  return within || note.why !== null ? null : { kind: "outside its limits", check, found: note.found };
}

/** What so many filled units hold, and what was left over. */
export const heldBy = ({ fill }: StartedAs, { units, leftOver }: Pick<NoteOf<"closed">, "units" | "leftOver">): Stock =>
  (units * fill.quantity + (leftOver ?? 0n)) as Stock;
