import type { Batch } from "@/lib/domain/bench/batch";
import type { Books, ClosedRun } from "@/lib/domain/desk";
import { lotsOf, type LotName, type Place, type Posted, placeKey, lotKey } from "@/lib/domain/ledger/posting";
import { type Reversal, reverse } from "@/lib/domain/ledger/reverse";
import { withSold, withTakenBack } from "@/lib/domain/ledger/sales-history";
import type { LotRecords } from "@/lib/domain/ledger/refusal";
import type { Receipt } from "@/lib/domain/ledger/receipt";
import { quantity, type Stock } from "@/lib/domain/quantity";
import type { Order } from "@/lib/domain/workshop";
import { type Asked, onTheLedger } from "./on-the-ledger";
import { withReceived } from "./receive-delivery";
import { unitsOfProducts } from "./units-of-products";

export interface ReversePosting extends Asked, Pick<Reversal, "reverses" | "reason"> {}

/** Takes a posting back by one that says the opposite. A run whose making is taken back is planned again. @rule LEDGER-16 */
export const reversePosting = (asked: ReversePosting) =>
  onTheLedger(asked, async (ledger, today) => {
    const posting = await ledger.postingNamed(asked.reverses);
    const batch = posting && batchOfPosting(ledger.books, posting);
    if (batch) return { kind: "belongs to a batch" as const, batch };
    const reversedBy = await ledger.reversalOf(asked.reverses);
    const lots = posting ? lotsOf(posting) : [];
    const touching = await ledger.postingsOfLots(lots);
    const asking = { ...asked, today };
    const decided = reverse(asking, { posting, reversedBy }, await ledger.standingOf(lots), (lot, place) =>
      touching.filter((each) => touches(each, lot, place)),
    );
    if (decided.kind !== "posted" || posting === null) return decided;
    const books = booksWithout(ledger.books, posting, ledger.records);
    if (posting.kind !== "received") return { ...decided, books };
    const receipts = await ledger.receiptsOfPosting(posting.id);
    const orders = withoutReceived(books.workshop.orders, receipts, posting);
    return { ...decided, books: { ...books, workshop: { ...books.workshop, orders } } };
  });

/** The batch whose record a posting is part of: what was written there is struck or annexed there. @rule BENCH-6 */
const batchOfPosting = ({ desk }: Books, posting: Posted): Batch | undefined =>
  desk.batches.find(({ notes }) => notes.some(({ key }) => key === posting.id));

/** Orders without what a delivery brought: it is still to come after all. @rule ORDER-2 */
const withoutReceived = (
  orders: readonly Order[],
  receipts: readonly Receipt[],
  { entries }: Posted,
): readonly Order[] =>
  withReceived(
    orders,
    receipts.map(({ lot, order }) => {
      const moved = entries.find((entry) => entry.lot.id === lot && entry.place.kind === "shelf");
      return { order, quantity: quantity<Stock>(-(moved?.quantity ?? 0n)) };
    }),
  );

const touches = ({ entries }: Posted, lot: LotName, place: Place): boolean =>
  entries.some((entry) => lotKey(entry.lot) === lotKey(lot) && placeKey(entry.place) === placeKey(place));

/** What stands beside the ledger, as it is without the posting. */
function booksWithout(books: Books, posting: Posted, records: LotRecords): Books {
  const { workshop, desk } = books;
  const sold = posting.entries.filter(({ place, lot }) => place.kind === "sold" && lot.of === "finished");
  switch (posting.kind) {
    case "made": {
      const runs = new Set(posting.entries.flatMap(({ place }) => (place.kind === "batch" ? [place.run] : [])));
      const again = (closed: ClosedRun): boolean => runs.has(closed.run.id);
      return {
        workshop: { ...workshop, runs: [...workshop.runs, ...desk.closedRuns.filter(again).map(({ run }) => run)] },
        desk: { ...desk, closedRuns: desk.closedRuns.filter((closed) => !again(closed)) },
      };
    }
    case "sold": {
      const sales = withTakenBack(workshop.sales, posting.day, unitsOfProducts(sold, records));
      return { ...books, workshop: { ...workshop, sales } };
    }
    case "taken back": {
      const back = sold.map(({ lot, quantity }) => ({ lot, quantity: -quantity }));
      const sales = withSold(workshop.sales, posting.day, unitsOfProducts(back, records));
      return { ...books, workshop: { ...workshop, sales } };
    }
    case "opening":
    case "correction":
    case "received":
    case "late cost":
    case "weighed":
    case "counted":
    case "held":
    case "released":
    case "written off":
    case "reversal":
      return books;
  }
}
