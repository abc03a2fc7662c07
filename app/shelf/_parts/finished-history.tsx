import Link from "next/link";
import type { ReactNode } from "react";
import { Ledger } from "@/app/_ui/ledger";
import type { Day } from "@/lib/domain/calendar";
import type { HistoryLine } from "@/lib/domain/ledger/history";
import { wholeValue } from "@/lib/domain/ledger/posting";
import type { CurrencyCode } from "@/lib/domain/money";
import { countShown, dayShown, moneyShown } from "@/lib/edge/figures";
import { unitsInWords } from "@/lib/edge/forms/posting-forms";
import { postingAddress } from "@/lib/edge/ledger-address";
import { POSTING_WORDS } from "@/lib/edge/posting-words";

interface Lines {
  readonly lines: readonly HistoryLine[];
  readonly currency: CurrencyCode;
  readonly today: Day;
}

/** What happened to a finished lot, posting by posting, as a running balance. @rule LEDGER-19 */
export function FinishedHistory({ lines, currency, today }: Lines): ReactNode {
  return (
    <section className="finished-section">
      <h2>What happened to it</h2>
      <Ledger
        caption="Postings of the lot, with what stood after each"
        columns={[
          { name: "Posting" },
          { name: "Units", kind: "number" },
          { name: "Worth", kind: "number" },
          { name: "Units after", kind: "number" },
          { name: "Worth after", kind: "number" },
        ]}
      >
        {lines.map(({ posting, quantity, value, balance }) => (
          <tr key={posting.id}>
            <th scope="row">
              <Link href={postingAddress(posting.id)}>
                {POSTING_WORDS[posting.kind]} {dayShown(posting.day, today)}
              </Link>
              {posting.reason !== null && <small>{posting.reason}</small>}
            </th>
            <td className="number end">{signed(quantity)}</td>
            <td className="number not-on-phone">{moneyShown(wholeValue(value), currency)}</td>
            <td className="number not-on-phone">{unitsInWords(balance.quantity)}</td>
            <td className="number second-line">{moneyShown(wholeValue(balance.value), currency)}</td>
          </tr>
        ))}
      </Ledger>
    </section>
  );
}

const signed = (quantity: bigint): string =>
  quantity < 0n ? `−${countShown(-quantity)}` : quantity > 0n ? `+${countShown(quantity)}` : "0";
