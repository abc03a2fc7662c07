import Link from "next/link";
import type { ReactNode } from "react";
import { Ledger } from "@/app/_ui/ledger";
import type { Day } from "@/lib/domain/calendar";
import type { HistoryLine } from "@/lib/domain/ledger/history";
import { isNothing, type Value, wholeValue } from "@/lib/domain/ledger/posting";
import type { CurrencyCode } from "@/lib/domain/money";
import { isCostKnown, NOT_KNOWN } from "@/lib/edge/cost-words";
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
  // Where no posting has a value, nobody wrote down what the lot cost: said once, and not line by line.
  const hasValue = lines.some(({ value, balance }) => !isNothing(value) || !isNothing(balance.value));
  const worth = (quantity: bigint, value: Value): string =>
    isCostKnown({ lot: { of: "finished" }, quantity, value }) ? moneyShown(wholeValue(value), currency) : NOT_KNOWN;
  return (
    <section className="finished-section">
      <h2>What happened to it</h2>
      {!hasValue && <p className="small soft">What it cost is not known: it was entered without.</p>}
      <Ledger
        caption="Postings of the lot, with what stood after each"
        columns={[
          { name: "Posting" },
          { name: "Units", kind: "number" },
          ...(hasValue ? [WORTH] : []),
          { name: "Units after", kind: "number" },
          ...(hasValue ? [WORTH_AFTER] : []),
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
            {hasValue && <td className="number not-on-phone">{worth(quantity, value)}</td>}
            <td className="number second-line">
              {unitsInWords(balance.quantity)}
              <span className="phone-only">
                {" "}
                after it{hasValue && `, worth ${worth(balance.quantity, balance.value)}`}
              </span>
            </td>
            {hasValue && <td className="number not-on-phone">{worth(balance.quantity, balance.value)}</td>}
          </tr>
        ))}
      </Ledger>
    </section>
  );
}

const WORTH = { name: "Worth", kind: "number" } as const;
const WORTH_AFTER = { name: "Worth after", kind: "number" } as const;

const signed = (quantity: bigint): string =>
  quantity < 0n ? `−${countShown(-quantity)}` : quantity > 0n ? `+${countShown(quantity)}` : "0";
