import { randomUUID } from "node:crypto";
import type { Metadata } from "next";
import Link from "next/link";
import { notFound, redirect } from "next/navigation";
import type { ReactNode } from "react";
import { Opening } from "@/app/_ui/finding";
import { TakeItBack } from "@/app/_ui/take-it-back";
import { readOnce } from "@/app/plan-for-page";
import { isoDate } from "@/lib/domain/calendar";
import { lotsOf, type Posted } from "@/lib/domain/ledger/posting";
import { dayShown } from "@/lib/edge/figures";
import { measureField } from "@/lib/edge/forms/posting-forms";
import { historyAddress, idOfSegment, postingAddress } from "@/lib/edge/ledger-address";
import { lotWords } from "@/lib/edge/lot-words";
import { movedInWords } from "@/lib/edge/posting-sentence";
import { POSTING_WORDS } from "@/lib/edge/posting-words";
import { realToday } from "@/lib/edge/real-today";
import { readPosting, readStruckOff } from "@/lib/store/ledger/ledger-answers";
import { type Query, textIn } from "../../_parts/addresses";
import { Crumb } from "../../_parts/crumb";
import { PostingEntries } from "../../_parts/posting-entries";
import { reverseIt } from "../reversal-actions";

export const metadata: Metadata = { title: "A posting" };

interface Page {
  readonly params: Promise<{ readonly posting: string }>;
  readonly searchParams: Promise<Query>;
}

/** One posting with its entries, and the way to take it back. */
export default async function PostingPage({ params, searchParams }: Page): Promise<ReactNode> {
  const id = idOfSegment((await params).posting);
  const [books, found, struckOff, parameters] = await Promise.all([
    readOnce(),
    id === null ? null : readPosting(id),
    readStruckOff(),
    searchParams,
  ]);
  if (!books) redirect("/");
  if (!found) notFound();
  const { posting, reversedBy } = found;
  const { workshop } = books;
  const today = workshop.settings.today ?? realToday();
  const words = lotWords(workshop, struckOff);
  return (
    <>
      <Opening
        crumb={
          <>
            <Crumb /> · <Link href={historyAddress(posting.day)}>History of {dayShown(posting.day, today)}</Link>
          </>
        }
        title={`${POSTING_WORDS[posting.kind]}, ${dayShown(posting.day, today)}`}
      >
        {movedInWords(posting, words, workshop.settings.currency)} <Finding posting={posting} reversedBy={reversedBy} />
      </Opening>
      <div role="status">
        {textIn(parameters, "did") === "reversed" && reversedBy && (
          <p className="done">Taken back. Both postings stay in the history.</p>
        )}
      </div>
      <PostingEntries entries={posting.entries} words={words} currency={workshop.settings.currency} />
      {reversedBy === null && posting.kind !== "reversal" && (
        <TakeItBack
          act={reverseIt}
          title="Was it entered by mistake?"
          says="A second posting says the opposite of every entry. Both stay in the history."
          carried={{
            posting: posting.id,
            ...Object.fromEntries(
              lotsOf(posting).flatMap((lot) => {
                const { measure } = words(lot);
                return measure === null ? [] : [[measureField(lot.id), measure]];
              }),
            ),
          }}
          newKey={randomUUID()}
          day={isoDate(today)}
          button="Take it back"
        />
      )}
    </>
  );
}

interface Found {
  readonly posting: Posted;
  readonly reversedBy: Posted | null;
}

function Finding({ posting: { reason, reverses, day }, reversedBy }: Found): ReactNode {
  return (
    <>
      {reason === null ? "Without a note." : `“${reason}”.`}{" "}
      {reverses !== null && (
        <>
          It takes back <Link href={postingAddress(reverses)}>an earlier posting</Link>.
        </>
      )}
      {reversedBy && (
        <>
          It was <Link href={postingAddress(reversedBy.id)}>taken back</Link> for{" "}
          {dayShown(reversedBy.day, day, { year: true })}
          {reversedBy.reason === null ? "" : `: “${reversedBy.reason}”`}.
        </>
      )}
    </>
  );
}
