import type { Sql } from "./connection";

/**
 * Runs the work in one transaction that no other process can write beside. Foreign keys are looked at when it ends,
 * not statement by statement: a table that is rebuilt is dropped on the way, and one that is written anew is emptied.
 * (Deferring them would not do: SQLite takes RESTRICT and CASCADE at their word at once.)
 * @param tables  those whose names are looked at once the work is done; null for all. The ledger's tables grow without
 *                end, and only triggers write them: who changes the books looks at what it changed.
 */
export async function inOneTransaction<T>(
  sql: Sql,
  work: () => Promise<T>,
  tables: (result: T) => readonly string[] | null = () => null,
): Promise<T> {
  await sql.run("PRAGMA foreign_keys = OFF");
  try {
    await sql.run("BEGIN EXCLUSIVE");
    try {
      const result = await work();
      const broken = await danglingRows(sql, tables(result));
      if (broken > 0) throw new Error(`${String(broken)} rows would name something that is not there`);
      await sql.run("COMMIT");
      return result;
    } catch (fault) {
      await rollBack(sql);
      throw fault;
    }
  } finally {
    await sql.run("PRAGMA foreign_keys = ON");
  }
}

/**
 * Runs the work in one transaction that no other process can write beside, with every name looked at as it is written.
 * For work that takes off no row which others name. Turning that off and on again, as above, makes SQLite prepare every
 * statement anew, which costs more than a posting.
 */
export async function inPlainTransaction<T>(sql: Sql, work: () => Promise<T>): Promise<T> {
  await sql.run("BEGIN IMMEDIATE");
  try {
    const result = await work();
    await sql.run("COMMIT");
    return result;
  } catch (fault) {
    await rollBack(sql);
    throw fault;
  }
}

async function danglingRows(sql: Sql, tables: readonly string[] | null): Promise<number> {
  if (tables?.length === 0) return 0;
  if (tables === null) return (await sql.rows("PRAGMA foreign_key_check")).length;
  const each = tables.map((name) => `SELECT count(*) AS "rows" FROM pragma_foreign_key_check('${name}')`);
  const [[broken] = []] = await sql.rows(`SELECT sum("rows") FROM (${each.join(" UNION ALL ")})`);
  return Number(broken);
}

/** SQLite has already rolled back after some faults (a full disk); a second rollback is then an error of its own. */
async function rollBack(sql: Sql): Promise<void> {
  try {
    await sql.run("ROLLBACK");
  } catch (fault) {
    if (!(fault instanceof Error && fault.message.includes("no transaction is active"))) throw fault;
  }
}
