import { hold, type StockMove } from "@/lib/domain/ledger/stock-moves";
import { type Asked, namedIn, onTheLedger } from "./on-the-ledger";

export interface HoldLot extends Asked, Pick<StockMove, "reason" | "lines"> {}

/** Sets lots, or part of them, aside: no plan draws on them until they are released. @rule LEDGER-14 */
export const holdLot = (asked: HoldLot) =>
  onTheLedger(asked, async ({ standingOf, records }, today) =>
    hold({ ...asked, today }, await standingOf(namedIn(asked.lines)), records),
  );
