import type { Metadata } from "next";
import Link from "next/link";
import type { ReactNode } from "react";
import { AskingForm } from "@/app/_ui/asking-form";
import { Opening } from "@/app/_ui/finding";
import { newId } from "@/app/_ui/new-id";
import { checksAsked, checksFound } from "@/lib/domain/bench/asked-checks";
import { stateOf } from "@/lib/domain/bench/batch";
import { formulaAsStarted } from "@/lib/domain/bench/started-as";
import { isWithinTolerance, linesWeighed } from "@/lib/domain/bench/weights";
import { batchAddress, labelAddress } from "@/lib/edge/bench-address";
import { offShown } from "@/lib/edge/bench-weights";
import { STATE_WORDS } from "@/lib/edge/bench-words";
import { dayShown } from "@/lib/edge/figures";
import { unitsInWords } from "@/lib/edge/forms/posting-forms";
import { finishedAddress } from "@/lib/edge/ledger-address";
import { judgeABatch, writeANote } from "../../actions";
import { OpenChecks, reasonForNoCheck } from "../../_parts/open-checks";
import { BatchRecord } from "../../_parts/batch-record";
import { foundInWords } from "../../_parts/record-words";
import { WaitingNotes } from "../../_parts/waiting-notes";
import { batchForPage, type BatchOnPage } from "../../batch-for-page";
import { decimalsOf } from "../../bench-on-page";
import "../../bench.css";

interface Page {
  readonly params: Promise<{ readonly batch: string }>;
}

export async function generateMetadata({ params }: Page): Promise<Metadata> {
  return { title: `Record of batch ${(await batchForPage((await params).batch)).code}` };
}

/** The batch record: one document to read, print and sign; after closing it is only added to. */
export default async function RecordPage({ params }: Page): Promise<ReactNode> {
  const found = await batchForPage((await params).batch);
  const { batch, as, code, today } = found;
  const state = stateOf(batch);
  return (
    <>
      <Opening
        crumb={
          <>
            <Link href="/bench">The bench</Link>
            {state === "open" && (
              <>
                {" "}
                · <Link href={batchAddress(batch.run.id)}>Batch {code}</Link>
              </>
            )}
          </>
        }
        title={`${as.product}, batch ${code}`}
        beside={<Ways found={found} />}
      >
        <b>{STATE_WORDS[state]}.</b> {unitsInWords(batch.run.units)} planned, started{" "}
        {dayShown(batch.startedOn, today, { year: true })} by {batch.startedBy}. <Outside found={found} />
      </Opening>
      <WaitingNotes batch={batch.run.id} known={batch.notes.map(({ key }) => key)} />
      {state === "held" && <Judging found={found} />}
      <BatchRecord found={found} />
      {state !== "open" && <Annexing found={found} />}
    </>
  );
}

/** Where the units are, and the labels that they bear. */
function Ways({ found: { batch, product, code, workshop } }: { readonly found: BatchOnPage }): ReactNode {
  const state = stateOf(batch);
  const isMade = product.madeInto === null && (state === "released" || state === "held");
  const labels = workshop.labels.filter((label) => label.product === product.id);
  if (!isMade && labels.length === 0) return null;
  return (
    <p className="bench-ways">
      {isMade && (
        <Link className="button" href={finishedAddress(code)}>
          Where its units are
        </Link>
      )}
      {labels.map(({ id }) => (
        <Link key={id} className="button" href={labelAddress(id, code)}>
          Its label
        </Link>
      ))}
    </p>
  );
}

/** What was weighed or found outside what is asked, by name. */
function Outside({ found }: { readonly found: BatchOnPage }): ReactNode {
  const { batch, as } = found;
  const weights = linesWeighed(batch).flatMap(({ line, weights, total }) => {
    const off = total - line.target;
    return weights.length === 0 || isWithinTolerance(off, line.tolerance)
      ? []
      : [`${line.called} ${offShown(off, decimalsOf(as.step))}`];
  });
  const checks = checksFound(batch, checksAsked(formulaAsStarted(found, batch))).flatMap((each) => {
    const { says, isOut } = foundInWords(each);
    return isOut ? [`${each.check.what} ${says}`] : [];
  });
  const all = [...weights, ...checks];
  return all.length > 0 && <span className="warn">Outside: {all.join("; ")}.</span>;
}

const Judging = ({ found }: { readonly found: BatchOnPage }): ReactNode => (
  <section className="bench-list screen-only" aria-labelledby="judge">
    <h2 id="judge">Second look</h2>
    <OpenChecks found={found} />
    <AskingForm
      act={judgeABatch}
      carried={{ batch: found.batch.run.id }}
      kept={{ key: newId() }}
      fields={[
        { name: "who", label: "Looked at by", type: "text", value: found.batch.startedBy },
        { name: "why", label: "What was seen", type: "text", value: "", hint: "A reason is needed to reject it." },
        ...reasonForNoCheck(found),
      ]}
      button="Release it"
      other={{ deed: "rejected", label: "Reject it" }}
    />
  </section>
);

const Annexing = ({ found: { batch } }: { readonly found: BatchOnPage }): ReactNode => (
  <section className="bench-list screen-only" aria-labelledby="annex">
    <h2 id="annex">Add to the record</h2>
    <p className="label">The record itself is not changed any more; what is learnt later stands after it.</p>
    <AskingForm
      act={writeANote}
      carried={{ batch: batch.run.id, kind: "annexed", who: batch.startedBy }}
      kept={{ key: newId() }}
      fields={[{ name: "found", label: "What is added", type: "text", value: "" }]}
      button="Add it"
    />
  </section>
);
