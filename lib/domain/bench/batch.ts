/**
 * A batch at the bench: what was to be weighed, frozen when it was started, and what was written down, in the order in
 * which it was. Nothing that was written is ever changed: a mistake is struck by a later note. @rule BENCH-1, BENCH-4
 */
import type { Day } from "@/lib/domain/calendar";
import type { VersionUsed } from "@/lib/domain/formula-book/version-record";
import type { DecimalText, Micrograms, Stock, Units } from "@/lib/domain/quantity";
import type { FormulaLine, Run } from "@/lib/domain/workshop";

/** A moment as ISO 8601 in universal time, to the second: 2026-11-25T09:30:00Z. */
export type Instant = string & { readonly kind: "instant" };

export interface Batch {
  /** As it was planned when the batch was started. Its id is the batch's place in the ledger. */
  readonly run: Run;
  /** What stands on each jar; no other batch has it. @rule BENCH-2 */
  readonly code: string;
  readonly startedOn: Day;
  readonly startedAt: Instant;
  readonly startedBy: string;
  /** Why it was started although the checks warned; null where they did not. */
  readonly despite: string | null;
  /** Of its formula and every premix in it. @rule VERSION-2 */
  readonly versions: readonly VersionUsed[];
  /** In the order in which they are weighed: premixes that are made on the way first. */
  readonly lines: readonly SheetLine[];
  readonly notes: readonly BenchNote[];
}

/** What is to be weighed on one line, in whole steps of the balance. @rule WEIGH-1, WEIGH-4 */
export interface SheetLine {
  /** Unlike every other line's of the sheet. */
  readonly key: string;
  /** The formula that it is a line of: the product's, or a premix. */
  readonly part: string;
  /** A premix here is one that was made on the way: it is poured in, and nothing leaves the shelf for it. */
  readonly of: FormulaLine["of"];
  /** What it was called when the batch was started. */
  readonly called: string;
  readonly phase: string | null;
  readonly target: Micrograms;
  readonly tolerance: Micrograms;
}

/** Everything that a note can say. Each kind says some of it (NOTE_FIELDS). */
export interface Said {
  readonly line: string;
  readonly material: string;
  /** Null for a premix that is poured in: it was drawn when it was made. */
  readonly lot: string | null;
  /** Net, what leaves the shelf: µg, or pieces of what is counted. */
  readonly net: Stock;
  /** What the balance showed with the vessel, and the vessel alone; null where it was tared. */
  readonly gross: Stock | null;
  readonly tare: Stock | null;
  /** Whether more of the line follows, from another lot. */
  readonly more: boolean;
  readonly why: string | null;
  /** The key of the note that is struck. */
  readonly strikes: string;
  readonly phase: string | null;
  readonly celsius: DecimalText;
  readonly ph: DecimalText;
  readonly meter: string | null;
  /** The day on which the meter was last calibrated. */
  readonly calibrated: Day | null;
  readonly what: string;
  readonly found: string;
  readonly units: Units;
  /** What was left in the vessel and filled into nothing. */
  readonly leftOver: Micrograms | null;
  readonly bestBefore: Day | null;
  /** Whether it waits for a second look before it may be sold. */
  readonly held: boolean;
}

/** What each kind of note says, in the order of the record. */
export const NOTE_FIELDS = {
  weighed: ["line", "lot", "net", "gross", "tare", "more", "why"],
  added: ["material", "lot", "net", "why"],
  struck: ["strikes", "why"],
  temperature: ["phase", "celsius", "meter", "calibrated"],
  acidity: ["ph", "meter", "calibrated"],
  seen: ["what", "found"],
  closed: ["units", "leftOver", "bestBefore", "held", "why"],
  released: ["why"],
  rejected: ["why"],
  annexed: ["found"],
} as const satisfies Readonly<Record<string, readonly (keyof Said)[]>>;

export type NoteKind = keyof typeof NOTE_FIELDS;
export const NOTE_KINDS = Object.keys(NOTE_FIELDS) as readonly NoteKind[];

/** What stands with every note. */
export interface NoteMark {
  /** Made where it is written down: the same key is the same note, however often it is sent. @rule BENCH-5 */
  readonly key: string;
  readonly at: Instant;
  readonly who: string;
}

export type NoteOf<Kind extends NoteKind> = NoteMark & { readonly kind: Kind } & Pick<
    Said,
    (typeof NOTE_FIELDS)[Kind][number]
  >;
export type BenchNote = { readonly [Kind in NoteKind]: NoteOf<Kind> }[NoteKind];

/** Notes that the ledger has a posting of, under the same key. */
export const movesStock = ({ kind }: BenchNote): boolean => kind === "weighed" || kind === "added";

export type BatchState = "open" | "held" | "released" | "rejected" | "given up";

/** @rule BENCH-7, BENCH-8 */
export function stateOf({ notes }: Batch): BatchState {
  const last = notes.findLast((note) => note.kind === "closed" || note.kind === "released" || note.kind === "rejected");
  if (last?.kind === "released" || last?.kind === "rejected") return last.kind;
  if (last?.kind !== "closed") return "open";
  if (last.units === 0n) return "given up";
  return last.held ? "held" : "released";
}

/** The notes of a kind that were not struck, in their order. */
export function standing<Kind extends NoteKind>({ notes }: Batch, kind: Kind): readonly NoteOf<Kind>[] {
  const struck = new Set(notes.flatMap((note) => (note.kind === "struck" ? [note.strikes] : [])));
  return notes.filter((note): note is NoteOf<Kind> & BenchNote => note.kind === kind && !struck.has(note.key));
}

/** Batches that still draw on the shelf. */
export const openBatches = (batches: readonly Batch[]): readonly Batch[] =>
  batches.filter((batch) => stateOf(batch) === "open");
