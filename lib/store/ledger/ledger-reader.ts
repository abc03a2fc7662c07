import type { LotName, Posted } from "@/lib/domain/ledger/posting";
import type { Receipt } from "@/lib/domain/ledger/receipt";
import type { Standing } from "@/lib/domain/ledger/standing";
import type { Sql } from "@/lib/store/connection";
import { postingNamed, postingsOfLots, postingsOfRuns, reversalOf, runsOfLots, standingOf } from "./ledger-reading";
import { receiptsOfPosting } from "./receipts";

/** The ledger's answers, as one connection sees them. */
export interface LedgerReader {
  readonly standingOf: (lots: readonly LotName[]) => Promise<Standing>;
  readonly postingsOfLots: (lots: readonly LotName[]) => Promise<readonly Posted[]>;
  readonly postingsOfRuns: (runs: readonly string[]) => Promise<readonly Posted[]>;
  readonly runsOfLots: (lots: readonly LotName[]) => Promise<readonly string[]>;
  readonly postingNamed: (id: string) => Promise<Posted | null>;
  readonly reversalOf: (id: string) => Promise<Posted | null>;
  readonly receiptsOfPosting: (id: string) => Promise<readonly Receipt[]>;
}

export const ledgerReader = (sql: Sql): LedgerReader => ({
  standingOf: (lots) => standingOf(sql, lots),
  postingsOfLots: (lots) => postingsOfLots(sql, lots),
  postingsOfRuns: (runs) => postingsOfRuns(sql, runs),
  runsOfLots: (lots) => runsOfLots(sql, lots),
  postingNamed: (id) => postingNamed(sql, id),
  reversalOf: (id) => reversalOf(sql, id),
  receiptsOfPosting: (id) => receiptsOfPosting(sql, id),
});
