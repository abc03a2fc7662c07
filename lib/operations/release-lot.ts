import { release, type StockMove } from "@/lib/domain/ledger/stock-moves";
import { type Asked, namedIn, onTheLedger } from "./on-the-ledger";

export interface ReleaseLot extends Asked, Pick<StockMove, "reason" | "lines"> {}

/** Puts what is on hold back on the shelf, or into stock. @rule LEDGER-14 */
export const releaseLot = (asked: ReleaseLot) =>
  onTheLedger(asked, async ({ standingOf, records }, today) =>
    release({ ...asked, today }, await standingOf(namedIn(asked.lines)), records),
  );
