import { randomUUID } from "node:crypto";
import type { Metadata } from "next";
import Link from "next/link";
import { notFound, redirect } from "next/navigation";
import type { ReactNode } from "react";
import { Opening } from "@/app/_ui/finding";
import { type Planned, planForPage } from "@/app/plan-for-page";
import { byId } from "@/lib/domain/index-by-id";
import { makingIn } from "@/lib/domain/ledger/making";
import { standingPostings } from "@/lib/domain/ledger/standing-postings";
import { closeAsMade } from "@/lib/domain/made-run";
import { plan } from "@/lib/domain/plan";
import { changedBy } from "@/lib/domain/plan-changes";
import type { Run } from "@/lib/domain/workshop";
import { batchAddress } from "@/lib/edge/bench-address";
import { dayShown } from "@/lib/edge/figures";
import { idOfSegment } from "@/lib/edge/ledger-address";
import { readHistoryOfRun } from "@/lib/store/ledger/ledger-answers";
import { type Parameters, textOf } from "../../_parts/deed";
import { MadeFinding, MadeRun } from "../../_parts/made-run";
import { MakeFinding, MakeForm } from "../../_parts/make-form";
import { MakeNotice } from "../../_parts/make-notice";
import { weekWith } from "../../_parts/week-view";
import { WhatChanged } from "../../_parts/what-changed";
import { type Day, isoDate, mondayOf } from "@/lib/domain/calendar";
import "../../week.css";

export const metadata: Metadata = { title: "Making a run" };

interface Page {
  readonly params: Promise<{ readonly run: string }>;
  readonly searchParams: Promise<Parameters>;
}

/** One run: what it draws, lot by lot, before it is closed as made; and afterwards what came of it. */
export default async function MakePage({ params, searchParams }: Page): Promise<ReactNode> {
  const [found, parameters] = await Promise.all([planForPage(), searchParams]);
  if (!found) redirect("/");
  const id = idOfSegment((await params).run);
  const run = found.workshop.runs.find((each) => each.id === id);
  const closed = found.desk.closedRuns.find((each) => each.run.id === id);
  const did = textOf(parameters, "did");
  // What was weighed as a batch has its record at the bench.
  if (id !== null && found.desk.batches.some((batch) => batch.run.id === id)) redirect(batchAddress(id));
  if (run) return <Planning found={found} run={run} did={did} />;
  if (closed) return <Closed found={found} closed={closed} did={did} />;
  if (id !== null && did === "gone meanwhile") return <Gone today={found.today} />;
  notFound();
}

/** Short enough to write on a jar; where it should be taken already, the run is refused. */
const newLot = (today: Day): string => `${isoDate(today)}-${randomUUID().slice(0, 6)}`;

interface OfRun {
  readonly found: Planned;
  readonly did: string;
}

/** Everything that the run could draw, whatever the shelf has made ahead. */
const usesAtMost = ({ openedByProduct, usesByProduct }: Planned["prepared"], { product }: Run) =>
  openedByProduct.get(product)?.atMost.uses ?? usesByProduct.get(product) ?? [];

/** What it would take and change is worked out before it is confirmed; nothing is kept. */
function Planning({ found, run, did }: OfRun & { readonly run: Run }): ReactNode {
  const { workshop, desk, today, prepared } = found;
  const asked = { run: run.id, today, unitsMade: run.units, finishedLot: { id: newLot(today), bestBefore: null } };
  const strict = closeAsMade({ workshop, desk }, { ...asked, ifShort: "refuse" });
  const made =
    strict.kind === "short" ? closeAsMade({ workshop, desk }, { ...asked, ifShort: "draw what is there" }) : strict;
  const outlook = found.plan.runs.find((each) => each.run === run);
  if (made.kind !== "made" || !outlook) notFound();
  const making = {
    outlook,
    today,
    made,
    short: strict.kind === "short" ? strict.short : [],
    uses: usesAtMost(prepared, run),
    workshop,
  };
  return (
    <>
      <Opening crumb={<Back run={run} />} title={`Making ${outlook.product.name}`}>
        <MakeFinding making={making} />
      </Opening>
      <MakeNotice did={did} />
      <MakeForm making={making} newKey={randomUUID()} newLot={asked.finishedLot.id} />
      <WhatChanged
        changes={changedBy(found.plan, plan(made.books.workshop, today))}
        today={today}
        title="What closing it as planned changes"
      />
    </>
  );
}

async function Closed({
  found,
  closed,
  did,
}: OfRun & { readonly closed: Planned["desk"]["closedRuns"][number] }): Promise<ReactNode> {
  const { workshop, prepared, today } = found;
  const { run } = closed;
  const postings = (await readHistoryOfRun(run.id)).map(({ posting }) => posting);
  const posting = standingPostings(postings).find(({ kind }) => kind === "made") ?? null;
  const product = byId("product", workshop.products)(run.product);
  const making = posting && makingIn(posting);
  const view = {
    closed,
    product,
    posting,
    making,
    workshop,
    today,
    uses: usesAtMost(prepared, run),
    isAtMost: prepared.openedByProduct.has(run.product),
  };
  return (
    <>
      <Opening crumb={<Back run={run} />} title={`${product.name}, made ${dayShown(closed.madeOn, today)}`}>
        <MadeFinding view={view} />
      </Opening>
      <MakeNotice did={did} />
      <MadeRun view={view} newKey={randomUUID()} />
    </>
  );
}

const Back = ({ run }: { readonly run: Run }): ReactNode => (
  <Link href={weekWith(mondayOf(run.date), {})}>The week</Link>
);

const Gone = ({ today }: { readonly today: Planned["today"] }): ReactNode => (
  <Opening title="This run is not planned any more">
    It was removed meanwhile, in another tab. Nothing was changed. See{" "}
    <Link href={weekWith(mondayOf(today), {})}>the week</Link>.
  </Opening>
);
