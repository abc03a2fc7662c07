import type { Run } from "@/lib/domain/workshop";

/** A run that reads as it did is the very run that it was, wherever it stands in the list: plans tell runs by that. */
export function runsAsBefore(): (runs: readonly Run[]) => readonly Run[] {
  let last: ReadonlyMap<string, Run> = new Map();
  return (runs) => {
    const made = runs.map((run) => {
      const known = last.get(run.id);
      return known && isSame(known, run) ? known : run;
    });
    last = new Map(made.map((run) => [run.id, run]));
    return made;
  };
}

const isSame = (one: Run, other: Run): boolean =>
  one.product === other.product &&
  one.date === other.date &&
  one.sequence === other.sequence &&
  one.units === other.units;
