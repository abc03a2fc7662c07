import type { Metadata } from "next";
import Link from "next/link";
import { redirect } from "next/navigation";
import type { ReactNode } from "react";
import { Opening } from "@/app/_ui/finding";
import { readOnce } from "@/app/plan-for-page";
import { NO_VALUE, plusValue, wholeValue } from "@/lib/domain/ledger/posting";
import { realToday } from "@/lib/edge/real-today";
import { lotsNotKnown } from "@/lib/edge/cost-words";
import { counted } from "@/lib/edge/counted";
import { moneyShown } from "@/lib/edge/figures";
import { unitsInWords } from "@/lib/edge/forms/posting-forms";
import { finishedAddress } from "@/lib/edge/ledger-address";
import { readStock } from "@/lib/store/ledger/ledger-answers";
import { FinishedLedger } from "../_parts/finished-ledger";
import { finishedStock, type FinishedStock, hasNoCost } from "../_parts/finished-stock";
import "../shelf.css";

export const metadata: Metadata = { title: "Finished stock" };

/** Finished lots: how many units are there and what they cost. */
export default async function FinishedPage(): Promise<ReactNode> {
  const [books, kept] = await Promise.all([readOnce(), readStock()]);
  if (!books) redirect("/");
  const { workshop } = books;
  const { currency, today } = workshop.settings;
  const all = finishedStock(workshop, kept);
  const stock = all.filter(({ there, held }) => there + held > 0n);
  const gone = all.filter(({ there, held }) => there + held === 0n);
  return (
    <>
      <Opening
        crumb={<Link href="/shelf">The shelf</Link>}
        title="Finished stock"
        beside={
          <Link className="button" href="/shelf/recall" prefetch={false}>
            Recall drill
          </Link>
        }
      >
        <Finding stock={stock} currency={currency} />
      </Opening>
      {stock.length > 0 && <FinishedLedger stock={stock} today={today ?? realToday()} currency={currency} />}
      <Gone lots={gone} />
    </>
  );
}

interface Found {
  readonly stock: readonly FinishedStock[];
  readonly currency: Parameters<typeof moneyShown>[1];
}

function Finding({ stock, currency }: Found): ReactNode {
  if (stock.length === 0)
    return (
      <>
        No finished units are in stock. They come here when a run is closed as made, in{" "}
        <Link href="/week">the week</Link>.
      </>
    );
  const units = stock.reduce((sum, { there, held }) => sum + there + held, 0n);
  const value = wholeValue(stock.map((each) => each.value).reduce(plusValue, NO_VALUE));
  const unknown = stock.filter(hasNoCost).length;
  const leftOut = unknown > 0 ? `, without ${lotsNotKnown(unknown)}` : "";
  const cost =
    unknown === stock.length
      ? "what they cost is not written down"
      : `they cost ${moneyShown(value, currency)}${leftOut}`;
  const lots = counted(stock.length, "lot", "lots");
  return `${unitsInWords(units)} in ${lots} are in stock; ${cost}. Open a lot to sell from it, put back what was returned, write off or trace it.`;
}

/** Lots of which nothing is left: what was sold of them can still come back. */
function Gone({ lots }: { readonly lots: readonly FinishedStock[] }): ReactNode {
  if (lots.length === 0) return null;
  return (
    <section className="finished-section">
      <h2>Nothing left of</h2>
      <ul className="finished-gone">
        {lots.map(({ lot, product }) => (
          <li key={lot.id}>
            <Link href={finishedAddress(lot.id)}>{product.name}</Link> <span className="soft">lot {lot.id}</span>
          </li>
        ))}
      </ul>
    </section>
  );
}
