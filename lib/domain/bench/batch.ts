/**
 * A batch at the bench: what was to be weighed, frozen when it was started, and what was written down, in the order in
 * which it was. Nothing that was written is ever changed: a mistake is struck by a later note. @rule BENCH-1, BENCH-4
 */
import type { Day } from "@/lib/domain/calendar";
import type { VersionUsed } from "@/lib/domain/formula-book/version-record";
import type { KeptLabel } from "@/lib/domain/label/kept-label";
import type { DecimalText, Measured, Micrograms, Stock, Units } from "@/lib/domain/quantity";
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
  /** What it was started as; null for a batch of before this was kept. @rule BENCH-9 */
  readonly as: StartedAs | null;
  /** Of its own formula, which comes first, and of every premix in it. @rule VERSION-2 */
  readonly versions: readonly VersionInBatch[];
  /** In the order in which they are weighed: premixes that are made on the way first. */
  readonly lines: readonly SheetLine[];
  readonly notes: readonly BenchNote[];
  /** The labels of its product as they were when it was released; none before that. @rule BENCH-9 */
  readonly labels: readonly KeptLabel[];
}

/** What a batch was started as, so that a later change of the Book changes no record. @rule BENCH-9 */
export interface StartedAs {
  /** The name of the workshop. */
  readonly workshop: string;
  /** The name of the product. */
  readonly product: string;
  readonly fill: Measured<Micrograms>;
  /** What was planned to be weighed for it. @rule NEED-1 */
  readonly bulk: Micrograms;
  /** Of the balance. */
  readonly step: Micrograms;
}

export interface VersionInBatch extends VersionUsed {
  /** What the formula was called; null for a batch of before this was kept. @rule BENCH-9 */
  readonly called: string | null;
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
  /** What the material was called when it was added; null in a note of before this was kept. @rule BENCH-9 */
  readonly called: string | null;
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
  /** The code that the batch has from then on. */
  readonly code: string;
  readonly what: string;
  /** What was asked of it, in the words that whoever looked has read. */
  readonly asked: string;
  readonly found: string;
  /** Whether what was found is as asked. */
  readonly within: boolean;
  readonly units: Units;
  /** What was left in the vessel and filled into nothing. */
  readonly leftOver: Micrograms | null;
  readonly bestBefore: Day | null;
  /** Whether it waits for a second look before it may be sold. */
  readonly held: boolean;
  /** One reason for each thing that a closing or a release asks about. @rule BENCH-7, BENCH-11 */
  readonly whyNotWeighed: string | null;
  readonly whyMoreFilled: string | null;
  readonly whyOutOfDate: string | null;
  readonly whyNotChecked: string | null;
}

/** What each kind of note says, in the order of the record. */
export const NOTE_FIELDS = {
  weighed: ["line", "lot", "net", "gross", "tare", "more", "why"],
  added: ["material", "called", "lot", "net", "why"],
  struck: ["strikes", "why"],
  temperature: ["phase", "celsius", "meter", "calibrated"],
  acidity: ["ph", "meter", "calibrated"],
  seen: ["what", "found"],
  checked: ["what", "asked", "found", "within", "why"],
  recoded: ["code", "why"],
  closed: [
    "units",
    "leftOver",
    "bestBefore",
    "held",
    "why",
    "whyNotWeighed",
    "whyMoreFilled",
    "whyOutOfDate",
    "whyNotChecked",
  ],
  released: ["why", "whyNotChecked"],
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

/** What stands on each jar: the code that it was started with, or the last that was given in its place. @rule BENCH-10 */
export const codeOf = (batch: Batch): string => standing(batch, "recoded").at(-1)?.code ?? batch.code;

/** Every code that a batch ever had: none of them names anything else. @rule BENCH-2 */
export const codesOf = ({ code, notes }: Batch): readonly string[] => [
  code,
  ...notes.flatMap((note) => (note.kind === "recoded" ? [note.code] : [])),
];

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
export function standing<Kind extends NoteKind>({ notes }: Pick<Batch, "notes">, kind: Kind): readonly NoteOf<Kind>[] {
  const struck = new Set(notes.flatMap((note) => (note.kind === "struck" ? [note.strikes] : [])));
  return notes.filter((note): note is NoteOf<Kind> & BenchNote => note.kind === kind && !struck.has(note.key));
}

/** Batches that still draw on the shelf. */
export const openBatches = (batches: readonly Batch[]): readonly Batch[] =>
  batches.filter((batch) => stateOf(batch) === "open");
