import "server-only";

const MARKED_FOR_MS = 15 * 60 * 1000;

interface Kept<Shown> {
  readonly shown: Shown;
  readonly before: Shown | null;
  readonly since: number;
}

interface Compared<Shown> {
  /** Whether both are of one workshop and one day, so that a difference is what somebody did. */
  readonly areOfOne: (one: Shown, other: Shown) => boolean;
  readonly differ: (one: Shown, other: Shown) => boolean;
}

/**
 * Remembers what pages show, and gives back what they last showed otherwise, so that whatever has changed it, here or
 * in another place, each figure can be marked with what it was. The marks stay until the figures change again, and a
 * quarter of an hour at most. It is lost with the server, and nothing depends on it.
 */
export function shownBefore<Shown>({ areOfOne, differ }: Compared<Shown>): (shown: Shown) => Shown | null {
  let last: Kept<Shown> | null = null;
  return (shown) => {
    const now = Date.now();
    if (last === null || !areOfOne(last.shown, shown)) last = { shown, before: null, since: now };
    else if (differ(last.shown, shown)) last = { shown, before: last.shown, since: now };
    return now - last.since < MARKED_FOR_MS ? last.before : null;
  };
}
