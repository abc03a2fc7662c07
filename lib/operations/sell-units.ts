import { withSold } from "@/lib/domain/ledger/sales-history";
import { type Sale, sellUnits } from "@/lib/domain/ledger/stock-moves";
import { type Asked, namedIn, onTheLedger } from "./on-the-ledger";
import { unitsOfProducts } from "./units-of-products";

export interface SellUnits extends Asked, Pick<Sale, "reason" | "lines" | "outOfDate"> {}

/** Sells finished units by lot. @rule LEDGER-15 */
export const sell = (asked: SellUnits) =>
  onTheLedger(asked, async ({ standingOf, records, books }, today) => {
    const decided = sellUnits({ ...asked, today }, await standingOf(namedIn(asked.lines)), records);
    if (decided.kind !== "posted") return decided;
    const { workshop } = books;
    const sales = withSold(workshop.sales, asked.day, unitsOfProducts(asked.lines, records));
    return { ...decided, books: { ...books, workshop: { ...workshop, sales } } };
  });
