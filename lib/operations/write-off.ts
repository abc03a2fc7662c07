import { writeOff, type WriteOff } from "@/lib/domain/ledger/stock-moves";
import { type Asked, namedIn, onTheLedger } from "./on-the-ledger";
import { waitsAtBench } from "./waits-at-bench";

export interface WriteOffAsked extends Asked, Pick<WriteOff, "lines" | "as" | "from"> {
  /** Spilt, a sample, given away, out of date. */
  readonly reason: string;
}

/** Writes stock off with its value: what was spilt, given away, used as a sample or is out of date. */
export const writeOffStock = (asked: WriteOffAsked) =>
  onTheLedger(asked, async ({ books, standingOf, records }, today) => {
    const lots = namedIn(asked.lines);
    const waits = asked.from === "hold" ? waitsAtBench(books, lots) : null;
    return waits ?? writeOff({ ...asked, today }, await standingOf(lots), records);
  });
