import Link from "next/link";
import type { ReactNode } from "react";
import { Sign } from "@/app/_ui/sign";
import type { Day } from "@/lib/domain/calendar";
import type { OrderDayChange, PlanChanges, RunChange } from "@/lib/domain/plan-changes";
import { inARow } from "@/lib/edge/counted";
import { countShown, dayShown } from "@/lib/edge/figures";
import { materialAddress } from "@/lib/edge/material-address";
import { calledRun, shortages } from "./run-words";

/** So many of each are named; how many more there are is said. */
const MOST_NAMED = 6;

interface Changed {
  readonly changes: PlanChanges;
  readonly today: Day;
  readonly title?: string;
}

/** Which runs can be made now that could not, or the other way round, and which order days moved. */
export function WhatChanged({ changes: { runs, orderDays }, today, title = "What this changed" }: Changed): ReactNode {
  if (runs.length + orderDays.length === 0)
    return <p className="small soft">{title}: no other run, and no order day.</p>;
  return (
    <section className="what-changed">
      <h2>{title}</h2>
      <ul>
        {runs.slice(0, MOST_NAMED).map((change) => (
          <li key={change.after.run.id}>
            <RunLine change={change} today={today} />
          </li>
        ))}
        <More count={runs.length - MOST_NAMED} words="more runs" />
        {orderDays.slice(0, MOST_NAMED).map((change) => (
          <li key={change.material.id}>
            <OrderLine change={change} today={today} />
          </li>
        ))}
        <More count={orderDays.length - MOST_NAMED} words="more order days" />
      </ul>
    </section>
  );
}

const More = ({ count, words }: { readonly count: number; readonly words: string }): ReactNode =>
  count > 0 && (
    <li>
      and {countShown(count)} {words}
    </li>
  );

const RunLine = ({
  change: { before, after },
  today,
}: {
  readonly change: RunChange;
  readonly today: Day;
}): ReactNode =>
  after.makeable ? (
    <>
      <Sign sign="tick" tone="open">
        {calledRun(after, today)} can be made
      </Sign>{" "}
      <small className="was">was short {inARow(shortages(before))}</small>
    </>
  ) : (
    <>
      <Sign sign="box" tone="wrong">
        {calledRun(after, today)} is short {inARow(shortages(after))}
      </Sign>{" "}
      <small className="was">could be made</small>
    </>
  );

const OrderLine = ({
  change: { material, before, after },
  today,
}: {
  readonly change: OrderDayChange;
  readonly today: Day;
}): ReactNode => (
  <>
    <Link href={materialAddress(material.id)}>{material.name}</Link>:{" "}
    {after === null ? "no order needed" : `order by ${dayShown(after, today)}`}{" "}
    <small className="was">was {before === null ? "no order needed" : dayShown(before, today)}</small>
  </>
);
