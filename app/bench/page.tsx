import type { Metadata } from "next";
import Link from "next/link";
import { redirect } from "next/navigation";
import type { ReactNode } from "react";
import { Opening } from "@/app/_ui/finding";
import { FirstDeed } from "@/app/_ui/first-deed";
import { type Planned, planForPage } from "@/app/plan-for-page";
import { type Batch, codeOf, openBatches, stateOf } from "@/lib/domain/bench/batch";
import { startedAs } from "@/lib/domain/bench/started-as";
import { linesWeighed } from "@/lib/domain/bench/weights";
import { batchAddress, recordAddress } from "@/lib/edge/bench-address";
import { STATE_WORDS } from "@/lib/edge/bench-words";
import { countShown, dayShown } from "@/lib/edge/figures";
import { BatchCodes } from "./_parts/batch-codes";
import { BenchListFinding } from "./_parts/bench-list-finding";
import { ToStart } from "./_parts/to-start";
import { nextCodeForPage } from "./next-code";
import "./bench.css";

export const metadata: Metadata = { title: "Bench" };

/** Batches that are open, runs that can be started, and batches that were closed. */
export default async function BenchPage(): Promise<ReactNode> {
  const found = await planForPage();
  if (!found) redirect("/");
  const { desk, plan, today } = found;
  const open = openBatches(desk.batches);
  const isEmpty = found.workshop.products.length === 0;
  const held = desk.batches.filter((batch) => stateOf(batch) === "held");
  const closed = desk.batches.filter((batch) => !open.includes(batch) && !held.includes(batch)).toReversed();
  const started = new Set(desk.batches.map(({ run }) => run.id));
  const toStart = plan.runs
    .filter(({ run }) => !started.has(run.id))
    .toSorted((a, b) => a.run.date - b.run.date || a.run.sequence - b.run.sequence);
  return (
    <>
      <Opening title="The bench">
        {isEmpty ? (
          "A batch is a planned run of a product: write down the first."
        ) : (
          <BenchListFinding toStart={toStart} open={open} held={held} today={today} />
        )}
      </Opening>
      {isEmpty && <FirstDeed href="/book/first">Write down the first product</FirstDeed>}
      {open.length > 0 && <Batches title="Open" batches={open} found={found} isOpen />}
      {held.length > 0 && <Batches title="Waiting for a second look" batches={held} found={found} />}
      {toStart.length > 0 && <ToStart runs={toStart} today={today} isFirst={open.length === 0} />}
      {closed.length > 0 && <Batches title="Closed" batches={closed} found={found} />}
      <BatchCodes scheme={desk.batchCodeScheme} next={await nextCodeForPage()} />
    </>
  );
}

interface BatchList {
  readonly title: string;
  readonly batches: readonly Batch[];
  readonly found: Planned;
  /** Whether they are weighed further, and not only read. */
  readonly isOpen?: boolean;
}

function Batches({ title, batches, found, isOpen = false }: BatchList): ReactNode {
  const address = isOpen ? batchAddress : recordAddress;
  return (
    <section className="bench-list">
      <h2>{title}</h2>
      <ul>
        {batches.map((batch, at) => {
          const lines = linesWeighed(batch);
          const done = lines.filter(({ state }) => state === "done").length;
          return (
            <li key={batch.code} className="of-batch">
              <Link href={address(batch.run.id)}>
                {codeOf(batch)}, {startedAs(batch, found.workshop).product}
              </Link>
              <span>
                {!isOpen && `${STATE_WORDS[stateOf(batch)]}; `}
                {countShown(done)} of {countShown(lines.length)} {lines.length === 1 ? "line" : "lines"} weighed,
                started {dayShown(batch.startedOn, found.today)} by {batch.startedBy}
              </span>
              {isOpen && (
                <Link className={at === 0 ? "button first" : "button"} href={address(batch.run.id)} prefetch={false}>
                  Carry on weighing
                  <span className="unseen"> {codeOf(batch)}</span>
                </Link>
              )}
            </li>
          );
        })}
      </ul>
    </section>
  );
}
