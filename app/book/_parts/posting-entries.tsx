import Link from "next/link";
import type { ReactNode } from "react";
import { Ledger } from "@/app/_ui/ledger";
import { type Entry, type LotName, lotKey, type Place, placeKey, wholeValue } from "@/lib/domain/ledger/posting";
import type { CurrencyCode } from "@/lib/domain/money";
import { moneyShown } from "@/lib/edge/figures";
import { lotPageAddress } from "@/lib/edge/ledger-address";
import type { LotWords } from "@/lib/edge/lot-words";
import { placeWords } from "@/lib/edge/posting-words";

interface Entries {
  readonly entries: readonly Entry[];
  readonly words: (lot: LotName) => LotWords;
  readonly currency: CurrencyCode;
}

/** The entries of a posting: what came to each place or left it, in quantity and in each part of the value. */
export function PostingEntries({ entries, words, currency }: Entries): ReactNode {
  const money = (micros: bigint): string => (micros === 0n ? "" : moneyShown(micros, currency));
  // A lot of a material that a run makes comes from no supplier.
  const isMaking = (place: Place, lot: LotName): boolean =>
    place.kind === "supplier" &&
    entries.some((each) => each.place.kind === "batch" && lotKey(each.lot) === lotKey(lot));
  return (
    <Ledger
      caption="What it moved"
      columns={[
        { name: "Lot" },
        { name: "Place" },
        { name: "Quantity", kind: "number" },
        { name: "Materials", kind: "number" },
        { name: "Labour", kind: "number" },
        { name: "Overhead", kind: "number" },
      ]}
    >
      {entries.map(({ lot, place, quantity, value }, at) => {
        const { name, shown } = words(lot);
        return (
          <tr key={`${String(at)} ${lotKey(lot)} ${placeKey(place)}`}>
            <th scope="row">
              <Link href={lotPageAddress(lot)} prefetch={false}>
                {name}, lot {lot.id}
              </Link>
            </th>
            <td className="second-line">
              {leaves({ quantity, value }) ? "from" : "to"}{" "}
              {quantity !== 0n && isMaking(place, lot) ? "the making" : placeWords(place)}
            </td>
            <td className="number end">{quantity === 0n ? "" : shown(quantity < 0n ? -quantity : quantity)}</td>
            <td className="number not-on-phone">{money(value.materials)}</td>
            <td className="number not-on-phone">{money(value.labour)}</td>
            <td className="number not-on-phone">{money(value.overhead)}</td>
          </tr>
        );
      })}
    </Ledger>
  );
}

/** What has no quantity leaves with its value. */
const leaves = ({ quantity, value }: Pick<Entry, "quantity" | "value">): boolean =>
  quantity === 0n ? wholeValue(value) < 0n : quantity < 0n;
