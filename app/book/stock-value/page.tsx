import type { Metadata } from "next";
import Link from "next/link";
import { redirect } from "next/navigation";
import type { ReactNode } from "react";
import { DayChoice } from "@/app/_ui/day-choice";
import { Opening } from "@/app/_ui/finding";
import { Ledger } from "@/app/_ui/ledger";
import { readOnce } from "@/app/plan-for-page";
import { type Day, dayOf, daysAfter, isoDate } from "@/lib/domain/calendar";
import { isNothing, type Value, VALUE_KINDS, wholeValue } from "@/lib/domain/ledger/posting";
import type { WorthPart } from "@/lib/domain/ledger/worth-by-lot";
import type { CurrencyCode } from "@/lib/domain/money";
import { costsNotKnown, lotsNotKnown, NOT_KNOWN } from "@/lib/edge/cost-words";
import { dayShown, moneyShown } from "@/lib/edge/figures";
import { runsCalled } from "@/lib/edge/run-called";
import { realToday } from "@/lib/edge/real-today";
import { lotWords } from "@/lib/edge/lot-words";
import { readCostOfSales, readLotsOfPart, readStockValue, readStruckOff } from "@/lib/store/ledger/ledger-answers";
import { type Query, textIn } from "../_parts/addresses";
import { Crumb } from "../_parts/crumb";
import { LOTS, partIn, TIME_COLUMNS, WorthLots } from "../_parts/worth-lots";

export const metadata: Metadata = { title: "Value of stock" };

const FOUR_WEEKS = 27;

interface Page {
  readonly searchParams: Promise<Query>;
}

/** What stock was worth at the end of a day, and what was sold between two days cost; each figure opens to its lots. */
export default async function StockValuePage({ searchParams }: Page): Promise<ReactNode> {
  const [books, parameters] = await Promise.all([readOnce(), searchParams]);
  if (!books) redirect("/");
  const { workshop } = books;
  const { currency } = workshop.settings;
  const today = workshop.settings.today ?? realToday();
  const asked = askedIn(parameters, today);
  const { day, from, to, part } = asked;
  const [stock, sales, lots, unknown] = await Promise.all([
    readStockValue(day),
    from <= to ? readCostOfSales(from, to) : null,
    part === null ? null : lotsIn(part, asked),
    unknownIn(asked),
  ]);
  const inFull = (each: Day): string => dayShown(each, today, { year: true });
  const sold = `Sold ${inFull(from)} to ${inFull(to)}`;
  const row = (of: WorthPart, value: Value): Row => ({
    name: of === "sold" ? sold : PART_NAMES[of],
    value,
    unknown: unknown[of],
    lots: lotsAddress(of, asked),
  });
  return (
    <>
      <Opening crumb={<Crumb />} title="Value of stock">
        At the end of {inFull(day)} stock was worth {moneyShown(wholeValue(stock.total), currency)}
        {withoutWords(unknown.finished)}.{" "}
        {sales === null
          ? "The days of what was sold are the wrong way round: the first is after the last."
          : soldWords(`from ${inFull(from)} to ${inFull(to)}`, sales, unknown, currency)}
      </Opening>
      <Days asked={asked} />
      <Values
        currency={currency}
        rows={[
          row("materials", stock.materials),
          row("in progress", stock.workInProgress),
          row("finished", stock.finished),
        ]}
        total={{ name: "Stock", value: stock.total, unknown: unknown.finished }}
        further={[row("on hold", stock.onHold), ...(sales === null ? [] : [row("sold", sales)])]}
      />
      <p className="small soft">
        Each lot counts at what it cost; a figure opens to its lots. Labour and overhead stand in finished units alone,
        and apart; whether they may count is a matter of local rules for accounts, which come first.
      </p>
      {part !== null && lots !== null && (
        <WorthLots
          title={part === "sold" ? sold : `${PART_NAMES[part]} at the end of ${inFull(day)}`}
          lots={lots.standing}
          words={lotWords(workshop, lots.struckOff)}
          currency={currency}
          runCalled={runsCalled(books)}
        />
      )}
    </>
  );
}

interface Asked {
  readonly day: Day;
  readonly from: Day;
  readonly to: Day;
  /** The figure that stands opened. */
  readonly part: WorthPart | null;
}

function askedIn(parameters: Query, today: Day): Asked {
  const dayIn = (name: string): Day | null => dayOf(textIn(parameters, name));
  const day = dayIn("day") ?? today;
  const to = dayIn("to") ?? day;
  const from = dayIn("from") ?? daysAfter(to, -FOUR_WEEKS);
  const part = partIn(parameters);
  return { day, from, to, part: part === "sold" && from > to ? null : part };
}

async function lotsIn(part: WorthPart, { day, from, to }: Asked) {
  const days = part === "sold" ? { from, to } : { from: day, to: day };
  const [standing, struckOff] = await Promise.all([readLotsOfPart(part, days), readStruckOff()]);
  return { standing, struckOff };
}

/** Of each figure the lots of which nobody wrote down what they cost: its sum leaves them out. */
async function unknownIn(asked: Asked): Promise<Unknown> {
  const days = { from: asked.day, to: asked.day };
  const [finished, onHold, sold] = await Promise.all([
    readLotsOfPart("finished", days),
    readLotsOfPart("on hold", days),
    asked.from <= asked.to ? readLotsOfPart("sold", asked) : [],
  ]);
  return {
    materials: 0,
    "in progress": 0,
    finished: costsNotKnown(finished),
    "on hold": costsNotKnown(onHold),
    sold: costsNotKnown(sold),
    isNoneSold: sold.length === 0,
  };
}

type Unknown = Readonly<Record<WorthPart, number>> & {
  /** Nothing was posted as sold in those days: what was sold without a posting has no cost here. */
  readonly isNoneSold: boolean;
};

const withoutWords = (unknown: number): string => (unknown === 0 ? "" : `, without ${lotsNotKnown(unknown)}`);

function soldWords(days: string, sales: Value, { sold, isNoneSold }: Unknown, currency: CurrencyCode): string {
  if (isNoneSold) return `Nothing was posted as sold ${days}.`;
  if (sold > 0 && isNothing(sales)) return `What was sold ${days}: what it cost is ${NOT_KNOWN}.`;
  return `What was sold ${days} cost ${moneyShown(wholeValue(sales), currency)}${withoutWords(sold)}.`;
}

const Days = ({ asked: { day, from, to, part } }: { readonly asked: Asked }): ReactNode => (
  <DayChoice
    action="/book/stock-value"
    fields={[
      { name: "day", label: "Value at the end of", value: isoDate(day) },
      { name: "from", label: "Sold from", value: isoDate(from) },
      { name: "to", label: "to", value: isoDate(to) },
    ]}
    button="Show"
    carried={part === null ? {} : { [LOTS]: part }}
  />
);

const PART_NAMES: Readonly<Record<Exclude<WorthPart, "sold">, string>> = {
  materials: "Materials on the shelf and on hold",
  "in progress": "Work in progress: batches not closed",
  finished: "Finished units in stock and on hold",
  "on hold": "Of it on hold",
};

function lotsAddress(part: WorthPart, { day, from, to }: Asked): `/book/stock-value?${string}` {
  const asked = { day: isoDate(day), from: isoDate(from), to: isoDate(to), [LOTS]: part };
  return `/book/stock-value?${new URLSearchParams(asked).toString()}#${LOTS}`;
}

interface Row {
  readonly name: string;
  readonly value: Value;
  /** How many lots it leaves out, because nobody knows what they cost. */
  readonly unknown: number;
  /** Where it stands opened to its lots; left out where the rows above open. */
  readonly lots?: ReturnType<typeof lotsAddress>;
}

interface Table {
  readonly rows: readonly Row[];
  readonly total: Row;
  readonly further: readonly Row[];
  readonly currency: CurrencyCode;
}

function Values({ rows, total, further, currency }: Table): ReactNode {
  const hasTime = [...rows, ...further].some(({ value }) => value.labour !== 0n || value.overhead !== 0n);
  const row = ({ name, value, unknown, lots }: Row, className?: string): ReactNode => (
    <tr key={name} className={className}>
      <th scope="row">
        {lots === undefined ? (
          name
        ) : (
          <Link href={lots} prefetch={false}>
            {name}
          </Link>
        )}
        {unknown > 0 && !isNothing(value) && <small className="label">leaves out {lotsNotKnown(unknown)}</small>}
      </th>
      {hasTime &&
        VALUE_KINDS.map((kind) => (
          <td key={kind} className="number not-on-phone">
            {moneyShown(value[kind], currency)}
          </td>
        ))}
      <td className="number end">
        {unknown > 0 && isNothing(value) ? NOT_KNOWN : moneyShown(wholeValue(value), currency)}
      </td>
    </tr>
  );
  return (
    <Ledger
      caption="Value of stock by what it was paid for"
      className="stock-value"
      columns={[
        { name: "What" },
        ...(hasTime ? TIME_COLUMNS : []),
        { name: hasTime ? "Together" : "Worth", kind: "number" },
      ]}
    >
      {rows.map((each) => row(each))}
      {row(total, "total")}
      {further.map((each) => row(each))}
    </Ledger>
  );
}
