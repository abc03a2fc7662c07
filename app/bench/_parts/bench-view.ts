/** What the page of a batch shows, and what it hands to the device. */
import type { BenchNote, SheetLine } from "@/lib/domain/bench/batch";
import type { FormulaCheck } from "@/lib/domain/formula-book/facts";

/** Whether the name of a phase is short enough to stand big beside its lines, and to be called a phase. */
export const isLetter = (phase: string | null): phase is string => phase !== null && phase.length <= MOST_LETTERS;
const MOST_LETTERS = 2;

export interface LotToWeigh {
  readonly id: string;
  /** µg, by the books. */
  readonly remaining: bigint;
  /** What is there of it, and how long it may be used. */
  readonly says: string;
  readonly isOutOfDate: boolean;
}

export interface LineOnPage {
  readonly line: SheetLine;
  /** Of its formula; null where the sheet has other lines than that version. */
  readonly percent: string | null;
  /** The lots that the plan would draw, next first; what is weighed from is confirmed at the bench all the same. */
  readonly planned: readonly string[];
  readonly lots: readonly LotToWeigh[];
}

/** Lines that stand under one head: of one formula and one phase, with nothing else between them. */
export interface SheetSection<Line> {
  readonly key: string;
  /** Null where the formula has none. */
  readonly phase: string | null;
  /** What it says above its lines: the phase, and the premix that it is of. */
  readonly title: string;
  /** Whether its lines are those of the batch's own formula, and not of a premix. */
  readonly isMain: boolean;
  /** °C at which its lines go in. */
  readonly celsius: string | null;
  readonly lines: readonly Line[];
  /** Of the phase, where its first lines stand. */
  readonly steps: readonly StepOnPage[];
}

export type PhaseOnPage = SheetSection<LineOnPage>;

export interface StepOnPage {
  /** Unlike every other step's of the formula: its place. */
  readonly at: number;
  readonly text: string;
  readonly celsius: string | null;
  readonly minutes: number | null;
}

export interface BenchOnPage {
  readonly batch: string;
  readonly code: string;
  readonly product: string;
  readonly startedBy: string;
  readonly sections: readonly PhaseOnPage[];
  /** Of no phase that is weighed. */
  readonly steps: readonly StepOnPage[];
  readonly phases: readonly string[];
  /** Of its steps and its materials. */
  readonly cautions: readonly string[];
  readonly expected: string;
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
