"use client";

import type { ReactNode } from "react";
import { Opening } from "@/app/_ui/finding";
import { counted } from "@/lib/edge/counted";
import { Closing, OutsideTolerance, TakeCare } from "./bench-aside";
import { BenchFinding, Progress } from "./bench-finding";
import type { BenchOnPage } from "./bench-view";
import { CheckForms } from "./check-forms";
import { benchAtHand } from "./line-at-hand";
import type { QueuedNote } from "./note-queue";
import { NoteForms } from "./note-forms";
import { OtherNotes } from "./other-notes";
import { PhaseLedger } from "./phase-ledger";
import { Refused } from "./refused-notes";
import { RunningTimers } from "./timers";
import { useNotes } from "./use-notes";
import { WhoWrites } from "./who-writes";

interface Desk {
  readonly view: BenchOnPage;
  readonly crumb: ReactNode;
  readonly beside: ReactNode;
}

/** A batch while it is weighed: what comes next, the sheet with its one open line, and what else is written down. */
export function BenchDesk({ view, crumb, beside }: Desk): ReactNode {
  const notes = useNotes(view);
  const waiting = notes.notes.filter(({ refused }) => refused === null);
  const hand = benchAtHand(view, waiting);
  return (
    <>
      <Opening crumb={crumb} title={`${view.product}, batch ${view.code}`} beside={beside}>
        <BenchFinding hand={hand} decimals={view.decimals} />
      </Opening>
      <div className="bench">
        <RunningTimers batch={view.batch} steps={stepsIn(view)} write={notes.write} />
        <div className="bench-desk">
          <div className="bench-top">
            <Progress hand={hand} />
            <WhoWrites notes={notes} />
            <p className={notes.isOffline ? "bench-status offline" : "bench-status"} role="status">
              {statusOf(waiting, notes.isOffline)}
            </p>
            <Refused refused={notes.notes.filter(({ refused }) => refused !== null)} drop={notes.drop} />
          </div>
          <div className="bench-care">
            <TakeCare cautions={view.cautions} />
            <OutsideTolerance hand={hand} view={view} />
          </div>
          <PhaseLedger hand={hand} view={view} notes={notes} />
          <div className="bench-rest">
            <CheckForms checks={hand.checks} view={view} notes={notes} />
            <OtherNotes view={view} notes={notes} />
            <NoteForms view={view} notes={notes} />
            <Closing hand={hand} view={view} />
          </div>
        </div>
      </div>
    </>
  );
}

const stepsIn = ({ sections, steps }: BenchOnPage): BenchOnPage["steps"] => [
  ...sections.flatMap((section) => section.steps),
  ...steps,
];

/** What waits to be sent, and nothing where nothing waits. */
function statusOf(waiting: readonly QueuedNote[], isOffline: boolean): string {
  if (isOffline)
    return `No connection to the app: ${counted(waiting.length, "note waits", "notes wait")} on this device. What waits is sent as soon as the app answers again; a reload does not lose it.`;
  return waiting.some(({ isSent }) => !isSent) ? "Sending what was written down." : "";
}
