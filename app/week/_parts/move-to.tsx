import type { ReactNode } from "react";
import { type Day, isoDate } from "@/lib/domain/calendar";
import type { RunOutlook } from "@/lib/domain/plan-figures";
import { dayShown } from "@/lib/edge/figures";
import { putRun } from "../actions";
import { Press } from "@/app/_ui/press";
import { calledRun } from "./run-words";
import type { WeekView } from "./week-view";

interface Move {
  readonly outlook: RunOutlook;
  readonly day: Day;
  readonly view: WeekView;
  /** The one thing to do on the page. */
  readonly first: boolean;
}

/** Moves a run to a day that was planned through. */
export function MoveTo({ outlook, day, view, first }: Move): ReactNode {
  const words = `Move to ${dayShown(day, view.today)}`;
  return (
    <Press
      act={putRun}
      carried={{ ...view.carriedOf(outlook.run), to: isoDate(day), before: "" }}
      className={first ? "button first" : "button"}
      name={`${words}: ${calledRun(outlook, view.today)}`}
    >
      {words}
    </Press>
  );
}
