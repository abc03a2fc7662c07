/** The order of the runs of a day: by sequence, then id. @rule PLAN-4 */
import type { Day } from "@/lib/domain/calendar";
import { byCodePoint } from "@/lib/domain/code-point-order";
import type { Run } from "@/lib/domain/workshop";

/** A place in a day: before that run, or last where it is null. */
export interface Place {
  readonly date: Day;
  readonly before: string | null;
}

const LAST_SEQUENCE = 1_000_000;

const byTurn = (a: Run, b: Run): number => a.sequence - b.sequence || byCodePoint(a.id, b.id);

const othersOf = (runs: readonly Run[], id: string, date: Day): readonly Run[] =>
  runs.filter((run) => run.date === date && run.id !== id).sort(byTurn);

/** Where a run stands in its day. */
export function placeOf(runs: readonly Run[], run: Run): Place {
  const next = othersOf(runs, run.id, run.date).find((other) => byTurn(run, other) < 0);
  return { date: run.date, before: next?.id ?? null };
}

/**
 * The runs with this one in that place; a run that is not among them is added. The others keep their sequence where
 * there is one left for it between them; else the day is numbered anew.
 * @returns null where the run that it is to stand before is not on that day
 */
export function withRunPlaced(runs: readonly Run[], run: Run, { date, before }: Place): readonly Run[] | null {
  const others = othersOf(runs, run.id, date);
  const at = before === null ? others.length : others.findIndex(({ id }) => id === before);
  if (at < 0) return null;
  const placed = { ...run, date };
  const [earlier, next] = [others[at - 1], others[at]];
  const fitting = [run.sequence, earlier ? earlier.sequence + 1 : 0, earlier?.sequence ?? next?.sequence ?? 0]
    .map((sequence) => ({ ...placed, sequence }))
    .find((each) => each.sequence <= LAST_SEQUENCE && isBetween(each, earlier, next));
  const changed = fitting ? [fitting] : [...others.slice(0, at), placed, ...others.slice(at)].map(numbered);
  const byId = new Map(changed.map((each) => [each.id, each]));
  const kept = runs.map((each) => byId.get(each.id) ?? each);
  const added = byId.get(run.id);
  return added === undefined || runs.some(({ id }) => id === run.id) ? kept : [...kept, added];
}

const isBetween = (run: Run, earlier: Run | undefined, next: Run | undefined): boolean =>
  (earlier === undefined || byTurn(earlier, run) < 0) && (next === undefined || byTurn(run, next) < 0);

const numbered = (run: Run, sequence: number): Run => ({ ...run, sequence });
