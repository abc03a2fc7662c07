/** Whether two states of a workshop have one plan, so that it need not be made again. */
import { inTurn } from "./plan";
import type { Run, Workshop } from "./workshop";

/**
 * Whether nothing that a plan is made from differs but, at most, the runs. Lists are told by being the very same, since
 * to compare each record would cost as much as to plan: two states that were read apart, and only look alike, differ.
 */
export function differInRunsAlone({ runs: _one, ...workshop }: Workshop, other: Workshop): boolean {
  return Object.entries(workshop).every(([list, records]) => other[list as keyof Workshop] === records);
}

/** Whether the same runs draw in the same turn, whatever numbers give them their turn. @rule PLAN-4 */
export function drawAlike(some: readonly Run[], others: readonly Run[]): boolean {
  if (some === others) return true;
  if (some.length !== others.length) return false;
  const turn = inTurn(others);
  return inTurn(some).every((run, at) => isAlike(run, turn[at]));
}

const isAlike = (run: Run, other: Run | undefined): boolean =>
  run === other ||
  (run.id === other?.id && run.product === other.product && run.date === other.date && run.units === other.units);
