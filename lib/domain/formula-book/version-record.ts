/** What is kept of a version of a formula. @rule VERSION-1 */
import type { Day } from "@/lib/domain/calendar";
import type { Formula } from "@/lib/domain/workshop";
import type { FormulaFacts } from "./facts";

/** All of a formula but what it is called: what a change of makes another version. */
export type FormulaContent = Pick<Formula, "density" | "lines"> & FormulaFacts;

export interface FormulaVersion {
  readonly formula: string;
  /** From 1 on. */
  readonly number: number;
  /** The day on which it began; null where nobody wrote it down. */
  readonly since: Day | null;
  /** Why it was begun; null for the first, unless somebody said. */
  readonly why: string | null;
  readonly accepted: readonly AcceptedWarning[];
  /** As it was; null for the one that stands. */
  readonly content: (FormulaContent & Pick<Formula, "name">) | null;
}

/** A warning that the maker knows of and goes on with. @rule VERSION-4, CHECK-8 */
export interface AcceptedWarning {
  /** What it is told apart by, its figures among it. */
  readonly key: string;
  /** In the words that the maker read. */
  readonly says: string;
  readonly reason: string;
  readonly on: Day;
}

/** Which version of a formula a run was made by. */
export interface VersionUsed {
  readonly formula: string;
  readonly number: number;
}
