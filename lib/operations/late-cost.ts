import { type LateCost, lateCost } from "@/lib/domain/ledger/late-cost";
import { coinOf } from "@/lib/domain/money";
import { downstreamOf } from "@/lib/store/ledger/downstream";
import { type Asked, namedIn, onTheLedger } from "./on-the-ledger";

export interface LateCostAsked extends Asked, Pick<LateCost, "reason" | "lines"> {}

/** Posts a cost that came after the goods, or a credit, to wherever they have gone. @rule LEDGER-10 */
export const postLateCost = (asked: LateCostAsked) =>
  onTheLedger(asked, async (ledger, today) => {
    const lots = namedIn(asked.lines);
    const { uses, lots: all } = await downstreamOf(ledger, lots);
    const standing = await ledger.standingOf(all);
    const coin = coinOf(ledger.books.workshop.settings.currency);
    return lateCost({ ...asked, today }, standing, uses, ledger.records, coin);
  });
