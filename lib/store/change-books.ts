import type { Books } from "@/lib/domain/desk";
import { booksOfTexts, loadTexts, type TableTexts, textsOfBooks } from "./books";
import type { Sql } from "./connection";
import { openStore } from "./open-store";
import { storeFile } from "./store-file";
import { TABLE_NAMES, TABLES } from "./tables";
import { inOneTransaction } from "./transaction";

/** What becomes of the books, and what to tell of it. */
export type Decision<Result> =
  | { readonly kind: "keep"; readonly books: Books; readonly result: Result }
  | { readonly kind: "refuse"; readonly result: Result };

/** There is nothing to change: no workshop has been opened in this store. */
export interface NoWorkshop {
  readonly kind: "no workshop";
}

/**
 * Loads the books of the app's store, decides and saves, in one transaction: nobody writes between, here or in another
 * process. Only tables whose rows differ are written anew; a refusal writes nothing.
 * @param decide  pure, and called at most once
 * @throws where the tables refuse what was decided, and then nothing is changed; StoreUnusable
 */
export async function changeBooks<Result>(decide: (books: Books) => Decision<Result>): Promise<Result | NoWorkshop> {
  const { writer } = await openStore(storeFile());
  return writer.alone((sql) =>
    inOneTransaction(sql, async () => {
      const texts = await loadTexts(sql);
      const books = booksOfTexts(texts);
      if (books === null) return { kind: "no workshop" };
      const decision = decide(books);
      if (decision.kind === "keep") await save(sql, texts, textsOfBooks(decision.books));
      return decision.result;
    }),
  );
}

/** Empties every table that differs before it fills any: a row that goes from one to another is never in both. */
async function save(sql: Sql, before: TableTexts, after: TableTexts): Promise<void> {
  const different = TABLE_NAMES.filter((name) => after[name] !== before[name]);
  for (const name of different) await sql.run(`DELETE FROM "${TABLES[name].name}"`);
  for (const name of different) await sql.run(TABLES[name].insert, after[name]);
}
