import type { ReactNode } from "react";
import type { RunOutlook } from "@/lib/domain/plan-figures";
import { RunSlip } from "./run-slip";
import type { WeekView } from "./week-view";

/** Runs whose week has passed and that nobody has closed. @rule PLAN-4 */
export function EarlierRuns({
  runs,
  view,
}: {
  readonly runs: readonly RunOutlook[];
  readonly view: WeekView;
}): ReactNode {
  if (runs.length === 0) return null;
  return (
    <section className="week-earlier">
      <h2>Before this week, not closed: made, move or remove?</h2>
      <p className="small soft">
        They are counted as drawing today, before today’s runs. Open one to see what it draws or to remove it.
      </p>
      <ul>
        {runs.map((outlook) => (
          <li key={outlook.run.id}>
            <RunSlip outlook={outlook} view={view} withDay />
          </li>
        ))}
      </ul>
    </section>
  );
}
