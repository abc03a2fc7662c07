/**
 * Connections to one SQLite file. A writer gives every statement and every transaction its turn; a reader sees the
 * last committed state and never waits. Prisma's clients and our own SQL speak through the same connection.
 */
import { PrismaBetterSqlite3 } from "@prisma/adapter-better-sqlite3";
import type Database from "better-sqlite3";
import { StoreUnusable } from "./store-unusable";
import { type Turns, turns } from "./turns";

type Adapter = Awaited<ReturnType<PrismaBetterSqlite3["connect"]>>;

/** Plain SQL, one statement at a time (a script may have many). Arguments are texts: whole numbers are cast in SQL. */
export interface Sql {
  readonly rows: (statement: string, ...values: readonly string[]) => Promise<readonly (readonly unknown[])[]>;
  readonly run: (statement: string, ...values: readonly string[]) => Promise<void>;
  readonly script: (statements: string) => Promise<void>;
}

export interface Connection {
  /** What Prisma's client speaks through. */
  readonly adapter: Adapter;
  /** Has the connection to itself until the work is done; everyone else waits. Never nested. */
  readonly alone: <T>(work: (sql: Sql) => Promise<T>) => Promise<T>;
  readonly close: () => Promise<void>;
}

const BUSY_AFTER_MILLISECONDS = 10_000;

/** Opens the file for writing, making it where there is none. @throws StoreUnusable where it is no SQLite file */
export async function openWriter(file: string): Promise<Connection> {
  const adapter = await new PrismaBetterSqlite3({ url: `file:${file}` }).connect();
  const plain = plainSql(adapter);
  try {
    await plain.script(`PRAGMA busy_timeout = ${String(BUSY_AFTER_MILLISECONDS)}`);
    await plain.script("PRAGMA synchronous = FULL");
    await plain.script("PRAGMA foreign_keys = ON");
  } catch (fault) {
    await adapter.dispose();
    throw fault;
  }
  const queue = turns();
  queueStatements(adapter, queue);
  return {
    adapter,
    alone: (work) => queue.during(() => work(plain)),
    close: () => queue.during(() => adapter.dispose()),
  };
}

/** Opens a file that exists, for reading only. */
export async function openReader(file: string): Promise<Connection> {
  const adapter = await new PrismaBetterSqlite3({ url: `file:${file}`, readonly: true, fileMustExist: true }).connect();
  const plain = plainSql(adapter);
  await plain.script(`PRAGMA busy_timeout = ${String(BUSY_AFTER_MILLISECONDS)}`);
  return { adapter, alone: (work) => work(plain), close: () => adapter.dispose() };
}

/**
 * Our own SQL on the adapter's connection, its statements prepared once: to prepare one anew costs more than to run it
 * where triggers hang on it, and the adapter binds a statement for good. Who has the connection alone is not queued.
 */
function plainSql(adapter: Adapter): Sql {
  const { client } = adapter as unknown as { readonly client: Database.Database };
  const prepared = new Map<string, Database.Statement>();
  const statementOf = (sql: string): Database.Statement => {
    const known = prepared.get(sql);
    if (known) return known;
    if (prepared.size >= MOST_PREPARED) prepared.clear();
    const statement = client.prepare(sql);
    prepared.set(sql, statement);
    return statement;
  };
  return {
    rows: (sql, ...values) =>
      inSqliteWords(() => {
        const statement = statementOf(sql);
        if (statement.reader) return statement.raw().all(...values) as (readonly unknown[])[];
        statement.run(...values);
        return [];
      }),
    run: (sql, ...values) =>
      inSqliteWords(() => {
        const statement = statementOf(sql);
        // A pragma may answer, and better-sqlite3 insists on hearing it.
        if (statement.reader) statement.all(...values);
        else statement.run(...values);
      }),
    script: (statements) =>
      inSqliteWords(() => {
        client.exec(statements);
      }),
  };
}

const MOST_PREPARED = 200;

/** What SQLite said, in words for a person where it is one who can help. */
async function inSqliteWords<T>(work: () => T): Promise<T> {
  try {
    // A turn of the loop for others: SQLite itself never waits.
    return await Promise.resolve(work());
  } catch (fault) {
    const { code, words } = saidBySqlite(fault);
    if (code.startsWith("SQLITE_BUSY")) {
      throw new StoreUnusable("Another program is busy writing to the store; try again when it has finished.", {
        cause: fault,
      });
    }
    if (/^SQLITE_(FULL|READONLY|IOERR|CORRUPT|NOTADB|CANTOPEN)/.test(code)) {
      throw new StoreUnusable(`The store cannot be used: ${words}.`, { cause: fault });
    }
    throw new Error(words, { cause: fault });
  }
}

const saidBySqlite = (fault: unknown): { readonly code: string; readonly words: string } =>
  fault instanceof Error
    ? { code: (fault as Error & { readonly code?: string }).code ?? "", words: fault.message }
    : { code: "", words: String(fault) };

/**
 * The adapter has one connection and runs a statement that comes beside an open transaction inside it: it would see
 * what is not committed, and be lost with a rollback. Here such a statement waits for the transaction to end.
 * A transaction takes the write lock when it begins: another process (a load beside a running server) then waits its
 * turn, where a transaction that has already read would fail when it comes to write.
 */
function queueStatements(adapter: Adapter, queue: Turns): void {
  const [queryRaw, executeRaw] = [adapter.queryRaw.bind(adapter), adapter.executeRaw.bind(adapter)];
  const executeScript = adapter.executeScript.bind(adapter);
  const startTransaction = adapter.startTransaction.bind(adapter);
  adapter.queryRaw = (statement) => queue.during(() => queryRaw(statement));
  adapter.executeRaw = (statement) => queue.during(() => executeRaw(statement));
  adapter.executeScript = (statements) => queue.during(() => executeScript(statements));
  adapter.startTransaction = async (isolation) => {
    const end = await queue.take();
    try {
      const transaction = await startTransaction(isolation);
      const [commit, rollback] = [transaction.commit.bind(transaction), transaction.rollback.bind(transaction)];
      try {
        await executeScript("COMMIT; BEGIN IMMEDIATE");
      } catch (fault) {
        await rollback();
        throw fault;
      }
      transaction.commit = () => commit().finally(end);
      transaction.rollback = () => rollback().finally(end);
      return transaction;
    } catch (fault) {
      end();
      throw fault;
    }
  };
}
