/** What all parts of the week's page are drawn from. */
import type { BenchDay } from "@/lib/domain/bench-hours";
import { type Day, isoDate } from "@/lib/domain/calendar";
import type { ClosedRun, Desk } from "@/lib/domain/desk";
import type { PlanChanges } from "@/lib/domain/plan-changes";
import type { Plan, RunOutlook } from "@/lib/domain/plan-figures";
import type { Product, Run, Workshop } from "@/lib/domain/workshop";
import type { Carried } from "@/app/_ui/run-carried";

export interface WeekView {
  readonly workshop: Workshop;
  readonly desk: Desk;
  readonly today: Day;
  readonly plan: Plan;
  readonly monday: Day;
  readonly days: readonly BenchDay[];
  /** The run that is being moved. */
  readonly lifted: Run | null;
  /** As it was before the last thing that was done. */
  readonly before: Before | null;
  readonly productOf: (id: string) => Product;
  readonly closedOn: (day: Day) => readonly ClosedRun[];
  readonly carriedOf: (run: Run) => Carried;
  readonly addressOf: (outlook: RunOutlook) => `#${string}` | `/week?${string}`;
}

export interface Before {
  readonly plan: Plan;
  readonly changes: PlanChanges;
  readonly days: readonly BenchDay[];
  readonly outlookOf: (run: Run) => RunOutlook | undefined;
}

/** The week with something else asked of it. */
export function weekWith(monday: Day, asked: Readonly<Record<string, string>>): `/week?${string}` {
  return `/week?${new URLSearchParams({ of: isoDate(monday), ...asked }).toString()}`;
}
