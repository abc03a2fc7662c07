import { randomUUID } from "node:crypto";
import type { Metadata } from "next";
import Link from "next/link";
import { notFound, redirect } from "next/navigation";
import type { ReactNode } from "react";
import { Opening } from "@/app/_ui/finding";
import { HowItComes } from "@/app/_ui/how-it-comes";
import { WaitsAtBenchLink } from "@/app/_ui/waits-at-bench";
import { readOnce } from "@/app/plan-for-page";
import { ratio } from "@/lib/domain/fraction";
import { finishedLot, wholeValue } from "@/lib/domain/ledger/posting";
import { dayShown, moneyShown } from "@/lib/edge/figures";
import { unitsInWords } from "@/lib/edge/forms/posting-forms";
import { idOfSegment } from "@/lib/edge/ledger-address";
import { lotWords } from "@/lib/edge/lot-words";
import { realToday } from "@/lib/edge/real-today";
import { readHistoryOfLot, readStock, readStruckOff, readTraceBack } from "@/lib/store/ledger/ledger-answers";
import { finishedStock, type FinishedStock } from "../../_parts/finished-stock";
import { LotForms } from "../../_parts/lot-forms";
import { FinishedHistory } from "../../_parts/finished-history";
import { FinishedTrace } from "../../_parts/finished-trace";
import "../../shelf.css";

export const metadata: Metadata = { title: "A finished lot" };

interface Page {
  readonly params: Promise<{ readonly lot: string }>;
  readonly searchParams: Promise<Readonly<Record<string, string | readonly string[] | undefined>>>;
}

/** One finished lot: what is there of it and what it cost, what became of it, and what it came from. */
export default async function FinishedLotPage({ params, searchParams }: Page): Promise<ReactNode> {
  const [books, kept, struckOff, parameters] = await Promise.all([
    readOnce(),
    readStock(),
    readStruckOff(),
    searchParams,
  ]);
  if (!books) redirect("/");
  const id = idOfSegment((await params).lot);
  const { workshop } = books;
  const found = finishedStock(workshop, kept).find(({ lot }) => lot.id === id);
  const off = struckOff.find(({ lot }) => lot.of === "finished" && lot.id === id);
  const lot = found ? finishedLot(found.lot.id) : off?.lot;
  if (lot === undefined) notFound();
  const [trace, history] = await Promise.all([readTraceBack(lot.id), readHistoryOfLot(lot)]);
  const today = workshop.settings.today ?? realToday();
  const sold = trace.units.find(({ place }) => place === "sold")?.quantity ?? 0n;
  const { currency } = workshop.settings;
  const words = lotWords(workshop, struckOff);
  const newKeys = { sell: randomUUID(), back: randomUUID(), off: randomUUID() };
  return (
    <>
      <Opening crumb={<Link href="/shelf/finished">Finished stock</Link>} title={words(lot).name}>
        {found && <Finding found={found} today={today} currency={currency} />}
        {!found &&
          off &&
          `Lot ${off.lot.id}, of ${dayShown(off.since, today)}. It is on no list: its batch failed, or it was taken out of the Book. What happened stays here.`}
      </Opening>
      {found && <OneUnit found={found} currency={currency} />}
      <WaitsAtBenchLink books={books} lot={finishedLot(lot.id)} />
      <Done did={parameters.did} units={parameters.units} />
      {found && <LotForms found={found} sold={sold} today={today} newKeys={newKeys} />}
      <FinishedTrace trace={trace} words={words} currency={currency} today={today} />
      <FinishedHistory lines={history} currency={currency} today={today} />
    </>
  );
}

interface Found {
  readonly found: FinishedStock;
  readonly today: Parameters<typeof dayShown>[1];
  readonly currency: Parameters<typeof moneyShown>[1];
}

function Finding({ found: { lot, there, held, value }, today, currency }: Found): ReactNode {
  const units = there + held;
  const made = `Lot ${lot.id}, made ${dayShown(lot.made, today)}`;
  if (units === 0n) return `${made}. Nothing of it is left in stock.`;
  const each = moneyShown(ratio(wholeValue(value), units), currency);
  const cost =
    wholeValue(value) === 0n
      ? "What they cost is not written down"
      : `They cost ${moneyShown(wholeValue(value), currency)}, ${each} each`;
  const onHold = held > 0n ? `, and ${unitsInWords(held)} on hold` : "";
  return `${made}: ${unitsInWords(there)} in stock${onHold}. ${cost}.`;
}

/** What one unit cost. What they cost together comes about in the history below. */
function OneUnit({ found: { there, held, value }, currency }: Omit<Found, "today">): ReactNode {
  const units = there + held;
  if (units === 0n || wholeValue(value) === 0n) return null;
  const money = (micros: bigint): string => moneyShown(micros, currency, 2);
  return (
    <HowItComes
      lines={[
        { figure: money(value.materials), reason: "materials, as the postings of its history below come to" },
        { operator: "+", figure: money(value.labour), reason: "labour" },
        { operator: "+", figure: money(value.overhead), reason: "overhead" },
        { figure: money(wholeValue(value)), reason: "what they cost", isResult: true },
        { operator: "÷", figure: unitsInWords(units), reason: "in stock and on hold" },
        { figure: moneyShown(ratio(wholeValue(value), units), currency, 2), reason: "each", isResult: true },
      ]}
    />
  );
}

const DONE: ReadonlyMap<string, string> = new Map([
  ["sold", "Sold"],
  ["came back", "Back in stock"],
  ["written off", "Written off"],
]);

/** What was done last, as the address says it. */
function Done({ did, units }: { readonly did: unknown; readonly units: unknown }): ReactNode {
  const words = typeof did === "string" ? DONE.get(did) : undefined;
  const count = typeof units === "string" && /^[1-9]\d{0,15}$/.test(units) ? BigInt(units) : null;
  return (
    <div role="status">
      {words !== undefined && count !== null && (
        <p className="done">
          {words}: {unitsInWords(count)}. A posting is taken back from <Link href="/book/history">the history</Link>.
        </p>
      )}
    </div>
  );
}
