import { randomUUID } from "node:crypto";
import type { ReactNode } from "react";
import type { Planned } from "@/app/plan-for-page";
import { dayOf, daysAfter, later } from "@/lib/domain/calendar";
import { byId } from "@/lib/domain/index-by-id";
import { closeAsMade } from "@/lib/domain/made-run";
import { plan } from "@/lib/domain/plan";
import { changedBy } from "@/lib/domain/plan-changes";
import type { Run } from "@/lib/domain/workshop";
import { BenchHoursForm } from "./_parts/bench-hours-form";
import { CloseARun } from "./_parts/close-a-run";
import { type Parameters, textOf } from "./_parts/deed";
import { PlanARun } from "./_parts/plan-a-run";
import type { WeekView } from "./_parts/week-view";

interface Forms {
  readonly found: Planned;
  readonly view: WeekView;
  readonly parameters: Parameters;
}

/** The form that the address asks for: to plan a run, to close one as made, or for the hours at the bench. */
export function WeekForms({ found, view, parameters }: Forms): ReactNode {
  const { monday, today } = view;
  const onDay = textOf(parameters, "plan");
  if (onDay !== "") {
    const inWeek = today <= daysAfter(monday, 6) ? later(monday, today) : monday;
    return <PlanARun view={view} day={dayOf(onDay) ?? inWeek} newId={randomUUID()} />;
  }
  const run = view.workshop.runs.find(({ id }) => id === textOf(parameters, "close"));
  if (run) return <Closing found={found} view={view} run={run} />;
  return textOf(parameters, "hours") === "" ? null : <BenchHoursForm view={view} />;
}

/** What closing would take and change is worked out before it is confirmed; nothing is kept. */
function Closing({ found, view, run }: Omit<Forms, "parameters"> & { readonly run: Run }): ReactNode {
  const { workshop, desk, today } = found;
  const newId = randomUUID();
  const asked = { run: run.id, today, unitsMade: run.units, finishedLot: { id: newId, bestBefore: null } };
  const strict = closeAsMade({ workshop, desk }, { ...asked, ifShort: "refuse" });
  const made =
    strict.kind === "short" ? closeAsMade({ workshop, desk }, { ...asked, ifShort: "draw what is there" }) : strict;
  const outlook = found.plan.runs.find((each) => each.run === run);
  if (made.kind !== "made" || !outlook) return null;
  return (
    <CloseARun
      outlook={outlook}
      view={view}
      made={made}
      short={strict.kind === "short" ? strict.short : []}
      changes={changedBy(found.plan, plan(made.books.workshop, today))}
      materialOf={byId("material", workshop.materials)}
      newId={newId}
    />
  );
}
