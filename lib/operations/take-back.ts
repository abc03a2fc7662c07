import { withTakenBack } from "@/lib/domain/ledger/sales-history";
import { type StockMove, takeBack } from "@/lib/domain/ledger/stock-moves";
import { type Asked, namedIn, onTheLedger } from "./on-the-ledger";
import { unitsOfProducts } from "./units-of-products";

export interface TakeBack extends Asked, Pick<StockMove, "reason" | "lines"> {}

/** Takes sold units back into stock, and off the latest sales of their product. @rule LEDGER-15 */
export const takeUnitsBack = (asked: TakeBack) =>
  onTheLedger(asked, async ({ standingOf, records, books }, today) => {
    const decided = takeBack({ ...asked, today }, await standingOf(namedIn(asked.lines)), records);
    if (decided.kind !== "posted") return decided;
    const { workshop } = books;
    const sales = withTakenBack(workshop.sales, asked.day, unitsOfProducts(asked.lines, records));
    return { ...decided, books: { ...books, workshop: { ...workshop, sales } } };
  });
