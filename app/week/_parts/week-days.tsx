import Link from "next/link";
import { Fragment, type ReactNode } from "react";
import type { BenchDay } from "@/lib/domain/bench-hours";
import { type Day, isoDate } from "@/lib/domain/calendar";
import type { RunOutlook } from "@/lib/domain/plan-figures";
import { runsOn } from "@/lib/domain/turns-of-day";
import { dayShown } from "@/lib/edge/figures";
import { dayInWeek } from "@/lib/edge/week-title";
import { putRun } from "../actions";
import { DayHours } from "./day-hours";
import { Press } from "@/app/_ui/press";
import { MadeSlip, RunSlip } from "./run-slip";
import { calledRun } from "./run-words";
import { type WeekView, weekWith } from "./week-view";

interface Days {
  readonly view: WeekView;
  /** Of the week, in the order in which they draw. */
  readonly runs: readonly RunOutlook[];
}

/** Seven days with their runs, how long they take, and where a run can be put. */
export const WeekDays = ({ view, runs }: Days): ReactNode => (
  <ol className="week-days" aria-label="Runs by day">
    {view.days.map((day, at) => (
      <WeekDay key={day.day} day={day} at={at} view={view} runs={runs.filter(({ run }) => run.date === day.day)} />
    ))}
  </ol>
);

function WeekDay({ day: benchDay, at, view, runs }: Days & { readonly day: BenchDay; readonly at: number }): ReactNode {
  const { day } = benchDay;
  const { today, lifted } = view;
  const classes = ["week-day", day === today && "now", lifted?.date === day && "from-here"].filter(Boolean).join(" ");
  const called = dayShown(day, today);
  return (
    <li className={classes} data-day={isoDate(day)} data-called={called}>
      <h2>
        <span aria-hidden="true">{dayInWeek(day)}</span>
        <span className="unseen">
          {called}
          {day === today && ", today"}
        </span>
        {day === today && (
          <small className="today-word" aria-hidden="true">
            today
          </small>
        )}
      </h2>
      <div className="week-slips">
        {view.closedOn(day).map((closed) => (
          <MadeSlip key={closed.run.id} closed={closed} view={view} />
        ))}
        {runs.map((outlook) => (
          <Fragment key={outlook.run.id}>
            <PutHere day={day} view={view} before={outlook} />
            <RunSlip outlook={outlook} view={view} />
          </Fragment>
        ))}
        <PutHere day={day} view={view} before={null} />
        {lifted === null && view.workshop.products.length > 0 && (
          <Link
            className="plan-here"
            href={`${weekWith(view.monday, { plan: isoDate(day) })}#plan-a-run`}
            prefetch={false}
            aria-label={`Plan a run on ${called}`}
          >
            Plan a run
          </Link>
        )}
      </div>
      {!isQuiet(view) && <DayHours day={benchDay} was={view.before?.days[at]} productOf={view.productOf} />}
    </li>
  );
}

/** Where no run stands and no hours are written down, the finding says so once. */
const isQuiet = ({ days, before }: WeekView): boolean =>
  [...days, ...(before?.days ?? [])].every(
    ({ runs, there, isClosed }) => runs.length === 0 && there === null && !isClosed,
  );

/** While a run is being moved: a place for it, before another run or at the end of the day. Where it stands is none. */
function PutHere({
  day,
  view,
  before,
}: {
  readonly day: Day;
  readonly view: WeekView;
  readonly before: RunOutlook | null;
}): ReactNode {
  const { lifted, plan, today } = view;
  if (lifted === null || before?.run === lifted) return null;
  const carried = view.carriedOf(lifted);
  if (lifted.date === day && (before?.run.id ?? "") === carried.stood) return null;
  const isOnlyPlace = runsOn(view.workshop.runs, day).every((run) => run === lifted);
  const place = before === null ? (isOnlyPlace ? "" : ", last") : `, before ${before.product.name}`;
  const outlook = plan.runs.find(({ run }) => run === lifted);
  const what = outlook ? calledRun(outlook, today) : "the run";
  return (
    <Press
      act={putRun}
      carried={{ ...carried, to: isoDate(day), before: before?.run.id ?? "" }}
      className="put-here"
      name={`Put it here: ${what} on ${dayShown(day, today)}${place}`}
      place={isoDate(day)}
    >
      Put it here
    </Press>
  );
}
