/** The runs as they were planned before the last thing that was done. */
import type { Day } from "@/lib/domain/calendar";
import { byCodePoint } from "@/lib/domain/code-point-order";
import type { Run, Workshop } from "@/lib/domain/workshop";
import type { Deed } from "./deed";

/**
 * The workshop without what was done to one of its runs.
 * @returns null where nothing was done to a run, or something else has become of it since
 */
export function workshopBefore(workshop: Workshop, deed: Deed | null): Workshop | null {
  const runs = deed && runsBefore(workshop, deed);
  return runs && { ...workshop, runs };
}

function runsBefore({ runs, products }: Workshop, deed: Deed): readonly Run[] | null {
  if (!("about" in deed)) return null;
  const now = runs.find(({ id }) => id === deed.about);
  const others = runs.filter((run) => run !== now);
  switch (deed.kind) {
    case "planned":
      return now ? others : null;
    case "moved":
      return now ? withPlaced(others, { ...now, date: deed.was }, deed.before) : null;
    case "resized":
      return now && now.units !== deed.was
        ? runs.map((run) => (run === now ? { ...run, units: deed.was } : run))
        : null;
    case "deleted": {
      const { about: id, product, was: date, units, before } = deed;
      if (now || !products.some((each) => each.id === product)) return null;
      return withPlaced(others, { id, product, date, units, sequence: 0 }, before);
    }
    case "changed meanwhile":
    case "gone meanwhile":
    case "made meanwhile":
    case "at the bench":
      return null;
  }
}

/** Only the order within the day counts, so that the day may be numbered anew. @rule PLAN-4 */
function withPlaced(others: readonly Run[], run: Run, before: string | null): readonly Run[] {
  const day = others.filter(({ date }) => date === run.date).sort(byTurn);
  const at = before === null ? -1 : day.findIndex(({ id }) => id === before);
  const placed = at < 0 ? [...day, run] : [...day.slice(0, at), run, ...day.slice(at)];
  return [
    ...others.filter(({ date }) => date !== run.date),
    ...placed.map((each, sequence) => ({ ...each, sequence })),
  ];
}

const byTurn = (a: Run, b: Run): number => a.sequence - b.sequence || byCodePoint(a.id, b.id);

/** The run that stands after another in its day; null where it is the last. */
export function standsBefore(runs: readonly Run[], run: Run): string | null {
  const day = runs.filter(({ date }) => date === run.date).sort(byTurn);
  return day[day.indexOf(run) + 1]?.id ?? null;
}

/** The runs of a day in the order in which they draw. */
export const runsOn = (runs: readonly Run[], day: Day): readonly Run[] =>
  runs.filter(({ date }) => date === day).sort(byTurn);
