/**
 * What only the app keeps beside the workshop: it changes no figure of the plan and is no part of a workshop file.
 * @rule BOOK-1, BOOK-2
 */
import type { Batch } from "./bench/batch";
import type { BatchCodeScheme } from "./bench/batch-code";
import type { BenchMinutes } from "./bench-hours";
import type { Day } from "./calendar";
import type { Trial } from "./formula-book/trials";
import type { FormulaVersion, VersionUsed } from "./formula-book/version-record";
import type { CountRhythm } from "./ledger/counts-due";
import { DEFAULT_NOTATION, type Notation } from "./notation";
import type { Units } from "./quantity";
import type { Formula, Run, Workshop } from "./workshop";

/** All that the app keeps: loaded, decided on and saved together. */
export interface Books {
  readonly workshop: Workshop;
  readonly desk: Desk;
}

/** The lists whose records can be retired. */
export const RETIRABLE = ["suppliers", "materials", "offers", "formulas", "products"] as const;
export type RetirableList = (typeof RETIRABLE)[number];

export interface Desk {
  /** Ids that are no longer offered for new work. Each still stands in the workshop. @rule BOOK-2 */
  readonly retired: Readonly<Record<RetirableList, readonly string[]>>;
  /** Formulas that do not add up yet, which is why they are not in the workshop. @rule BOOK-3 */
  readonly drafts: readonly Formula[];
  /** Null until the maker has said: unknown hours are not hours of zero. */
  readonly benchMinutes: BenchMinutes | null;
  /** Runs that were made, in the order in which they were closed. @rule CLOSE-1 */
  readonly closedRuns: readonly ClosedRun[];
  /** Of the materials that the maker counts by a rhythm, each once. @rule LEDGER-25 */
  readonly countRhythms: readonly CountRhythm[];
  /** What is known of the versions of formulas; a formula of which nothing is known has its first. @rule VERSION-1 */
  readonly versions: readonly FormulaVersion[];
  /** In the order in which they were made. @rule TRIAL-1 */
  readonly trials: readonly Trial[];
  /** In the order in which they were started; the run of one that is open is still planned. @rule BENCH-1 */
  readonly batches: readonly Batch[];
  /** Null until the maker has said how batches are called. @rule BENCH-2 */
  readonly batchCodeScheme: BatchCodeScheme | null;
  /** How the maker wants figures written. @rule SHOW-1 */
  readonly notation: Notation;
}

/** A run that was made: as it was planned, when it was made and what came out. */
export interface ClosedRun {
  readonly run: Run;
  readonly madeOn: Day;
  readonly unitsMade: Units;
  /** Of its formula and every premix in it; none for a run of before they were noted. @rule VERSION-2 */
  readonly versions: readonly VersionUsed[];
}

/** The desk of a workshop that has just been opened. */
export const emptyDesk: Desk = {
  retired: { suppliers: [], materials: [], offers: [], formulas: [], products: [] },
  drafts: [],
  benchMinutes: null,
  closedRuns: [],
  countRhythms: [],
  versions: [],
  trials: [],
  batches: [],
  batchCodeScheme: null,
  notation: DEFAULT_NOTATION,
};

/** The records of a list that are offered for new work, in the list's order. @rule BOOK-2 */
export function forNewWork<T extends { readonly id: string }>(
  { retired }: Desk,
  list: RetirableList,
  records: readonly T[],
): readonly T[] {
  const hidden = new Set(retired[list]);
  return records.filter(({ id }) => !hidden.has(id));
}
