import Link from "next/link";
import type { ReactNode } from "react";
import { Ledger } from "@/app/_ui/ledger";
import { type Entry, type Posting, wholeValue } from "@/lib/domain/ledger/posting";
import type { CurrencyCode } from "@/lib/domain/money";
import { moneyShown } from "@/lib/edge/figures";
import { placeWords } from "@/lib/edge/forms/posting-refusals";
import { lotAddress } from "./addresses";
import type { LotsNamed } from "./lots-named";

interface Moved {
  readonly posting: Posting;
  readonly lotNamed: LotsNamed;
  readonly currency: CurrencyCode;
}

/** Where it came from says nothing that the other side does not say. */
const isTold = ({ place, quantity, value }: Entry): boolean =>
  !["supplier", "counted", "labour", "overhead"].includes(place.kind) && (quantity !== 0n || wholeValue(value) !== 0n);

/** What a posting moved, lot by lot and place by place. */
export function PostingLedger({ posting, lotNamed, currency }: Moved): ReactNode {
  return (
    <Ledger
      caption="What it moved"
      columns={[
        { name: "Lot" },
        { name: "Where" },
        { name: "Quantity", kind: "number" },
        { name: "Worth", kind: "number" },
      ]}
    >
      {posting.entries.filter(isTold).map(({ lot, place, quantity, value }, at) => {
        const named = lotNamed(lot);
        return (
          <tr key={at}>
            <th scope="row">
              {lot.of === "material" && named.name !== null ? (
                <Link href={lotAddress(lot.id)} prefetch={false}>
                  {named.name}, lot {lot.id}
                </Link>
              ) : (
                `${named.name ?? "No longer listed"}, lot ${lot.id}`
              )}
            </th>
            <td className="second-line">
              {placeWords(place)}
              <span className="phone-only">, {moneyShown(wholeValue(value), currency)}</span>
            </td>
            <td className="number end">{quantity === 0n ? "–" : named.amount(quantity)}</td>
            <td className="number not-on-phone">{moneyShown(wholeValue(value), currency)}</td>
          </tr>
        );
      })}
    </Ledger>
  );
}
