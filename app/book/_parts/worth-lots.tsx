import Link from "next/link";
import type { ReactNode } from "react";
import { Ledger } from "@/app/_ui/ledger";
import { byCodePoint } from "@/lib/domain/code-point-order";
import type { KeptBalance } from "@/lib/domain/ledger/audit";
import { type LotName, lotKey, placeKey, type Value, VALUE_KINDS, wholeValue } from "@/lib/domain/ledger/posting";
import { WORTH_PARTS, type WorthPart, worthOf } from "@/lib/domain/ledger/worth-by-lot";
import type { CurrencyCode } from "@/lib/domain/money";
import { costsNotKnown, isCostKnown, lotsNotKnown, NOT_KNOWN } from "@/lib/edge/cost-words";
import { moneyShown } from "@/lib/edge/figures";
import { lotPageAddress } from "@/lib/edge/ledger-address";
import type { LotWords } from "@/lib/edge/lot-words";
import { whereWords } from "@/lib/edge/posting-words";
import type { Query } from "./addresses";

/** Where the lots of a figure stand on the page. */
export const LOTS = "lots";

/** The figure that the address asks to be opened, or null. */
export const partIn = (parameters: Query): WorthPart | null =>
  WORTH_PARTS.find((part) => part === parameters[LOTS]) ?? null;

interface Opened {
  /** What the figure is of, and when. */
  readonly title: string;
  readonly lots: readonly KeptBalance[];
  readonly words: (lot: LotName) => LotWords;
  readonly currency: CurrencyCode;
  readonly runCalled: (run: string) => string;
}

/** A figure of the value of stock, lot by lot; each lot's page has what happened to it, one posting after another. */
export function WorthLots({ title, lots, words, currency, runCalled }: Opened): ReactNode {
  const worth = worthOf(lots);
  const hasTime = worth.labour !== 0n || worth.overhead !== 0n;
  const unknown = costsNotKnown(lots);
  const money = (value: Value, isKnown: boolean): ReactNode => (
    <Money value={value} isKnown={isKnown} hasTime={hasTime} currency={currency} />
  );
  const named = lots
    .map((each) => ({ ...each, ...words(each.lot) }))
    .sort((a, b) => byCodePoint(a.name.toLowerCase(), b.name.toLowerCase()) || byCodePoint(a.lot.id, b.lot.id));
  return (
    <section className="worth-lots" id={LOTS} aria-labelledby={`${LOTS}-title`}>
      <h2 id={`${LOTS}-title`}>{title}</h2>
      {named.length === 0 ? (
        <p>No lot is in it.</p>
      ) : (
        <Ledger
          caption={`${title}, lot by lot`}
          columns={[
            { name: "Lot" },
            { name: "Where" },
            { name: "There", kind: "number" },
            ...(hasTime ? TIME_COLUMNS : []),
            { name: hasTime ? "Together" : "Worth", kind: "number" },
          ]}
        >
          {named.map(({ lot, place, quantity, value, name, shown }) => (
            <tr key={`${lotKey(lot)} ${placeKey(place)}`}>
              <th scope="row">
                <Link href={lotPageAddress(lot)} prefetch={false}>
                  {name}, lot {lot.id}
                </Link>
              </th>
              <td className="second-line">
                <span className="phone-only">{shown(quantity)} </span>
                {whereWords(place, runCalled)}
              </td>
              <td className="number not-on-phone">{shown(quantity)}</td>
              {money(value, isCostKnown({ lot, quantity, value }))}
            </tr>
          ))}
          <tr className="total">
            <th scope="row">
              Together
              {unknown > 0 && unknown < lots.length && (
                <small className="label">leaves out {lotsNotKnown(unknown)}</small>
              )}
            </th>
            <td className="not-on-phone" colSpan={2} />
            {money(worth, unknown < lots.length)}
          </tr>
        </Ledger>
      )}
      <p className="small soft">
        A lot is worth what it cost, less what left with what was taken of it. Its page shows that posting by posting.
      </p>
    </section>
  );
}

interface Shown {
  readonly value: Value;
  readonly isKnown: boolean;
  readonly hasTime: boolean;
  readonly currency: CurrencyCode;
}

/** The cells of a value: its parts, where some are of time, and what they come to. */
function Money({ value, isKnown, hasTime, currency }: Shown): ReactNode {
  const shown = (micros: bigint): string => (isKnown ? moneyShown(micros, currency) : NOT_KNOWN);
  return (
    <>
      {hasTime &&
        VALUE_KINDS.map((kind) => (
          <td key={kind} className="number not-on-phone">
            {shown(value[kind])}
          </td>
        ))}
      <td className="number end">{shown(wholeValue(value))}</td>
    </>
  );
}

/** What a value is of, where it is not of materials alone. */
export const TIME_COLUMNS = [
  { name: "Materials", kind: "number" },
  { name: "Labour", kind: "number" },
  { name: "Overhead", kind: "number" },
] as const;
