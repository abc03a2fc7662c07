import Link from "next/link";
import type { ReactNode } from "react";
import { putRun, resizeTo } from "@/app/week/actions";
import { HaveNeed } from "@/app/_ui/have-need";
import { Press } from "@/app/_ui/press";
import { Sign } from "@/app/_ui/sign";
import { type Batch, codeOf } from "@/lib/domain/bench/batch";
import { linesWeighed } from "@/lib/domain/bench/weights";
import { isoDate } from "@/lib/domain/calendar";
import type { RunOutlook } from "@/lib/domain/plan-figures";
import { batchAddress, recordAddress } from "@/lib/edge/bench-address";
import { counted, inARow } from "@/lib/edge/counted";
import { countShown, dayShown, stockShown } from "@/lib/edge/figures";
import { NO_BREAK } from "@/lib/edge/shown-digits";
import { unitsInWords } from "@/lib/edge/forms/posting-forms";
import { runAddress } from "@/lib/edge/run-address";
import { Docket } from "./docket";
import type { Today } from "./today";

interface OfRun {
  readonly outlook: RunOutlook;
  readonly of: Today;
}

const nameOf = ({ run, product }: RunOutlook, { today }: Today): string =>
  `${product.name}, ${unitsInWords(run.units)}, ${dayShown(run.date, today)}`;

/** A run that cannot be made, what it is short of, how many can, and the way out that was planned through. */
export function RunDocket({ outlook, of }: OfRun): ReactNode {
  const { run, short, mostUnits, limiting, draws } = outlook;
  const worst = short.find(({ material }) => material === limiting) ?? short[0];
  const draw = draws.find(({ material }) => material === worst?.material);
  if (worst === undefined || draw === undefined) return null;
  const others = short.length - 1;
  const better = of.better.get(run);
  return (
    <Docket
      href={runAddress(run)}
      name={nameOf(outlook, of)}
      sign={
        <Sign sign="box" tone="wrong">
          short by {stockShown(worst.by, worst.material.measure, "lacking")}
        </Sign>
      }
      strip={<HaveNeed have={draw.there} need={draw.least} material={worst.material} />}
      act={<AnotherWay outlook={outlook} of={of} />}
    >
      {worst.material.name} is the limit. What will be here then makes{" "}
      <b>
        {mostUnits === 0n ? "none" : countShown(mostUnits)} of {countShown(run.units)}
      </b>
      .{" "}
      {others === 0
        ? "All else is on the shelf."
        : `It is short of ${counted(others, "more material", "more materials")} too.`}
      {better &&
        better.dependsOn.length > 0 &&
        ` It could be made ${dayShown(better.day, of.today)} if ${inARow(better.dependsOn)}.`}
    </Docket>
  );
}

function AnotherWay({ outlook, of }: OfRun): ReactNode {
  const { run, mostUnits } = outlook;
  const better = of.better.get(run);
  const carried = of.carriedOf(run);
  if (better)
    return (
      <Press
        act={putRun}
        carried={{ ...carried, to: isoDate(better.day), before: "" }}
        name={`Move to ${dayShown(better.day, of.today)}: ${nameOf(outlook, of)}`}
      >
        Move to {dayShown(better.day, of.today)}
      </Press>
    );
  if (mostUnits > 0n)
    return (
      <Press
        act={resizeTo}
        carried={{ ...carried, to: mostUnits.toString() }}
        name={`Plan only ${countShown(mostUnits)} of ${countShown(run.units)}: ${nameOf(outlook, of)}`}
      >
        Plan only {countShown(mostUnits)} of {countShown(run.units)}
      </Press>
    );
  return (
    <Link className="button" href={runAddress(run)} prefetch={false}>
      See what it lacks<span className="unseen">: {nameOf(outlook, of)}</span>
    </Link>
  );
}

/** A run whose day has passed. */
export const NotClosedDocket = ({ outlook, of }: OfRun): ReactNode => (
  <Docket
    href={runAddress(outlook.run)}
    name={nameOf(outlook, of)}
    sign={
      <Sign sign="dash" tone="still">
        not closed
      </Sign>
    }
    act={
      <Link className="button" href={runAddress(outlook.run)} prefetch={false}>
        Say what became of it<span className="unseen">: {nameOf(outlook, of)}</span>
      </Link>
    }
  >
    Its day has passed. Until you say what became of it, the plan takes it as made today
    {outlook.makeable
      ? "."
      : `, for which it is short of ${inARow(outlook.short.map(({ material }) => material.name))}.`}
  </Docket>
);

interface OfBatch {
  readonly batch: Batch;
  readonly of: Today;
}

const batchName = (batch: Batch, { workshop }: Pick<Today, "workshop">): string =>
  `${workshop.products.find(({ id }) => id === batch.run.product)?.name ?? "Batch"}, batch ${codeOf(batch)}`;

/** `4 of 10 lines weighed` */
export function weighedWords(batch: Batch): string {
  const lines = linesWeighed(batch);
  const done = lines.filter(({ state }) => state === "done").length;
  return `${countShown(done)} of ${countShown(lines.length)}${NO_BREAK}${lines.length === 1 ? "line" : "lines"} weighed`;
}

/** A batch that was started on an earlier day and is open still. */
export const LeftOpenDocket = ({ batch, of }: OfBatch): ReactNode => (
  <Docket
    href={batchAddress(batch.run.id)}
    name={batchName(batch, of)}
    sign={
      <Sign sign="dash" tone="still">
        open since {dayShown(batch.startedOn, of.today)}
      </Sign>
    }
    act={
      <Link className="button" href={batchAddress(batch.run.id)} prefetch={false}>
        Carry on weighing<span className="unseen"> {batchName(batch, of)}</span>
      </Link>
    }
  >
    {weighedWords(batch)}, started by {batch.startedBy}.
  </Docket>
);

/** A batch that was closed and waits for a second look. */
export const ToJudgeDocket = ({ batch, of }: OfBatch): ReactNode => (
  <Docket
    href={recordAddress(batch.run.id)}
    name={batchName(batch, of)}
    sign={
      <Sign sign="dash" tone="still">
        waits for a second look
      </Sign>
    }
    act={
      <Link className="button" href={recordAddress(batch.run.id)} prefetch={false}>
        Release or reject it<span className="unseen">, {batchName(batch, of)}</span>
      </Link>
    }
  >
    Closed and held: its units are not for sale until somebody has looked again.
  </Docket>
);
