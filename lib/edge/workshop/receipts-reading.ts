/** What the file says of lots that came in deliveries. @rule ORDER-5 */
import type { Posted } from "@/lib/domain/ledger/posting";
import type { Receipt } from "@/lib/domain/ledger/receipt";
import type { MicroUnits } from "@/lib/domain/money";
import { LARGEST_FIGURE, quantity } from "@/lib/domain/quantity";
import type { FaultList } from "@/lib/edge/fault-list";
import { id, note, orElse, packs, wholeNumber } from "@/lib/edge/fields";
import type { Json } from "@/lib/edge/json-tree";
import { complete, readEntries } from "@/lib/edge/record-reading";
import { quoted } from "@/lib/edge/shown-value";

const RECEIPT = {
  lot: id,
  posting: note(300),
  supplier: orElse(id, null),
  offer: orElse(id, null),
  order: orElse(id, null),
  line: orElse(wholeNumber(1, 1_000_000), null),
  packs: packs(1),
  paid: orElse(wholeNumber(0, Number(LARGEST_FIGURE)), 0),
};

/** The receipts, each by itself. */
export const readReceipts = (list: readonly Json[] | undefined, faults: FaultList): readonly Receipt[] =>
  readEntries(list, RECEIPT, "receipts", faults).flatMap(({ path, fields }): readonly Receipt[] => {
    const read = complete(fields);
    if (!read) return [];
    const { order, line, paid, ...receipt } = read;
    if ((order === null) !== (line === null)) {
      faults.tell(`${path}.line`, "an order and the number of its line go together");
      return [];
    }
    return [
      {
        ...receipt,
        order: order === null || line === null ? null : { id: order, line: line - 1 },
        paid: quantity<MicroUnits>(BigInt(paid)),
      },
    ];
  });

/** Each receipt is of a lot that its posting brought, and of each lot there is one at most. */
export function checkReceipts(receipts: readonly Receipt[], postings: readonly Posted[], faults: FaultList): void {
  const brought = new Map(
    postings
      .filter(({ kind }) => kind === "received")
      .map(({ id: key, entries }) => [key, new Set(entries.map(({ lot }) => lot.id))] as const),
  );
  const seen = new Set<string>();
  receipts.forEach(({ lot, posting }, at) => {
    const path = `receipts[${String(at)}]`;
    if (brought.get(posting)?.has(lot) !== true) {
      faults.tell(`${path}.posting`, `no delivery ${quoted(posting)} brought lot ${quoted(lot)}`);
    }
    if (seen.has(lot)) faults.tell(`${path}.lot`, `repeated lot ${quoted(lot)}; a lot is received once`);
    seen.add(lot);
  });
}
