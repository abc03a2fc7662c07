import type { Metadata } from "next";
import Link from "next/link";
import { redirect } from "next/navigation";
import type { ReactNode } from "react";
import { AskingForm } from "@/app/_ui/asking-form";
import { Opening } from "@/app/_ui/finding";
import { FirstDeed } from "@/app/_ui/first-deed";
import { Sign } from "@/app/_ui/sign";
import { type Planned, planForPage } from "@/app/plan-for-page";
import { type Batch, codeOf, openBatches, stateOf } from "@/lib/domain/bench/batch";
import { type BatchCodeScheme, DATINGS } from "@/lib/domain/bench/batch-code";
import type { RunOutlook } from "@/lib/domain/plan-figures";
import type { Day } from "@/lib/domain/calendar";
import { startedAs } from "@/lib/domain/bench/started-as";
import { linesWeighed } from "@/lib/domain/bench/weights";
import { batchAddress, recordAddress, startAddress } from "@/lib/edge/bench-address";
import { STATE_WORDS } from "@/lib/edge/bench-words";
import { inWordsFirst } from "@/lib/edge/counted";
import { countShown, dayShown } from "@/lib/edge/figures";
import { unitsInWords } from "@/lib/edge/forms/posting-forms";
import { keepBatchCodes } from "./actions";
import { nextCodeForPage } from "./next-code";
import "./bench.css";

export const metadata: Metadata = { title: "Bench" };

/** Runs that can be started, batches that are open, and those that were closed. */
export default async function BenchPage(): Promise<ReactNode> {
  const found = await planForPage();
  if (!found) redirect("/");
  const { desk, plan, today } = found;
  const open = openBatches(desk.batches);
  const held = desk.batches.filter((batch) => stateOf(batch) === "held");
  const closed = desk.batches.filter((batch) => !open.includes(batch) && !held.includes(batch)).toReversed();
  const started = new Set(desk.batches.map(({ run }) => run.id));
  const toStart = plan.runs
    .filter(({ run }) => !started.has(run.id))
    .toSorted((a, b) => a.run.date - b.run.date || a.run.sequence - b.run.sequence)
    .slice(0, MOST_TO_START);
  return (
    <>
      <Opening title="The bench">
        {open.length === 0 ? (
          "Nothing is being weighed."
        ) : (
          <b>
            {inWordsFirst(open.length)} {open.length === 1 ? "batch is" : "batches are"} open.
          </b>
        )}{" "}
        {held.length > 0 &&
          `${inWordsFirst(held.length)} ${held.length === 1 ? "batch waits" : "batches wait"} for a second look. `}
        {found.workshop.products.length === 0
          ? "A batch is a planned run of a product: write down the first."
          : toStart.length === 0
            ? NOTHING_TO_START
            : "Start a planned run as a batch; each weight leaves the shelf as it is written down."}
      </Opening>
      {found.workshop.products.length === 0 && <FirstDeed href="/book/first">Write down the first product</FirstDeed>}
      {open.length > 0 && <Batches title="Open" batches={open} found={found} address={batchAddress} />}
      {held.length > 0 && (
        <Batches title="Waiting for a second look" batches={held} found={found} address={recordAddress} />
      )}
      {toStart.length > 0 && <ToStart runs={toStart} today={today} />}
      {closed.length > 0 && <Batches title="Closed" batches={closed} found={found} address={recordAddress} />}
      <Codes scheme={desk.batchCodeScheme} next={await nextCodeForPage()} />
    </>
  );
}

const MOST_TO_START = 20;

const NOTHING_TO_START = (
  <>
    No run is planned: <Link href="/week?plan=run">plan one on the week</Link>, and it is started here.
  </>
);

/** What is planned, soonest first, each with the way to start it. */
const ToStart = ({ runs, today }: { readonly runs: readonly RunOutlook[]; readonly today: Day }): ReactNode => (
  <section className="bench-list" aria-labelledby="to-start">
    <h2 id="to-start">Planned, to be started</h2>
    <ul>
      {runs.map(({ run, product, makeable }) => (
        <li key={run.id} className="to-start">
          <span className="soft">{dayShown(run.date, today)}</span>
          <span>
            {product.name}, {unitsInWords(run.units)}
          </span>
          <span className="small">
            {!makeable && (
              <Sign sign="box" tone="wrong">
                the shelf does not hold all of it
              </Sign>
            )}
          </span>
          <Link className="button" href={startAddress(run.id)} prefetch={false}>
            Start
            <span className="unseen">
              {" "}
              {product.name}, {unitsInWords(run.units)}
            </span>
          </Link>
        </li>
      ))}
    </ul>
  </section>
);

function Batches({
  title,
  batches,
  found,
  address,
}: {
  readonly title: string;
  readonly batches: readonly Batch[];
  readonly found: Planned;
  readonly address: typeof batchAddress | typeof recordAddress;
}): ReactNode {
  return (
    <section className="bench-list">
      <h2>{title}</h2>
      <ul>
        {batches.map((batch) => {
          const lines = linesWeighed(batch);
          const done = lines.filter(({ state }) => state === "done").length;
          return (
            <li key={batch.code}>
              <Link href={address(batch.run.id)}>
                {codeOf(batch)}, {startedAs(batch, found.workshop).product}
              </Link>
              <span>
                {STATE_WORDS[stateOf(batch)]}; {countShown(done)} of {countShown(lines.length)}{" "}
                {lines.length === 1 ? "line" : "lines"} weighed, started {dayShown(batch.startedOn, found.today)} by{" "}
                {batch.startedBy}
              </span>
            </li>
          );
        })}
      </ul>
    </section>
  );
}

/** How the codes of batches are made. */
function Codes({ scheme, next }: { readonly scheme: BatchCodeScheme | null; readonly next: string | null }): ReactNode {
  return (
    <section className="bench-list" aria-labelledby="codes">
      <h2 id="codes">Batch codes</h2>
      <p>
        {scheme === null ? (
          "You have not said yet how your batches are called; until then you write each code yourself."
        ) : (
          <>
            The next batch is called <b>{next}</b>.
          </>
        )}
      </p>
      <AskingForm
        act={keepBatchCodes}
        carried={{}}
        button="Call batches like this"
        fields={[
          { name: "before", label: "Text before (optional)", type: "text", value: scheme?.before ?? "" },
          {
            name: "dating",
            label: "Date in the code",
            type: "choice",
            value: scheme?.dating ?? DATINGS[1],
            options: DATINGS.map((value) => ({ value, label: DATING_WORDS[value] })),
          },
          {
            name: "between",
            label: "Text before the number (optional)",
            type: "text",
            value: scheme?.between ?? "-",
          },
          { name: "digits", label: "Digits of the number", type: "text", value: String(scheme?.digits ?? 2) },
        ]}
      />
    </section>
  );
}

const DATING_WORDS = {
  none: "No date",
  "year, month and day": "Year, month and day, as 261125",
  "year and day of the year": "Year and day of the year, as 26329",
} as const;
