import { release, type StockMove } from "@/lib/domain/ledger/stock-moves";
import { type Asked, namedIn, onTheLedger } from "./on-the-ledger";
import { waitsAtBench } from "./waits-at-bench";

export interface ReleaseLot extends Asked, Pick<StockMove, "reason" | "lines"> {}

/** Puts what is on hold back on the shelf, or into stock. @rule LEDGER-14, BENCH-8 */
export const releaseLot = (asked: ReleaseLot) =>
  onTheLedger(asked, async ({ books, standingOf, records }, today) => {
    const lots = namedIn(asked.lines);
    return waitsAtBench(books, lots) ?? release({ ...asked, today }, await standingOf(lots), records);
  });
