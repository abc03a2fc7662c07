import type { Books } from "@/lib/domain/desk";
import type { Workshop } from "@/lib/domain/workshop";
import type { Table } from "./columns";
import type { Connection, Sql } from "./connection";
import { deskOfRows } from "./desk-of-rows";
import { madeOnce } from "./made-of-tables";
import { openStore } from "./open-store";
import { rowsOfDesk } from "./rows-of-desk";
import { rowsOfWorkshop } from "./rows-of-workshop";
import { storeFile } from "./store-file";
import { type Rows, type TableName, TABLE_NAMES, TABLES } from "./tables";
import { STANDING, standingOfText, workshopOfRows } from "./workshop-of-rows";

/** Every table in one statement: one statement sees one state of the store, never half of a change. */
const EVERYTHING = [...TABLE_NAMES.map((name) => TABLES[name].select), STANDING]
  .map((select, at) => `(${select}) AS "text${String(at)}"`)
  .join(", ");

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

/** What the store holds, as this connection sees it: inside a transaction, what that transaction sees. */
export async function loadTexts(sql: Sql): Promise<LoadedTexts> {
  const [texts] = await sql.rows(`SELECT ${EVERYTHING}`);
  return {
    tables: byTable((_table, name) => String(texts?.[TABLE_NAMES.indexOf(name)])),
    standing: String(texts?.[TABLE_NAMES.length]),
  };
}

/** The books that these texts hold, or null where no workshop has been opened yet. */
export function booksOfTexts({ tables, standing }: LoadedTexts): Books | null {
  const rows = byTable((_table, name) => ROWS_OF[name](tables[name])) as Rows;
  const workshop = workshopOfRows(rows, standingOfText(standing));
  return workshop && { workshop, desk: deskOfRows(rows) };
}

/** The books as they are written; what is there of a lot is not among it, for that is posted. */
export function textsOfBooks({ workshop, desk }: Books): TableTexts {
  const rows: Rows = { ...rowsOfWorkshop(workshop), ...rowsOfDesk(desk) };
  return byTable(({ textOf }, name) => textOf(rows[name]));
}

/** One value for each table, under its name. */
const byTable = <T>(value: (table: Table<unknown>, name: TableName) => T): Readonly<Record<TableName, T>> =>
  Object.fromEntries(TABLE_NAMES.map((name) => [name, value(TABLES[name] as Table<unknown>, name)])) as Readonly<
    Record<TableName, T>
  >;

/** A table that reads as it did last gives the very rows that it gave then. */
const ROWS_OF = byTable(({ rowsOf }) => madeOnce(rowsOf));
