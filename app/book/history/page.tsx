import type { Metadata } from "next";
import Link from "next/link";
import { redirect } from "next/navigation";
import type { ReactNode } from "react";
import { DayChoice } from "@/app/_ui/day-choice";
import { Opening } from "@/app/_ui/finding";
import { Ledger } from "@/app/_ui/ledger";
import { readOnce } from "@/app/plan-for-page";
import { type Day, dayOf, daysAfter, isoDate } from "@/lib/domain/calendar";
import type { HistoryLine } from "@/lib/domain/ledger/history";
import { isNothing, lotsOf, wholeValue } from "@/lib/domain/ledger/posting";
import { costsNotKnown, NOT_KNOWN } from "@/lib/edge/cost-words";
import { counted, inARow, inWordsFirst } from "@/lib/edge/counted";
import { longDayShown, moneyShown } from "@/lib/edge/figures";
import { type LotWords, lotWords } from "@/lib/edge/lot-words";
import { historyAddress, postingAddress } from "@/lib/edge/ledger-address";
import { POSTING_WORDS } from "@/lib/edge/posting-words";
import { realToday } from "@/lib/edge/real-today";
import { readHistoryOfDay, readStruckOff } from "@/lib/store/ledger/ledger-answers";
import { type Query, textIn } from "../_parts/addresses";
import { Crumb } from "../_parts/crumb";

export const metadata: Metadata = { title: "History" };

/** What was posted for a day, the newest first, with what stock was worth after each. */
export default async function HistoryPage({
  searchParams,
}: {
  readonly searchParams: Promise<Query>;
}): Promise<ReactNode> {
  const [books, parameters] = await Promise.all([readOnce(), searchParams]);
  if (!books) redirect("/");
  const { workshop } = books;
  const today = workshop.settings.today ?? realToday();
  const day = dayOf(textIn(parameters, "day")) ?? today;
  const [{ before, lines }, struckOff] = await Promise.all([readHistoryOfDay(day), readStruckOff()]);
  const { currency } = workshop.settings;
  const after = lines.at(-1)?.balance.value ?? before.total;
  return (
    <>
      <Opening
        crumb={<Crumb />}
        title={`History of ${longDayShown(day, today)}`}
        beside={
          <DayChoice
            action="/book/history"
            fields={[{ name: "day", label: "Day", value: isoDate(day) }]}
            button="Show"
          />
        }
      >
        {lines.length === 0
          ? `Nothing was posted for this day. Stock was worth ${moneyShown(wholeValue(after), currency)}.`
          : `${inWordsFirst(lines.length)} ${lines.length === 1 ? "posting" : "postings"}. Stock was worth ${moneyShown(wholeValue(before.total), currency)} before, and ${moneyShown(wholeValue(after), currency)} at the end of the day.`}
      </Opening>
      <Neighbours day={day} today={today} />
      {lines.length > 0 && <Postings lines={lines} words={lotWords(workshop, struckOff)} currency={currency} />}
    </>
  );
}

const Neighbours = ({ day, today }: { readonly day: Day; readonly today: Day }): ReactNode => (
  <p className="history-days">
    <Link href={historyAddress(daysAfter(day, -1))}>Day before</Link>
    {day < today && <Link href={historyAddress(daysAfter(day, 1))}>Day after</Link>}
    <Link href="/book/stock-value">Value of stock</Link>
  </p>
);

interface Listed {
  readonly lines: readonly HistoryLine[];
  readonly words: (lot: HistoryLine["entries"][number]["lot"]) => LotWords;
  readonly currency: Parameters<typeof moneyShown>[1];
}

function Postings({ lines, words, currency }: Listed): ReactNode {
  return (
    <Ledger
      caption="Postings of the day, the newest first"
      columns={[
        { name: "Posting" },
        { name: "Of" },
        { name: "Value in or out", kind: "number" },
        { name: "Stock worth after", kind: "number" },
      ]}
    >
      {lines.toReversed().map(({ posting, value, balance }) => (
        <tr key={posting.id}>
          <th scope="row">
            <Link href={postingAddress(posting.id)}>{POSTING_WORDS[posting.kind]}</Link>
            {posting.reason !== null && <small>{posting.reason}</small>}
          </th>
          <td className="second-line">{ofWhat(posting, words)}</td>
          <td className="number end">
            {isNothing(value) && costsNotKnown(posting.entries) > 0
              ? NOT_KNOWN
              : moneyShown(wholeValue(value), currency)}
          </td>
          <td className="number not-on-phone">{moneyShown(wholeValue(balance.value), currency)}</td>
        </tr>
      ))}
    </Ledger>
  );
}

const MOST_NAMED = 3;

function ofWhat(posting: HistoryLine["posting"], words: Listed["words"]): string {
  const names = lotsOf(posting).map((lot) => `${words(lot).name} (lot ${lot.id})`);
  if (names.length <= MOST_NAMED + 1) return inARow(names);
  return inARow([...names.slice(0, MOST_NAMED), counted(names.length - MOST_NAMED, "more lot", "more lots")]);
}
