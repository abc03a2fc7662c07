import type { Books } from "@/lib/domain/desk";
import type { Past } from "@/lib/domain/ledger/past";
import { booksOfTexts, loadTexts } from "@/lib/store/books";
import { openReader, type Sql } from "@/lib/store/connection";
import { openStore } from "@/lib/store/open-store";
import { storeFile } from "@/lib/store/store-file";
import { allPostings } from "./ledger-reading";
import { allReceipts } from "./receipts";
import { struckOffIn } from "./struck-off";

export interface BooksWithPast extends Books {
  readonly past: Past;
}

/** What the app's store holds, with all that led to it; null where no workshop has been opened yet. */
export const readBooksWithPast = (): Promise<BooksWithPast | null> => readBooksWithPastFrom(storeFile());

/** What the store in this file holds, with all that led to it. @throws StoreUnusable */
export async function readBooksWithPastFrom(file: string): Promise<BooksWithPast | null> {
  await openStore(file);
  // Several statements, one state: a transaction, on a connection that nobody else asks.
  const reader = await openReader(file);
  try {
    return await reader.alone(async (sql) => {
      await sql.run("BEGIN");
      const books = booksOfTexts(await loadTexts(sql));
      return books && { ...books, past: await pastOf(sql, books) };
    });
  } finally {
    await reader.close();
  }
}

const pastOf = async (sql: Sql, { desk }: Books): Promise<Past> => ({
  postings: (await allPostings(sql)).map((posting, at) => ({ ...posting, sequence: at + 1 })),
  closedRuns: desk.closedRuns,
  struckOff: await struckOffIn(sql),
  receipts: await allReceipts(sql),
  versions: desk.versions,
  trials: desk.trials,
  batches: desk.batches,
});
