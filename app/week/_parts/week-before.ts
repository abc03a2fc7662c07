/** The runs as they were planned before the last thing that was done. */
import { runsOn } from "@/lib/domain/turns-of-day";
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
  const day = runsOn(others, run.date);
  const at = before === null ? -1 : day.findIndex(({ id }) => id === before);
  const placed = at < 0 ? [...day, run] : [...day.slice(0, at), run, ...day.slice(at)];
  return [
    ...others.filter(({ date }) => date !== run.date),
    ...placed.map((each, sequence) => ({ ...each, sequence })),
  ];
}
