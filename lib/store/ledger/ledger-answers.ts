/** What a page asks of the ledger of the app's store. Each answer is of one state of the store. */
import { type Day, daysAfter } from "@/lib/domain/calendar";
import type { KeptBalance } from "@/lib/domain/ledger/audit";
import type { SinceCounted } from "@/lib/domain/ledger/counts-due";
import type { BatchUse } from "@/lib/domain/ledger/late-cost";
import { type HistoryLine, history } from "@/lib/domain/ledger/history";
import { finishedLot, type LotName, lotKey, materialLot, type Posted, type Value } from "@/lib/domain/ledger/posting";
import { type Recall, recallOfFinished, recallOfMaterial } from "@/lib/domain/ledger/recall";
import type { StruckOffLot } from "@/lib/domain/ledger/past";
import type { LotReceived } from "@/lib/domain/ledger/receipt";
import type { Balance } from "@/lib/domain/ledger/standing";
import { batchUses } from "@/lib/domain/ledger/standing-postings";
import { type TraceBack, traceBack, type TraceForward, traceForward } from "@/lib/domain/ledger/trace";
import { costOfSales, isInHouse, type StockValue, stockValue } from "@/lib/domain/ledger/valuation";
import { lotsOfPart, placesOfPart, stoodMore, type WorthPart } from "@/lib/domain/ledger/worth-by-lot";
import type { Sql } from "@/lib/store/connection";
import { openStore } from "@/lib/store/open-store";
import { storeFile } from "@/lib/store/store-file";
import { balancesIn, stoodOn } from "./balances";
import {
  lotsOfMaterial,
  placeTotalsBetween,
  postingNamed,
  postingsOfDay,
  postingsOfLots,
  postingsOfRuns,
  reversalOf,
  runsOfLots,
  sinceCounted,
} from "./ledger-reading";
import { downstreamOf } from "./downstream";
import { ledgerReader } from "./ledger-reader";
import { struckOffIn } from "./struck-off";
import { lotsReceivedFor, lotsReceivedOf } from "./receipts";

const asking = async <T>(ask: (sql: Sql) => Promise<T>): Promise<T> => {
  const { reader } = await openStore(storeFile());
  return reader.alone(ask);
};

/** Every lot that is on the shelf, on hold or in stock, with its value: what a count, a hold or a sale begins from. */
export const readStock = (): Promise<readonly KeptBalance[]> =>
  asking((sql) => balancesIn(sql, ["shelf", "hold", "finished"]));

/** What stood there at the end of a day, lots that are gone by now included. @rule LEDGER-26 */
export const readStockOn = (day: Day): Promise<readonly KeptBalance[]> =>
  asking((sql) => stoodOn(sql, ["shelf", "hold", "finished"], day));

/** What there is to know of these materials since each was last counted. @rule LEDGER-25 */
export const readSinceCounted = (materials: readonly string[]): Promise<ReadonlyMap<string, SinceCounted>> =>
  asking((sql) => sinceCounted(sql, materials));

/** One posting and the one that takes it back, if any; null where there is none with this key. */
export const readPosting = (
  id: string,
): Promise<{ readonly posting: Posted; readonly reversedBy: Posted | null } | null> =>
  asking(async (sql) => {
    const posting = await postingNamed(sql, id);
    return posting && { posting, reversedBy: await reversalOf(sql, id) };
  });

/** The lots that the ledger names and no list shows. */
export const readStruckOff = (): Promise<readonly StruckOffLot[]> => asking(struckOffIn);

/** What came for an order, by the day. @rule ORDER-5 */
export const readReceivedFor = (order: string): Promise<readonly LotReceived[]> =>
  asking((sql) => lotsReceivedFor(sql, order));

/** What came of materials in deliveries, by the day. @rule ORDER-5 */
export const readReceivedOf = (materials: readonly string[]): Promise<readonly LotReceived[]> =>
  asking((sql) => lotsReceivedOf(sql, materials));

/** A material's lots together, in the house. @rule LEDGER-19 */
export const readHistoryOfMaterial = (material: string): Promise<readonly HistoryLine[]> =>
  asking(async (sql) => historyOfLots(sql, (await lotsOfMaterial(sql, material)).map(materialLot)));

/** One lot, in the house. @rule LEDGER-19 */
export const readHistoryOfLot = (lot: LotName): Promise<readonly HistoryLine[]> =>
  asking((sql) => historyOfLots(sql, [lot]));

async function historyOfLots(sql: Sql, lots: readonly LotName[]): Promise<readonly HistoryLine[]> {
  const keys = new Set(lots.map(lotKey));
  const postings = await postingsOfLots(sql, lots);
  return history(postings, ({ lot, place }) => keys.has(lotKey(lot)) && isInHouse(place.kind));
}

/** A run's batch: what went in, and what came out. @rule LEDGER-19 */
export const readHistoryOfRun = (run: string): Promise<readonly HistoryLine[]> =>
  asking(async (sql) =>
    history(await postingsOfRuns(sql, [run]), ({ place }) => place.kind === "batch" && place.run === run),
  );

export interface DayHistory {
  /** What stock was worth at the end of the day before. */
  readonly before: StockValue;
  /** Quantities of different materials do not add up: only the values of the balances say something. */
  readonly lines: readonly HistoryLine[];
}

/** A day in the house. @rule LEDGER-19 */
export const readHistoryOfDay = (day: Day): Promise<DayHistory> =>
  asking(async (sql) => {
    const before = await stockValueIn(sql, daysAfter(day, -1));
    const balance: Balance = { quantity: 0n, value: before.total };
    const lines = history(await postingsOfDay(sql, day), ({ place }) => isInHouse(place.kind), balance);
    return { before, lines };
  });

/** What stock was worth at the end of a day. @rule LEDGER-17 */
export const readStockValue = (day: Day): Promise<StockValue> => asking((sql) => stockValueIn(sql, day));

const stockValueIn = async (sql: Sql, day: Day): Promise<StockValue> =>
  stockValue(await placeTotalsBetween(sql, ["shelf", "hold", "batch", "finished"], null, day));

/**
 * The lots that a figure of the value of stock is made up of.
 * @param on  the day at whose end they stood; of what was sold the days from the first to the last, both included
 * @rule LEDGER-17
 */
export const readLotsOfPart = (
  part: WorthPart,
  on: { readonly from: Day; readonly to: Day },
): Promise<readonly KeptBalance[]> =>
  asking(async (sql) => {
    const stood = await stoodOn(sql, placesOfPart(part), on.to);
    if (part !== "sold") return lotsOfPart(part, stood);
    return lotsOfPart(part, stoodMore(stood, await stoodOn(sql, placesOfPart(part), daysAfter(on.from, -1))));
  });

/** What was sold between two days cost, both included, less what was taken back. @rule LEDGER-17 */
export const readCostOfSales = (from: Day, to: Day): Promise<Value> =>
  asking(async (sql) => costOfSales(await placeTotalsBetween(sql, ["sold"], from, to)));

/** Where a lot of a material has gone. @rule LEDGER-20 */
export const readTraceForward = (id: string): Promise<TraceForward> =>
  asking(async (sql) => {
    const lot = materialLot(id);
    return traceForward((await downstreamOf(ledgerReader(sql), [lot])).postings, lot);
  });

/** Where all of a lot is now, of a material or finished. @rule RECALL-1 */
export const readRecall = (lot: LotName): Promise<Recall> =>
  asking(async (sql) => {
    if (lot.of === "finished") return recallOfFinished(lot, await postingsOfLots(sql, [lot]));
    const { postings } = await downstreamOf(ledgerReader(sql), [lot]);
    return recallOfMaterial(lot, traceForward(postings, lot));
  });

/** What the batches of these runs took, as it stands after what was taken back. @rule YIELD-2 */
export const readBatchUses = (runs: readonly string[]): Promise<readonly BatchUse[]> =>
  asking(async (sql) => batchUses(await postingsOfRuns(sql, runs)));

/** What a finished lot came from. @rule LEDGER-20 */
export const readTraceBack = (id: string): Promise<TraceBack> =>
  asking(async (sql) => {
    const lot = finishedLot(id);
    const own = await postingsOfLots(sql, [lot]);
    const ofRuns = await postingsOfRuns(sql, await runsOfLots(sql, [lot]));
    const from = batchUses(ofRuns).map((use) => use.lot);
    return traceBack(eachOnce([...own, ...ofRuns, ...(await postingsOfLots(sql, from))]), id);
  });

const eachOnce = (postings: readonly Posted[]): readonly Posted[] => [
  ...new Map(postings.map((posting) => [posting.sequence, posting])).values(),
];
