import type { Planned } from "@/app/plan-for-page";
import { planBefore } from "@/app/plans-kept";
import { benchDays } from "@/lib/domain/bench-hours";
import { type Day, daysAfter } from "@/lib/domain/calendar";
import { byId, grouped } from "@/lib/domain/index-by-id";
import { changedBy } from "@/lib/domain/plan-changes";
import { runAnchor } from "@/lib/edge/run-address";
import type { Deed } from "./_parts/deed";
import { carriedOf } from "@/app/_ui/run-carried";
import { workshopBefore } from "./_parts/week-before";
import { type Before, type WeekView, weekWith } from "./_parts/week-view";

interface Asked {
  readonly monday: Day;
  readonly deed: Deed | null;
  /** The id of the run that is being moved, or nothing. */
  readonly lifted: string;
  readonly opensHere: boolean;
}

/** What the page's parts are drawn from; the plan before is worked out where something was just done to a run. */
export function weekViewOf(found: Planned, { monday, deed, lifted, opensHere }: Asked): WeekView {
  const { workshop, desk, today, plan } = found;
  const place = { monday, runs: workshop.runs };
  const closedByDay = grouped(desk.closedRuns, ({ run }) => String(run.date));
  return {
    workshop,
    desk,
    today,
    plan,
    monday,
    days: benchDays(workshop, desk.benchMinutes, monday, daysAfter(monday, 6)),
    lifted: workshop.runs.find(({ id }) => id === lifted) ?? null,
    before: beforeOf(found, deed, monday),
    productOf: byId("product", workshop.products),
    closedOn: (day) => closedByDay.get(String(day)) ?? [],
    carriedOf: (run) => carriedOf(run, place),
    addressOf: ({ run: { id } }) =>
      opensHere ? `#${runAnchor(id)}` : `${weekWith(monday, { run: id })}#${runAnchor(id)}`,
  };
}

function beforeOf({ workshop, desk, today, plan: after }: Planned, deed: Deed | null, monday: Day): Before | null {
  const was = workshopBefore(workshop, deed);
  if (was === null) return null;
  const before = planBefore(was, today);
  const outlooks = new Map(before.runs.map((outlook) => [outlook.run.id, outlook]));
  return {
    plan: before,
    changes: changedBy(before, after),
    days: benchDays(was, desk.benchMinutes, monday, daysAfter(monday, 6)),
    outlookOf: ({ id }) => outlooks.get(id),
  };
}
