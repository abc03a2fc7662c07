import Link from "next/link";
import type { ReactNode } from "react";
import { Ledger } from "@/app/_ui/ledger";
import type { HistoryLine } from "@/lib/domain/ledger/history";
import { wholeValue } from "@/lib/domain/ledger/posting";
import { dayShown, moneyShown } from "@/lib/edge/figures";
import { POSTING_WORDS } from "@/lib/edge/posting-words";
import { postingAddress } from "@/lib/edge/ledger-address";
import { type LotView, muchOf } from "./lot-view";

/** What happened to a lot on the shelf and on hold, with what there was after it. */
export function LotHistory({ view }: { readonly view: LotView }): ReactNode {
  const { today, currency, lines } = view;
  return (
    <section className="lot-section" aria-labelledby="lot-history">
      <h2 id="lot-history">What happened</h2>
      <Ledger
        caption="What happened, with what there was after it"
        columns={[
          { name: "Day" },
          { name: "What" },
          { name: "Quantity", kind: "number" },
          { name: "Worth", kind: "number" },
          { name: "Then there", kind: "number" },
          { name: "Worth then", kind: "number" },
        ]}
      >
        {lines.map((line) => (
          <tr key={line.posting.sequence}>
            <th scope="row">{dayShown(line.posting.day, today, { weekday: false, year: true })}</th>
            <td className="second-line">
              <Link href={postingAddress(line.posting.id)} prefetch={false}>
                {POSTING_WORDS[line.posting.kind]}
              </Link>
              {line.posting.reason !== null && `: ${line.posting.reason}`}
              <span className="phone-only">
                {" "}
                ({changeOf(line, view)}, worth {moneyShown(wholeValue(line.balance.value), currency)} then)
              </span>
            </td>
            <td className="number not-on-phone">{changeOf(line, view)}</td>
            <td className="number not-on-phone">{moneyShown(wholeValue(line.value), currency)}</td>
            <td className="number end">{muchOf(view, line.balance.quantity, "there")}</td>
            <td className="number not-on-phone">{moneyShown(wholeValue(line.balance.value), currency)}</td>
          </tr>
        ))}
      </Ledger>
    </section>
  );
}

/** What moves between shelf and hold changes nothing of what is there. */
function changeOf({ quantity, entries }: HistoryLine, view: LotView): string {
  if (quantity !== 0n) return muchOf(view, quantity, "nearest");
  const moved = entries.find((entry) => entry.quantity > 0n);
  return moved === undefined ? "–" : `${muchOf(view, moved.quantity, "nearest")} moved`;
}
