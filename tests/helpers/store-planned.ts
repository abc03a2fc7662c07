/** Changes of the books in which several tables hang together: half of one would show. */
import type { Books } from "@/lib/domain/desk";
import type { Decision } from "@/lib/store/change-books";
import { day, lot, run } from "./notation";
import { quantity } from "@/lib/domain/quantity";

/** Adds a run that is planned, one that was made and a lot, all of the same name. */
export const planned =
  (id: string) =>
  ({ workshop, desk }: Books): Decision<string> => ({
    kind: "keep",
    result: id,
    books: {
      workshop: {
        ...workshop,
        runs: [...workshop.runs, run(id, "p", "2026-11-30", 1)],
        lots: [...workshop.lots, lot(id, "m", "1", "1")],
      },
      desk: {
        ...desk,
        closedRuns: [
          ...desk.closedRuns,
          {
            run: run(`${id} made`, "p", "2026-11-20", 1),
            madeOn: day("2026-11-21"),
            unitsMade: quantity(1n),
            versions: [],
          },
        ],
      },
    },
  });

/** The names that were added, where each stands whole: a run, a lot and a run that was made. */
export function namesPlanned({ workshop, desk }: Books): readonly string[] | "torn" {
  const names = workshop.runs.map(({ id }) => id);
  const others = [
    workshop.lots.map(({ id }) => id),
    desk.closedRuns.map((closed) => closed.run.id.replace(" made", "")),
  ];
  return others.every((ids) => ids.join() === names.join()) ? names : "torn";
}
