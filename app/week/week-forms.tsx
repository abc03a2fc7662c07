import { randomUUID } from "node:crypto";
import type { ReactNode } from "react";
import { dayOf, daysAfter, later } from "@/lib/domain/calendar";
import { BenchHoursForm } from "./_parts/bench-hours-form";
import { type Parameters, textOf } from "./_parts/deed";
import { PlanARun } from "./_parts/plan-a-run";
import type { WeekView } from "./_parts/week-view";

interface Forms {
  readonly view: WeekView;
  readonly parameters: Parameters;
}

const MOST_OF_A_SIZE = 40;

/** The form that the address asks for: to plan a run, or for the hours at the bench. */
export function WeekForms({ view, parameters }: Forms): ReactNode {
  const { monday, today } = view;
  const onDay = textOf(parameters, "plan");
  if (onDay !== "") {
    const inWeek = today <= daysAfter(monday, 6) ? later(monday, today) : monday;
    return (
      <PlanARun
        view={view}
        day={dayOf(onDay) ?? inWeek}
        product={textOf(parameters, "product")}
        size={textOf(parameters, "size").slice(0, MOST_OF_A_SIZE)}
        newId={randomUUID()}
      />
    );
  }
  return textOf(parameters, "hours") === "" ? null : <BenchHoursForm view={view} />;
}
