import type { ReactNode } from "react";
import type { Day } from "@/lib/domain/calendar";
import type { RunOutlook } from "@/lib/domain/plan-figures";
import { RunSlip } from "./run-slip";
import type { RunAddress } from "./run-words";

interface Earlier {
  readonly runs: readonly RunOutlook[];
  readonly today: Day;
  readonly addressOf: (outlook: RunOutlook) => RunAddress;
}

/** Runs whose week has passed and that nobody has closed. @rule PLAN-4 */
export function EarlierRuns({ runs, today, addressOf }: Earlier): ReactNode {
  if (runs.length === 0) return null;
  return (
    <section className="week-earlier">
      <h2>Before this week, not closed</h2>
      <p className="small soft">They are counted as drawing today, before today’s runs.</p>
      <ul>
        {runs.map((outlook) => (
          <li key={outlook.run.id}>
            <RunSlip outlook={outlook} today={today} address={addressOf(outlook)} withDay />
          </li>
        ))}
      </ul>
    </section>
  );
}
