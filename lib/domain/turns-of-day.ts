/** The runs of a day in their turns. @rule PLAN-4 */
import type { Day } from "./calendar";
import { byCodePoint } from "./code-point-order";
import type { Run } from "./workshop";

export const byTurn = (a: Run, b: Run): number => a.sequence - b.sequence || byCodePoint(a.id, b.id);

/** The runs of a day in the order in which they draw. */
export const runsOn = (runs: readonly Run[], day: Day): readonly Run[] =>
  runs.filter(({ date }) => date === day).sort(byTurn);

/** The run that stands after another in its day; null where it is the last. */
export function standsBefore(runs: readonly Run[], run: Run): string | null {
  const day = runsOn(runs, run.date);
  return day[day.indexOf(run) + 1]?.id ?? null;
}
