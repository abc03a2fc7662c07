/** The faults of one file as lines: every independent one, the first hundred in words and the rest as a number. @rule FILE-2 */
export interface FaultList {
  /** Adds the line `where: what`; `where` is a path as `lots[3].expires`, or `file`. */
  readonly tell: (where: string, what: string) => void;
  readonly count: () => number;
  /** At most a hundred lines, then one that says how many more there are. */
  readonly lines: () => readonly string[];
}

const MOST_LINES = 100;

export function faultList(): FaultList {
  const told: string[] = [];
  let count = 0;
  return {
    tell: (where, what) => {
      count += 1;
      if (told.length < MOST_LINES) told.push(`${where}: ${what}`);
    },
    count: () => count,
    lines: () => (count > told.length ? [...told, moreFaults(count - told.length)] : told),
  };
}

const moreFaults = (count: number): string => (count === 1 ? "and 1 more fault" : `and ${String(count)} more faults`);
