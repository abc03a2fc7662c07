/** What the page of a batch shows, and what it hands to the device. */
import type { NoteOf, SheetLine } from "@/lib/domain/bench/batch";
import type { BenchNote } from "@/lib/domain/bench/batch";
import type { FormulaCheck } from "@/lib/domain/formula-book/facts";

export interface LotToWeigh {
  readonly id: string;
  /** What is there of it, and how long it may be used. */
  readonly says: string;
  readonly isOutOfDate: boolean;
}

export interface LineOnPage {
  readonly line: SheetLine;
  /** The formula that it is a line of, where that is a premix. */
  readonly premix: string | null;
  readonly lots: readonly LotToWeigh[];
  readonly weights: readonly NoteOf<"weighed">[];
}

export interface StepOnPage {
  readonly text: string;
  readonly phase: string | null;
  readonly celsius: string | null;
  readonly minutes: number | null;
  readonly caution: string | null;
}

export interface BenchOnPage {
  readonly batch: string;
  readonly code: string;
  readonly startedBy: string;
  readonly lines: readonly LineOnPage[];
  readonly phases: readonly string[];
  readonly steps: readonly StepOnPage[];
  /** Every material and lot that something can be added of. */
  readonly stock: readonly { readonly value: string; readonly label: string }[];
  readonly notes: readonly BenchNote[];
  /** What the formula asks to be looked at. */
  readonly checks: readonly FormulaCheck[];
  /** How many decimals of a gram the balance shows. */
  readonly decimals: number;
  /** For forms that are sent without scripts. */
  readonly newKeys: readonly string[];
}
