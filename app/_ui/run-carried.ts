/** What the forms about a run carry, so that one that was drawn before the run was changed overwrites nothing. */
import { type Day, isoDate } from "@/lib/domain/calendar";
import type { Run } from "@/lib/domain/workshop";
import { standsBefore } from "@/lib/domain/turns-of-day";

export interface Place {
  /** The Monday of the week that is shown. */
  readonly monday: Day;
  readonly runs: readonly Run[];
}

export type Carried = Readonly<Record<string, string>>;

export const carriedOf = (run: Run, { monday, runs }: Place): Carried => ({
  run: run.id,
  product: run.product,
  from: isoDate(run.date),
  units: run.units.toString(),
  stood: standsBefore(runs, run) ?? "",
  of: isoDate(monday),
});
