import type { Books } from "@/lib/domain/desk";
import type { StruckOffLot } from "@/lib/domain/ledger/past";
import type { Receipt } from "@/lib/domain/ledger/receipt";
import { lotKey, type Posted, type Posting } from "@/lib/domain/ledger/posting";
import type { LotRecords } from "@/lib/domain/ledger/refusal";
import { booksOfTexts, loadTexts, textsOfBooks } from "./books";
import { nothingWritten, type NoWorkshop, save, writeBooks, writeUnnamed } from "./change-books";
import type { Sql } from "./connection";
import { keepReceipts } from "./ledger/receipts";
import { keepStruckOff, struckOffIn } from "./ledger/struck-off";
import { post } from "./ledger/posting-rows";
import { type LedgerReader, ledgerReader } from "./ledger/ledger-reader";
import { openStore } from "./open-store";
import { storeFile } from "./store-file";

/** What an operation on the ledger decides from. */
export interface Ledger extends LedgerReader {
  readonly books: Books;
  readonly records: LotRecords;
  /** The number that the next posting will have. */
  readonly next: number;
}

/** What becomes of the books. What they state of quantities and values counts for nothing: that is posted. */
export type PostDecision<Result> =
  | {
      readonly kind: "post";
      readonly posting: Posting;
      readonly books: Books;
      /** The lot of a batch that failed: the ledger names it, and no list shows it. */
      readonly failed: StruckOffLot | null;
      /** Of the lots that a delivery brings. */
      readonly receipts: readonly Receipt[];
      readonly result: Result;
    }
  /** Nothing is posted, and other records are kept than before; what the ledger says had a part in that. */
  | { readonly kind: "keep"; readonly books: Books; readonly result: Result }
  | { readonly kind: "refuse"; readonly result: Result };

/** The form was sent before: this is what it posted. @rule LEDGER-3 */
export interface AlreadyPosted {
  readonly kind: "already posted";
  readonly posting: Posted;
}

/** Whether a change may also take off rows that others name, which costs the keys being looked at afterwards. */
export type Reach = "rows that none name" | "any row";

/**
 * Loads the books of the app's store, decides on a posting and posts it, in one transaction. A refusal changes nothing.
 * @param decide  reads from the ledger what it needs, and is called at most once
 * @throws where the tables refuse what was decided, and then nothing is changed; StoreUnusable
 */
export async function postToBooks<Result>(
  decide: (ledger: Ledger) => Promise<PostDecision<Result>>,
  reach: Reach = "rows that none name",
): Promise<Result | NoWorkshop> {
  const { writer } = await openStore(storeFile());
  const write = reach === "any row" ? writeBooks : writeUnnamed;
  return writer.alone((sql) =>
    write<Result | NoWorkshop>(sql, async () => {
      const texts = await loadTexts(sql);
      const books = booksOfTexts(texts);
      if (books === null) return nothingWritten(texts, { kind: "no workshop" });
      const decision = await decide(await ledgerIn(sql, books));
      if (decision.kind === "refuse") return nothingWritten(texts, decision.result);
      const after = textsOfBooks(decision.books, { books, tables: texts.tables });
      const written = await save(sql, texts.tables, after, async () => {
        if (decision.kind === "keep") return;
        if (decision.failed) await keepStruckOff(sql, [decision.failed]);
        await post(sql, [decision.posting]);
        await keepReceipts(sql, decision.receipts);
      });
      return { result: decision.result, loaded: texts, ...written };
    }),
  );
}

/** The same under a caller's key: what was posted under it before is told, and changes nothing. @rule LEDGER-3 */
export const postOnce = <Result>(
  key: string,
  decide: (ledger: Ledger) => Promise<PostDecision<Result>>,
  reach?: Reach,
): Promise<Result | NoWorkshop | AlreadyPosted> =>
  postToBooks<Result | AlreadyPosted>(async (ledger) => {
    const posting = await ledger.postingNamed(key);
    return posting ? { kind: "refuse", result: { kind: "already posted", posting } } : decide(ledger);
  }, reach);

async function ledgerIn(sql: Sql, books: Books): Promise<Ledger> {
  const [[last] = []] = await sql.rows(`SELECT coalesce(max("sequence"), 0) FROM "postings"`);
  return { ...ledgerReader(sql), books, records: await recordsIn(sql, books), next: Number(last) + 1 };
}

/** The lots of the books, and those that were struck off the lists. */
export async function recordsIn(sql: Sql, { workshop }: Books): Promise<LotRecords> {
  const struckOff = new Map((await struckOffIn(sql)).map((each) => [lotKey(each.lot), each]));
  let listed: ListedLots | null = null;
  return (lot) => {
    // Most deeds ask for a few lots, and some for none.
    listed ??= listedLots(workshop);
    const own = lot.of === "material" ? listed.lots.get(lot.id) : undefined;
    if (own) return { since: own.received, expires: own.expires, item: own.material };
    const made = lot.of === "finished" ? listed.finished.get(lot.id) : undefined;
    if (made) return { since: made.made, expires: made.bestBefore, item: made.product };
    const gone = struckOff.get(lotKey(lot));
    return gone ? { since: gone.since, expires: gone.expires, item: gone.item ?? "" } : null;
  };
}

type ListedLots = ReturnType<typeof listedLots>;

const listedLots = ({ lots, finished }: Books["workshop"]) => ({
  lots: new Map(lots.map((lot) => [lot.id, lot])),
  finished: new Map(finished.map((lot) => [lot.id, lot])),
});
