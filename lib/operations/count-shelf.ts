import { type Count, countShelf } from "@/lib/domain/ledger/count-shelf";
import { type Asked, namedIn, onlyLooking, onTheLedger } from "./on-the-ledger";

export interface CountAsked extends Asked, Pick<Count, "reason" | "lines"> {}

/** Posts a count of some or all lots as one posting. A count against a figure that changed since is refused. @rule LEDGER-13 */
export const postCount = (asked: CountAsked) =>
  onTheLedger(asked, async ({ standingOf, records }, today) =>
    countShelf({ ...asked, today }, await standingOf(namedIn(asked.lines)), records),
  );

/** What a count would change, without posting it. @rule LEDGER-13 */
export const lookAtCount = (asked: CountAsked) =>
  onTheLedger(asked, async ({ standingOf, records }, today) =>
    onlyLooking(countShelf({ ...asked, today }, await standingOf(namedIn(asked.lines)), records)),
  );
