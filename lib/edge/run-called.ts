/** Runs by what they make and when: their ids are the app's own, and say nothing to anybody. */
import type { Books } from "@/lib/domain/desk";
import { realToday } from "./real-today";
import { dayShown } from "./figures";

/** `Oat conditioner, 9 Nov`; of a run that nobody knows any more its id. */
export function runsCalled({ workshop, desk }: Books): (id: string) => string {
  const today = workshop.settings.today ?? realToday();
  const names = new Map(workshop.products.map(({ id, name }) => [id, name]));
  const runs = [
    ...workshop.runs.map((run) => ({ run, day: run.date })),
    ...desk.batches.map(({ run, startedOn }) => ({ run, day: startedOn })),
    ...desk.closedRuns.map(({ run, madeOn }) => ({ run, day: madeOn })),
  ];
  const called = new Map(
    runs.map(({ run, day }) => [
      run.id,
      `${names.get(run.product) ?? "A run"}, ${dayShown(day, today, { weekday: false })}`,
    ]),
  );
  return (id) => called.get(id) ?? `run ${id}`;
}
