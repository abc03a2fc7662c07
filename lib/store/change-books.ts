import type { Books } from "@/lib/domain/desk";
import { type Corrections, corrections, restated } from "@/lib/domain/ledger/opening";
import { homeOf, type LotName, type Posting } from "@/lib/domain/ledger/posting";
import { latest } from "@/lib/domain/ledger/standing";
import { booksOfTexts, type LoadedTexts, loadTexts, stateOf, type TableTexts, textsOfBooks, writtenIn } from "./books";
import { areAlike, type Cell } from "./columns";
import type { Sql } from "./connection";
import { postingsOfLots, standingOf } from "./ledger/ledger-reading";
import { post } from "./ledger/posting-rows";
import { openStore } from "./open-store";
import { storeFile } from "./store-file";
import { type TableName, TABLE_NAMES, TABLES } from "./tables";
import { inOneTransaction, inPlainTransaction } from "./transaction";

/** What becomes of the books, and what to tell of it. */
export type Decision<Result> =
  | { readonly kind: "keep"; readonly books: Books; readonly result: Result }
  | { readonly kind: "refuse"; readonly result: Result };

/** There is nothing to change: no workshop has been opened in this store. */
export interface NoWorkshop {
  readonly kind: "no workshop";
}

/** The tables that a change of the books writes. */
const BOOK_TABLES = TABLE_NAMES.map((name) => TABLES[name].name);
/**
 * Nothing names a row of these, so that taking one off cannot leave a name without its record; but for the versions of a
 * run that was made, whose key is looked at when all is written.
 */
const NAMED_BY_NONE: ReadonlySet<TableName> = new Set<TableName>([
  "lots",
  "orderLines",
  "finished",
  "runs",
  "closedRuns",
  "closedRunVersions",
  "sales",
  "labels",
  "papers",
]);

/** What a change told, what it had loaded, and the tables that it wrote. */
export interface Written<Result> {
  readonly result: Result;
  readonly loaded: LoadedTexts;
  readonly tables: readonly TableName[];
  /** Whether it took off what other records may name. */
  readonly mayBreak: boolean;
}

/** Runs a change of the books in one transaction, and looks at the names in the tables that it leaves in doubt. */
export const writeBooks = <Result>(sql: Sql, change: () => Promise<Written<Result>>): Promise<Result> =>
  remembered(sql, change, (stated) =>
    inOneTransaction(sql, stated, ({ tables, mayBreak }) =>
      mayBreak ? BOOK_TABLES : tables.map((name) => TABLES[name].name),
    ),
  );

/** The same for a change that takes off no row which another names. @throws where it would */
export const writeUnnamed = <Result>(sql: Sql, change: () => Promise<Written<Result>>): Promise<Result> =>
  remembered(sql, change, (stated) =>
    inPlainTransaction(sql, async () => {
      const written = await stated();
      if (written.mayBreak) throw new Error("a posting would take off what other records name");
      return written;
    }),
  );

interface Stated<Result> extends Written<Result> {
  readonly state: string;
}

/** What was written and committed need not be read again. */
async function remembered<Result>(
  sql: Sql,
  change: () => Promise<Written<Result>>,
  commit: (stated: () => Promise<Stated<Result>>) => Promise<Stated<Result>>,
): Promise<Result> {
  const { result, state, loaded, tables } = await commit(async () => {
    const written = await change();
    return { ...written, state: await stateOf(sql) };
  });
  writtenIn(sql, state, loaded, tables);
  return result;
}

/** A change that wrote nothing. */
export const nothingWritten = <Result>(loaded: LoadedTexts, result: Result): Written<Result> => ({
  result,
  loaded,
  tables: [],
  mayBreak: false,
});

/**
 * Loads the books of the app's store, decides and saves, in one transaction: nobody writes between, here or in another
 * process. Only tables whose rows differ are written anew; a refusal writes nothing. What the books then state otherwise
 * of a lot is posted as a correction.
 * @param decide  pure, and called at most once
 * @param moved   what to tell where a lot would be stated as of another material, and something of it has moved
 *                (LEDGER-22); then nothing is changed. Who restates no lot need not say.
 * @throws where the tables refuse what was decided, and then nothing is changed; StoreUnusable
 */
export async function changeBooks<Result>(
  decide: (books: Books) => Decision<Result>,
  moved: (lot: LotName) => Result = notRestated,
): Promise<Result | NoWorkshop> {
  const { writer } = await openStore(storeFile());
  return writer.alone((sql) =>
    writeBooks<Result | NoWorkshop>(sql, async () => {
      const texts = await loadTexts(sql);
      const books = booksOfTexts(texts);
      if (books === null) return nothingWritten(texts, { kind: "no workshop" });
      const decision = decide(books);
      if (decision.kind === "refuse" || decision.books === books) return nothingWritten(texts, decision.result);
      const corrected = await correctionsTo(sql, books, decision.books);
      if (corrected.kind !== "corrected") return nothingWritten(texts, moved(corrected.lot));
      const posting = () => post(sql, corrected.postings);
      const after = textsOfBooks(decision.books, { books, tables: texts.tables });
      return { result: decision.result, loaded: texts, ...(await save(sql, texts.tables, after, posting)) };
    }),
  );
}

function notRestated({ id }: LotName): never {
  throw new Error(`lot ${id} has moved and cannot be of another material`);
}

/**
 * Writes the rows that differ: a long list of which one row is new costs one row. Every row that goes is taken off
 * before any is put in, so that one which goes from a table to another is never in both. What is posted finds the rows
 * that it names, new or old.
 * @returns the tables that were written, and whether a name may now be without its record in any
 */
export async function save(
  sql: Sql,
  before: TableTexts,
  after: TableTexts,
  posting: () => Promise<void>,
): Promise<Pick<Written<unknown>, "tables" | "mayBreak">> {
  const different = TABLE_NAMES.filter((name) => after[name] !== before[name]).map((name) => ({
    name,
    table: TABLES[name],
    ...differingRows(before[name], after[name]),
  }));
  for (const { table, gone } of different) if (gone !== null) await sql.run(table.remove, gone);
  for (const { table, added } of different) if (added !== null) await sql.run(table.insert, added);
  await posting();
  const mayBreak = different.some(({ name, gone }) => gone !== null && !NAMED_BY_NONE.has(name));
  // A lot that is struck off forgets what was removed; one that never moved goes with its row.
  const tidied = different.filter(({ gone }) => gone !== null).length > 0;
  if (tidied) for (const statement of TABLE_NAMES.flatMap((name) => TABLES[name].tidy)) await sql.run(statement);
  return { tables: different.map(({ name }) => name), mayBreak };
}

/** The rows of one text that are not among those of another, and the other way round, as such texts; null where none. */
function differingRows(before: string, after: string): { readonly gone: string | null; readonly added: string | null } {
  const [old, now] = [JSON.parse(before) as Cell[][], JSON.parse(after) as Cell[][]];
  const least = Math.min(old.length, now.length);
  // Mostly rows come at the end: those before the first that differs, and after the last, need not be written to compare.
  let start = 0;
  while (start < least && areAlike(old[start], now[start])) start += 1;
  let end = 0;
  while (end < least - start && areAlike(old.at(-1 - end), now.at(-1 - end))) end += 1;
  const [gone, added] = [old, now].map((rows) =>
    rows.slice(start, rows.length - end).map((row) => JSON.stringify(row)),
  );
  return { gone: rowsWithout(gone, new Set(added)), added: rowsWithout(added, new Set(gone)) };
}

function rowsWithout(rows: readonly string[] = [], others: ReadonlySet<string>): string | null {
  const left = rows.filter((row) => !others.has(row));
  return left.length === 0 ? null : `[${left.join(",")}]`;
}

async function correctionsTo(sql: Sql, before: Books, after: Books): Promise<Corrections> {
  const changed = restated(before.workshop, after.workshop);
  if (changed.length === 0) return { kind: "corrected", postings: [] };
  const lots = changed.map(({ lot }) => lot);
  const [touching, standing] = [await postingsOfLots(sql, lots), await standingOf(sql, lots)];
  const [[last] = []] = await sql.rows(`SELECT coalesce(max("sequence"), 0) FROM "postings"`);
  let next = Number(last) + 1;
  const postings: Posting[] = [];
  for (const each of changed) {
    const own = touching.filter(({ entries }) =>
      entries.some(({ lot }) => lot.id === each.lot.id && lot.of === each.lot.of),
    );
    const decided = corrections(each, own, latest(standing, each.lot, homeOf(each.lot)), next);
    if (decided.kind !== "corrected") return decided;
    postings.push(...decided.postings);
    next += decided.postings.length;
  }
  return { kind: "corrected", postings };
}
