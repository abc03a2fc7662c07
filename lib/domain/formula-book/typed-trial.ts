/** What was typed of a trial, apart from what was read of it and posted. @rule TRIAL-6 */
import { isOf, type Trial, type TrialLine } from "./trials";

export type TypedTrial = Omit<Trial, "readings" | "posting">;

const isSameLine = (one: TrialLine, other: TrialLine | undefined): boolean =>
  other !== undefined && isOf(one.of, other.of) && one.weighed === other.weighed && one.phase === other.phase;

/** Whether they say the same of what is on the ledger: the day, and what was weighed. */
export const isWeighedAs = (trial: TypedTrial, typed: TypedTrial): boolean =>
  trial.day === typed.day &&
  trial.lines.length === typed.lines.length &&
  trial.lines.every((line, at) => isSameLine(line, typed.lines[at]));

/** Whether they say the same of everything. */
export const isTypedAs = (trial: TypedTrial, typed: TypedTrial): boolean =>
  isWeighedAs(trial, typed) && trial.name === typed.name && trial.notes === typed.notes;
