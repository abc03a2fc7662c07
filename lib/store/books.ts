import type { Books } from "@/lib/domain/desk";
import type { Workshop } from "@/lib/domain/workshop";
import type { Table } from "./columns";
import type { Connection, Sql } from "./connection";
import { deskOfRows } from "./desk-of-rows";
import { madeOnce } from "./made-of-tables";
import { openStore } from "./open-store";
import { DESK_ROWS } from "./rows-of-desk";
import { WORKSHOP_ROWS } from "./rows-of-workshop";
import { storeFile } from "./store-file";
import { type Rows, type RowsOfLists, type TableName, TABLE_NAMES, TABLES } from "./tables";
import { STANDING, standingOfText, workshopOfRows } from "./workshop-of-rows";

/** What the app's store holds, or null where no workshop has been opened yet. */
export const readBooks = (): Promise<Books | null> => readBooksFrom(storeFile());

/** The workshop of the app's store without what only the app keeps, or null where none has been opened yet. */
export const readWorkshop = (): Promise<Workshop | null> => readWorkshopFrom(storeFile());

/** What the store in this file holds; read anew where anybody has written to it since. @throws StoreUnusable */
export async function readBooksFrom(file: string): Promise<Books | null> {
  const { reader } = await openStore(file);
  return reader.alone(async (sql) => {
    // Asked first: where somebody writes between the two, what is read is newer than its number, and is read again.
    const [[state] = []] = await sql.rows("PRAGMA data_version");
    const last = lastRead.get(reader);
    if (last !== undefined && last.state === state) return last.books;
    const books = booksOfTexts(await loadTexts(sql));
    lastRead.set(reader, { state, books });
    return books;
  });
}

/** What a reader read last, with the number that SQLite gives the state of the file and changes with every commit. */
const lastRead = new WeakMap<Connection, { readonly state: unknown; readonly books: Books | null }>();

/** The workshop of the store in this file. @throws StoreUnusable */
export const readWorkshopFrom = async (file: string): Promise<Workshop | null> =>
  (await readBooksFrom(file))?.workshop ?? null;

/** The rows of each table as one text, in the form in which one statement writes them. */
export type TableTexts = Readonly<Record<TableName, string>>;

export interface LoadedTexts {
  readonly tables: TableTexts;
  /** What the ledger says is there of each lot. */
  readonly standing: string;
}

/**
 * What the store holds, as this connection sees it: inside a transaction, what that transaction sees. Of a writer that
 * has written last itself, only the tables that it wrote are read again.
 */
export async function loadTexts(sql: Sql): Promise<LoadedTexts> {
  const last = lastLoaded.get(sql);
  const known = last && last.state === (await stateOf(sql)) ? last.tables : {};
  const read = TABLE_NAMES.filter((name) => known[name] === undefined);
  // One statement: it sees one state of the store, never half of a change.
  const selects = [...read.map((name) => TABLES[name].select), STANDING];
  const [texts] = await sql.rows(
    `SELECT ${selects.map((select, at) => `(${select}) AS "text${String(at)}"`).join(", ")}`,
  );
  const tables = byTable((_table, name) => known[name] ?? String(texts?.[read.indexOf(name)]));
  return { tables, standing: String(texts?.[read.length]) };
}

/** The tables that a writer still knows, and the state in which it left the store. */
const lastLoaded = new WeakMap<Sql, { readonly state: string; readonly tables: Partial<TableTexts> }>();

/** The first number changes with every commit of others, the second with every row that this connection writes. */
export const stateOf = async (sql: Sql): Promise<string> =>
  (await sql.rows(`SELECT "data_version", total_changes() FROM pragma_data_version`)).join();

/**
 * To be told by a writer once its transaction is committed: of what it loaded there, it has written some tables alone.
 * @param state  at the end of the transaction and still in it: after it, others may have written already
 */
export function writtenIn(sql: Sql, state: string, { tables }: LoadedTexts, written: readonly TableName[]): void {
  const unwritten = TABLE_NAMES.filter((name) => !written.includes(name)).map((name) => [name, tables[name]] as const);
  lastLoaded.set(sql, { state, tables: Object.fromEntries(unwritten) });
}

/** The books that these texts hold, or null where no workshop has been opened yet. */
export function booksOfTexts({ tables, standing }: LoadedTexts): Books | null {
  const rows = byTable((_table, name) => ROWS_OF[name](tables[name])) as Rows;
  const workshop = workshopOfRows(rows, standingOfText(standing));
  return workshop && { workshop, desk: deskOfRows(rows) };
}

/**
 * The books as they are written; what is there of a lot is not among it, for that is posted.
 * @param from  the books that these were made from, and their texts: a list that is the very same is not written anew
 */
export function textsOfBooks(
  { workshop, desk }: Books,
  from: { readonly books: Books; readonly tables: TableTexts } | null = null,
): TableTexts {
  const written = {
    ...textsUnlike(WORKSHOP_ROWS, workshop, from?.books.workshop),
    ...textsUnlike(DESK_ROWS, desk, from?.books.desk),
  };
  return { ...from?.tables, ...written } as TableTexts;
}

/** The texts of the tables that are filled by what differs in two states of the workshop, or of the desk; else by all. */
const textsUnlike = <Owner extends object>(
  rows: RowsOfLists<Owner>,
  owner: Owner,
  other: Owner | undefined,
): Partial<TableTexts> =>
  Object.fromEntries(
    (Object.keys(rows) as (keyof Owner)[])
      .filter((list) => owner[list] !== other?.[list])
      .flatMap((list) => Object.entries(rows[list](owner[list])))
      .map(([name, each]) => [name, (TABLES[name as TableName] as Table<unknown>).textOf(each)]),
  );

/** One value for each table, under its name. */
const byTable = <T>(value: (table: Table<unknown>, name: TableName) => T): Readonly<Record<TableName, T>> =>
  Object.fromEntries(TABLE_NAMES.map((name) => [name, value(TABLES[name] as Table<unknown>, name)])) as Readonly<
    Record<TableName, T>
  >;

/** A table that reads as it did last gives the very rows that it gave then. */
const ROWS_OF = byTable(({ rowsOf }) => madeOnce(rowsOf));
