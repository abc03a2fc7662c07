import Link from "next/link";
import type { ReactNode } from "react";
import { Ledger } from "@/app/_ui/ledger";
import {
  type Entry,
  isNothing,
  type LotName,
  lotKey,
  type Place,
  placeKey,
  VALUE_KINDS,
  type ValueKind,
  wholeValue,
} from "@/lib/domain/ledger/posting";
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
  // Where from and where to is said in words, of quantity and value alike.
  const money = (micros: bigint): string => (micros === 0n ? "" : moneyShown(micros < 0n ? -micros : micros, currency));
  const hasTime = entries.some(({ value }) => value.labour !== 0n || value.overhead !== 0n);
  const hasValue = entries.some(({ value }) => !isNothing(value));
  const parts: readonly ValueKind[] = !hasValue ? [] : hasTime ? VALUE_KINDS : ["materials"];
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
        ...parts.map((part) => ({ name: hasTime ? PART_NAMES[part] : "Worth", kind: "number" as const })),
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
              {!isNothing(value) && <span className="phone-only">, worth {money(wholeValue(value))}</span>}
            </td>
            <td className="number end">{quantity === 0n ? "" : shown(quantity < 0n ? -quantity : quantity)}</td>
            {parts.map((part) => (
              <td key={part} className="number not-on-phone">
                {money(value[part])}
              </td>
            ))}
          </tr>
        );
      })}
    </Ledger>
  );
}

const PART_NAMES: Readonly<Record<ValueKind, string>> = {
  materials: "Materials",
  labour: "Labour",
  overhead: "Overhead",
};

/** What has no quantity leaves with its value. */
const leaves = ({ quantity, value }: Pick<Entry, "quantity" | "value">): boolean =>
  quantity === 0n ? wholeValue(value) < 0n : quantity < 0n;
