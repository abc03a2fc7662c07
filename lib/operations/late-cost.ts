import { type LateCost, lateCost } from "@/lib/domain/ledger/late-cost";
import { finishedLot } from "@/lib/domain/ledger/posting";
import { batchUses } from "@/lib/domain/ledger/standing-postings";
import { coinOf } from "@/lib/domain/money";
import { type Asked, namedIn, onTheLedger } from "./on-the-ledger";

export interface LateCostAsked extends Asked, Pick<LateCost, "reason" | "lines"> {}

/** Posts a cost that came after the goods, or a credit, to wherever they have gone. @rule LEDGER-10 */
export const postLateCost = (asked: LateCostAsked) =>
  onTheLedger(asked, async (ledger, today) => {
    const lots = namedIn(asked.lines);
    const uses = batchUses(await ledger.postingsOfRuns(await ledger.runsOfLots(lots)));
    const made = uses.flatMap(({ finished }) => (finished === null ? [] : [{ lot: finishedLot(finished) }]));
    const standing = await ledger.standingOf(namedIn([...asked.lines, ...made]));
    const coin = coinOf(ledger.books.workshop.settings.currency);
    return lateCost({ ...asked, today }, standing, uses, ledger.records, coin);
  });
