import type { Metadata } from "next";
import { redirect } from "next/navigation";
import type { ReactNode } from "react";
import { DayChoice } from "@/app/_ui/day-choice";
import { Opening } from "@/app/_ui/finding";
import { Ledger } from "@/app/_ui/ledger";
import { readOnce } from "@/app/plan-for-page";
import { type Day, dayOf, daysAfter, isoDate } from "@/lib/domain/calendar";
import { type Value, wholeValue } from "@/lib/domain/ledger/posting";
import type { CurrencyCode } from "@/lib/domain/money";
import { dayShown, moneyShown } from "@/lib/edge/figures";
import { realToday } from "@/lib/edge/real-today";
import { readCostOfSales, readStockValue } from "@/lib/store/ledger/ledger-answers";
import { type Query, textIn } from "../_parts/addresses";
import { Crumb } from "../_parts/crumb";

export const metadata: Metadata = { title: "Value of stock" };

const FOUR_WEEKS = 27;

/** What stock was worth at the end of a day, and what was sold between two days cost. */
export default async function StockValuePage({
  searchParams,
}: {
  readonly searchParams: Promise<Query>;
}): Promise<ReactNode> {
  const [books, parameters] = await Promise.all([readOnce(), searchParams]);
  if (!books) redirect("/");
  const { currency, today: setDay } = books.workshop.settings;
  const today = setDay ?? realToday();
  const dayIn = (name: string): Day | null => dayOf(textIn(parameters, name));
  const day = dayIn("day") ?? today;
  const to = dayIn("to") ?? day;
  const from = dayIn("from") ?? daysAfter(to, -FOUR_WEEKS);
  const [stock, sales] = await Promise.all([readStockValue(day), from <= to ? readCostOfSales(from, to) : null]);
  const inFull = (each: Day): string => dayShown(each, today, { year: true });
  const fields = [
    { name: "day", label: "Value at the end of", value: isoDate(day) },
    { name: "from", label: "Sold from", value: isoDate(from) },
    { name: "to", label: "to", value: isoDate(to) },
  ];
  return (
    <>
      <Opening crumb={<Crumb />} title="Value of stock">
        At the end of {inFull(day)} stock was worth {moneyShown(wholeValue(stock.total), currency)}.{" "}
        {sales === null
          ? "The days of what was sold are the wrong way round: the first is after the last."
          : `What was sold from ${inFull(from)} to ${inFull(to)} cost ${moneyShown(wholeValue(sales), currency)}.`}
      </Opening>
      <DayChoice action="/book/stock-value" fields={fields} button="Show" />
      <Values
        currency={currency}
        rows={[
          { name: "Materials on the shelf and on hold", value: stock.materials },
          { name: "Work in progress: batches not closed", value: stock.workInProgress },
          { name: "Finished units in stock and on hold", value: stock.finished },
        ]}
        total={{ name: "Stock", value: stock.total }}
        further={[
          { name: "of it on hold", value: stock.onHold },
          ...(sales === null ? [] : [{ name: `Sold ${inFull(from)} to ${inFull(to)}`, value: sales }]),
        ]}
      />
      <p className="small soft">
        Each lot counts at what it cost. Labour and overhead stand in finished units alone, and apart; whether they may
        count is a matter of local rules for accounts, which come first.
      </p>
    </>
  );
}

interface Row {
  readonly name: string;
  readonly value: Value;
}

interface Table {
  readonly rows: readonly Row[];
  readonly total: Row;
  readonly further: readonly Row[];
  readonly currency: CurrencyCode;
}

function Values({ rows, total, further, currency }: Table): ReactNode {
  const row = ({ name, value }: Row, className?: string): ReactNode => (
    <tr key={name} className={className}>
      <th scope="row">{name}</th>
      <td className="number not-on-phone">{moneyShown(value.materials, currency)}</td>
      <td className="number not-on-phone">{moneyShown(value.labour, currency)}</td>
      <td className="number not-on-phone">{moneyShown(value.overhead, currency)}</td>
      <td className="number end">{moneyShown(wholeValue(value), currency)}</td>
    </tr>
  );
  return (
    <Ledger
      caption="Value of stock by what it was paid for"
      className="stock-value"
      columns={[
        { name: "What" },
        { name: "Materials", kind: "number" },
        { name: "Labour", kind: "number" },
        { name: "Overhead", kind: "number" },
        { name: "Together", kind: "number" },
      ]}
    >
      {rows.map((each) => row(each))}
      {row(total, "total")}
      {further.map((each) => row(each))}
    </Ledger>
  );
}
