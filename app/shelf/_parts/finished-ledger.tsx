import Link from "next/link";
import type { ReactNode } from "react";
import { Ledger } from "@/app/_ui/ledger";
import type { Day } from "@/lib/domain/calendar";
import { ratio } from "@/lib/domain/fraction";
import { NO_VALUE, plusValue, wholeValue } from "@/lib/domain/ledger/posting";
import type { CurrencyCode } from "@/lib/domain/money";
import { dayShown, moneyShown } from "@/lib/edge/figures";
import { unitsInWords } from "@/lib/edge/forms/posting-forms";
import { finishedAddress } from "@/lib/edge/ledger-address";
import type { FinishedStock } from "./finished-stock";

interface Stock {
  readonly stock: readonly FinishedStock[];
  readonly today: Day;
  readonly currency: CurrencyCode;
}

/** Finished lots: what is there of each and what it cost, by what it was paid for. */
export function FinishedLedger({ stock, today, currency }: Stock): ReactNode {
  const money = (micros: bigint): string => moneyShown(micros, currency);
  const total = stock.map(({ value }) => value).reduce(plusValue, NO_VALUE);
  return (
    <Ledger
      caption="Finished lots in stock"
      columns={[
        { name: "Product and lot" },
        { name: "In stock", kind: "number" },
        { name: "Materials", kind: "number" },
        { name: "Labour", kind: "number" },
        { name: "Overhead", kind: "number" },
        { name: "Worth", kind: "number" },
        { name: "Each", kind: "number" },
      ]}
    >
      {stock.map(({ lot, product, there, held, value }) => {
        const units = there + held;
        return (
          <tr key={lot.id}>
            <th scope="row">
              <Link href={finishedAddress(lot.id)}>{product.name}</Link>
              <small>
                Lot {lot.id}, made {dayShown(lot.made, today)}
                {lot.bestBefore !== null && `, best before ${dayShown(lot.bestBefore, today, { weekday: false })}`}
              </small>
            </th>
            <td className="number end">
              {unitsInWords(there)}
              {held > 0n && <small>and {unitsInWords(held)} on hold</small>}
            </td>
            <td className="number not-on-phone">{money(value.materials)}</td>
            <td className="number not-on-phone">{money(value.labour)}</td>
            <td className="number not-on-phone">{money(value.overhead)}</td>
            <td className="number second-line">{money(wholeValue(value))}</td>
            <td className="number not-on-phone">
              {units === 0n ? "" : moneyShown(ratio(wholeValue(value), units), currency)}
            </td>
          </tr>
        );
      })}
      <tr className="total">
        <th scope="row">Together</th>
        <td className="number not-on-phone" />
        <td className="number not-on-phone">{money(total.materials)}</td>
        <td className="number not-on-phone">{money(total.labour)}</td>
        <td className="number not-on-phone">{money(total.overhead)}</td>
        <td className="number end">{money(wholeValue(total))}</td>
        <td className="number not-on-phone" />
      </tr>
    </Ledger>
  );
}
