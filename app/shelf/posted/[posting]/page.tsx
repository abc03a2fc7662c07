import type { Metadata } from "next";
import { notFound, redirect } from "next/navigation";
import type { ReactNode } from "react";
import { Opening } from "@/app/_ui/finding";
import { newId } from "@/app/_ui/new-id";
import { RecordForm } from "@/app/_ui/record-form";
import { planForPage } from "@/app/plan-for-page";
import { type Day, isoDate } from "@/lib/domain/calendar";
import { lotsOf, type Posted } from "@/lib/domain/ledger/posting";
import { counted } from "@/lib/edge/counted";
import { currencySign, dayShown } from "@/lib/edge/figures";
import { TAKE_BACK_FORM } from "@/lib/edge/forms/take-back-form";
import { POSTING_WORDS } from "@/lib/edge/posting-words";
import { readPosting } from "@/lib/store/ledger/ledger-answers";
import { idInStep } from "../../_parts/addresses";
import { lotsNamedIn } from "../../_parts/lots-named";
import { PostingLedger } from "../../_parts/posting-ledger";
import { ShelfCrumb } from "../../_parts/shelf-crumb";
import { takePostingBack } from "./actions";
import "../../shelf.css";

export const metadata: Metadata = { title: "A posting" };

interface Addressed {
  readonly params: Promise<{ readonly posting: string }>;
}

/** One posting: what it moved, and the way to take it back. */
export default async function PostingPage({ params }: Addressed): Promise<ReactNode> {
  const [found, { posting: step }] = await Promise.all([planForPage(), params]);
  if (!found) redirect("/");
  const id = idInStep(step);
  const kept = id === null ? null : await readPosting(id);
  if (kept === null) notFound();
  const { posting, reversedBy } = kept;
  const { workshop, today } = found;
  const { currency } = workshop.settings;
  const lotNamed = lotsNamedIn(workshop);
  return (
    <>
      <Opening crumb={<ShelfCrumb />} title={POSTING_WORDS[posting.kind]}>
        {counted(lotsOf(posting).length, "lot", "lots").replace(/^./, (first) => first.toUpperCase())}, on{" "}
        <b>{dayShown(posting.day, today)}</b>
        {posting.reason !== null && `: ${posting.reason}`}.{" "}
        {reversedBy && (
          <>
            <b>Taken back</b> on {dayShown(reversedBy.day, today)}: {reversedBy.reason}.
          </>
        )}
      </Opening>
      <PostingLedger posting={posting} lotNamed={lotNamed} currency={currency} />
      {reversedBy === null && posting.kind !== "reversal" && (
        <TakeBack posting={posting} today={today} currency={currencySign(currency)} />
      )}
    </>
  );
}

interface Back {
  readonly posting: Posted;
  readonly today: Day;
  readonly currency: string;
}

const TakeBack = ({ posting, today, currency }: Back): ReactNode => (
  <section className="shelf-form" aria-labelledby="take-it-back">
    <h2 id="take-it-back">Take it back</h2>
    <p>
      Another posting says the opposite, and both stay.
      {posting.kind === "received" && " A line that it settled does not go back on order; enter the order anew."}
    </p>
    <RecordForm
      fields={TAKE_BACK_FORM}
      values={{ id: newId(), day: isoDate(today), reason: "" }}
      choices={{}}
      money={currency}
      seen=""
      send={takePostingBack.bind(null, posting.id)}
      buttons={[{ deed: "post", label: "Take it back" }]}
    />
  </section>
);
