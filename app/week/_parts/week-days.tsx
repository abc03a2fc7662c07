import type { ReactNode } from "react";
import type { Day } from "@/lib/domain/calendar";
import type { RunOutlook } from "@/lib/domain/plan-figures";
import { dayShown, minutesShown } from "@/lib/edge/figures";
import { dayInWeek } from "@/lib/edge/week-title";
import { RunSlip } from "./run-slip";
import { minutesTogether, type RunAddress } from "./run-words";

interface Days {
  readonly days: readonly Day[];
  readonly runs: readonly RunOutlook[];
  readonly today: Day;
  readonly addressOf: (outlook: RunOutlook) => RunAddress;
}

/** Seven days with their runs, and how long they take. */
export const WeekDays = ({ days, runs, today, addressOf }: Days): ReactNode => (
  <ol className="week-days" aria-label="Runs by day">
    {days.map((day) => {
      const ofDay = runs.filter(({ run }) => run.date === day);
      return (
        <li key={day} className={day === today ? "week-day now" : "week-day"}>
          <h2>
            <span aria-hidden="true">{dayInWeek(day)}</span>
            <span className="unseen">
              {dayShown(day, today)}
              {day === today && ", today"}
            </span>
          </h2>
          <div className="week-slips">
            {ofDay.map((outlook) => (
              <RunSlip key={outlook.run.id} outlook={outlook} today={today} address={addressOf(outlook)} />
            ))}
          </div>
          <p className="week-hours">{ofDay.length === 0 ? "No runs" : minutesShown(minutesTogether(ofDay))}</p>
        </li>
      );
    })}
  </ol>
);
