import type { Day } from "@/lib/domain/calendar";
import { type Count, countShelf, movedByCountsAfter } from "@/lib/domain/ledger/count-shelf";
import type { Ledger } from "@/lib/store/post-to-books";
import { type Asked, namedIn, onlyLooking, onTheLedger } from "./on-the-ledger";

export interface CountAsked extends Asked, Pick<Count, "reason" | "lines"> {}

/**
 * Posts a count of some or all lots, of materials and of finished units, as one posting. A count against a figure that
 * changed since is refused, and so is one that later postings or counts do not allow. @rule LEDGER-13, LEDGER-26
 */
export const postCount = (asked: CountAsked) =>
  onTheLedger(asked, (ledger, today) => decideCount(ledger, asked, today));

/** What a count would change, without posting it. @rule LEDGER-13 */
export const lookAtCount = (asked: CountAsked) =>
  onTheLedger(asked, async (ledger, today) => onlyLooking(await decideCount(ledger, asked, today)));

async function decideCount({ standingOf, postingsOfLots, records }: Ledger, asked: CountAsked, today: Day) {
  const lots = namedIn(asked.lines);
  const standing = await standingOf(lots);
  const later = movedByCountsAfter(standing, lots, asked.day);
  const past = later.length === 0 ? [] : await postingsOfLots(later);
  return countShelf({ ...asked, today }, standing, records, past);
}
