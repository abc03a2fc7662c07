import Link from "next/link";
import type { ReactNode } from "react";
import { Ledger } from "@/app/_ui/ledger";
import type { Day } from "@/lib/domain/calendar";
import { ratio } from "@/lib/domain/fraction";
import { NO_VALUE, plusValue, type Value, VALUE_KINDS, type ValueKind, wholeValue } from "@/lib/domain/ledger/posting";
import type { CurrencyCode } from "@/lib/domain/money";
import { lotsNotKnown, NOT_KNOWN } from "@/lib/edge/cost-words";
import { dayShown, moneyShown } from "@/lib/edge/figures";
import { unitsInWords } from "@/lib/edge/forms/posting-forms";
import { finishedAddress } from "@/lib/edge/ledger-address";
import { type FinishedStock, hasNoCost } from "./finished-stock";

interface Stock {
  readonly stock: readonly FinishedStock[];
  readonly today: Day;
  readonly currency: CurrencyCode;
}

const PART_NAMES: Readonly<Record<ValueKind, string>> = {
  materials: "Materials",
  labour: "Labour",
  overhead: "Overhead",
};

/** Finished lots: what is there of each and what it cost, by what it was paid for. */
export function FinishedLedger({ stock, today, currency }: Stock): ReactNode {
  const money = (micros: bigint): string => moneyShown(micros, currency);
  const unknown = stock.filter(hasNoCost).length;
  const anyKnown = unknown < stock.length;
  // What no lot has a figure in is not a column.
  const parts = VALUE_KINDS.filter((kind) => stock.some(({ value }) => value[kind] !== 0n));
  const cells = (value: Value, isKnown: boolean): ReactNode => (
    <>
      {parts.map((kind) => (
        <td key={kind} className="number not-on-phone">
          {isKnown ? money(value[kind]) : NOT_KNOWN}
        </td>
      ))}
      <td className="number second-line">
        <span className="phone-only">Worth </span>
        {isKnown ? money(wholeValue(value)) : NOT_KNOWN}
      </td>
    </>
  );
  return (
    <Ledger
      caption="Finished lots in stock"
      columns={[
        { name: "Product and lot" },
        { name: "In stock", kind: "number" },
        ...parts.map((kind) => ({ name: PART_NAMES[kind], kind: "number" as const })),
        { name: "Worth", kind: "number" },
        ...(anyKnown ? [{ name: "Each", kind: "number" as const }] : []),
      ]}
    >
      {stock.map((each) => (
        <tr key={each.lot.id}>
          <LotCells of={each} today={today} />
          {cells(each.value, !hasNoCost(each))}
          {anyKnown && <td className="number not-on-phone">{eachCost(each, currency)}</td>}
        </tr>
      ))}
      <tr className="total">
        <th scope="row">
          Together
          {anyKnown && unknown > 0 && <small className="label">leaves out {lotsNotKnown(unknown)}</small>}
        </th>
        <td className="number end">{unitsInWords(stock.reduce((sum, { there, held }) => sum + there + held, 0n))}</td>
        {cells(stock.map(({ value }) => value).reduce(plusValue, NO_VALUE), anyKnown)}
        {anyKnown && <td className="number not-on-phone" />}
      </tr>
    </Ledger>
  );
}

function eachCost(stock: FinishedStock, currency: CurrencyCode): string {
  const units = stock.there + stock.held;
  if (units === 0n) return "";
  return hasNoCost(stock) ? NOT_KNOWN : moneyShown(ratio(wholeValue(stock.value), units), currency);
}

const LotCells = ({
  of: { lot, product, there, held },
  today,
}: {
  readonly of: FinishedStock;
  readonly today: Day;
}): ReactNode => (
  <>
    <th scope="row">
      <Link href={finishedAddress(lot.id)}>{product.name}</Link>
      <small>
        Lot {lot.id}, made {dayShown(lot.made, today)}
        {lot.bestBefore !== null && `, best before ${dayShown(lot.bestBefore, today, { weekday: false, year: true })}`}
      </small>
    </th>
    <td className="number end">
      {unitsInWords(there)}
      {held > 0n && <small>and {unitsInWords(held)} on hold</small>}
    </td>
  </>
);
