import Link from "next/link";
import type { ReactNode } from "react";
import { Sign } from "@/app/_ui/sign";
import { Was } from "@/app/_ui/was";
import { isoDate } from "@/lib/domain/calendar";
import type { ClosedRun } from "@/lib/domain/desk";
import type { RunOutlook } from "@/lib/domain/plan-figures";
import type { Run } from "@/lib/domain/workshop";
import { dayShown } from "@/lib/edge/figures";
import { makingAddress } from "@/lib/edge/ledger-address";
import { calledRun, massOf, shortWords, unitsShown } from "./run-words";
import { type WeekView, weekWith } from "./week-view";

interface Slip {
  readonly outlook: RunOutlook;
  readonly view: WeekView;
  readonly withDay?: boolean;
}

/** A run in the week: what, how much, and what it is short of. It leads to its draws further down, and can be moved. */
export function RunSlip({ outlook, view, withDay = false }: Slip): ReactNode {
  const { run, product, makeable, mostUnits } = outlook;
  const { today, lifted } = view;
  const was = view.before?.outlookOf(run);
  const called = calledRun(outlook, today);
  const carried = view.carriedOf(run);
  return (
    <div
      className={`run-slip${makeable ? "" : " short"}${lifted === run ? " lifted" : ""}`}
      draggable="true"
      data-name={called}
      data-run={run.id}
      data-product={run.product}
      data-from={carried.from}
      data-units={carried.units}
      data-stood={carried.stood}
      data-of={carried.of}
    >
      <a className="run-link" href={view.addressOf(outlook)} draggable="false">
        <b>{product.name}</b>
        {withDay && <span>{dayShown(run.date, today)}</span>}
        {!makeable && (
          <Sign sign="box" tone="wrong">
            {shortWords(outlook)}
          </Sign>
        )}
        {was && was.makeable !== makeable && <Was now={makeable ? "" : "short"} before={wasWords(was)} />}
        <span>
          {massOf(outlook)}, {unitsShown(run.units)}
          {was && was.run.units !== run.units && (
            <>
              {" "}
              <Was now={unitsShown(run.units)} before={unitsShown(was.run.units)} />
            </>
          )}
        </span>
        {!makeable && <span>{mostUnits === 0n ? "None could be made" : `${unitsShown(mostUnits)} could be made`}</span>}
        {!withDay && run.date < today && <span>Not closed: draws today</span>}
      </a>
      <RunDeeds run={run} called={called} view={view} />
    </div>
  );
}

interface Deeds {
  readonly run: Run;
  readonly called: string;
  readonly view: WeekView;
}

/** What can be done from the slip itself; the rest stands where the run opens. */
const RunDeeds = ({ run, called, view: { today, monday } }: Deeds): ReactNode => (
  <span className="run-deeds">
    {run.date < today && (
      <Link className="run-deed" href={makingAddress(run.id)} prefetch={false} aria-label={`Made: close ${called}`}>
        Made
      </Link>
    )}
    <Link
      className="run-deed"
      href={weekWith(monday, { lift: run.id })}
      scroll={false}
      prefetch={false}
      aria-label={`Move ${called}`}
    >
      Move
    </Link>
  </span>
);

const wasWords = (outlook: RunOutlook): string =>
  outlook.makeable ? "can be made" : shortWords(outlook).toLowerCase();

/** A run that was made, on the day for which it was planned. */
export function MadeSlip({ closed, view }: { readonly closed: ClosedRun; readonly view: WeekView }): ReactNode {
  const { run, madeOn, unitsMade } = closed;
  return (
    <div className="run-slip made">
      <Link className="made-link" href={makingAddress(run.id)} prefetch={false}>
        <b>{view.productOf(run.product).name}</b>
      </Link>
      <Sign sign="tick" tone="still">
        Made{madeOn === run.date ? "" : ` ${dayShown(madeOn, view.today)}`}
      </Sign>
      <span>
        {unitsShown(unitsMade)}
        {unitsMade !== run.units && ` of ${unitsShown(run.units)} planned`}
      </span>
      <span className="unseen">, planned for {isoDate(run.date)}</span>
    </div>
  );
}
