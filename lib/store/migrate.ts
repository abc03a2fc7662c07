/** Brings a store up to the schema of this version of the program. Nothing is downloaded and nothing else is needed. */
import { randomUUID } from "node:crypto";
import type { Connection, Sql } from "./connection";
import { keepCopy } from "./kept-copy";
import type { MigrationFile } from "./migration-files";
import { inOneTransaction } from "./transaction";

export type Migration =
  | { readonly kind: "ready"; readonly applied: readonly string[]; readonly keptAs: string | null }
  | { readonly kind: "refused"; readonly reason: string };

/** The table that Prisma's own tool keeps, so that either can continue the history. */
const HISTORY = `CREATE TABLE IF NOT EXISTS "_prisma_migrations" (
  "id" TEXT PRIMARY KEY NOT NULL, "checksum" TEXT NOT NULL, "finished_at" DATETIME,
  "migration_name" TEXT NOT NULL, "logs" TEXT, "rolled_back_at" DATETIME,
  "started_at" DATETIME NOT NULL DEFAULT current_timestamp, "applied_steps_count" INTEGER UNSIGNED NOT NULL DEFAULT 0)`;

/**
 * Applies what is pending, each migration in a transaction of its own. Before the first one a copy of a store that is
 * not empty is kept beside it. A history that was edited, or that a newer version wrote, is refused untouched.
 * @param file  the store that the connection has open
 */
export const migrate = (
  connection: Connection,
  file: string,
  migrations: readonly MigrationFile[],
): Promise<Migration> =>
  connection.alone(async (sql) => {
    const applied: string[] = [];
    let keptAs: string | null = null;
    if (await isAnothers(sql, migrations)) return ANOTHERS;
    // Written into the file itself, so only now that it is known to be ours.
    await sql.script("PRAGMA journal_mode = WAL");
    for (;;) {
      const step = await inOneTransaction(sql, async () => {
        // Read again under the lock each time: another process may be migrating the same store.
        const verdict = await compareHistory(sql, migrations);
        if (verdict.kind !== "pending") return verdict;
        if (verdict.count > 0 && applied.length === 0) keptAs = await keepCopy(file, new Date());
        await apply(sql, verdict.next);
        return verdict;
      });
      if (step.kind === "refused") return step;
      if (step.kind === "up to date") return { kind: "ready", applied, keptAs };
      applied.push(step.next.name);
    }
  });

/** Runs every migration in the transaction that is open. */
export async function applyAll(sql: Sql, migrations: readonly MigrationFile[]): Promise<void> {
  await sql.run(HISTORY);
  for (const migration of migrations) await apply(sql, migration);
}

const ANOTHERS = {
  kind: "refused",
  reason: "it is the database of another program; choose another file",
} as const;

type Verdict =
  | { readonly kind: "up to date" }
  | { readonly kind: "pending"; readonly next: MigrationFile; readonly count: number }
  | { readonly kind: "refused"; readonly reason: string };

/** Whether the file holds tables and a history that does not begin with ours. */
async function isAnothers(sql: Sql, migrations: readonly MigrationFile[]): Promise<boolean> {
  const tables = (await sql.rows("SELECT name FROM sqlite_master WHERE type = 'table'")).map(([name]) => name);
  if (tables.length === 0) return false;
  if (!tables.includes("_prisma_migrations")) return true;
  const applied = await appliedTo(sql);
  const [first] = migrations;
  return first !== undefined && applied.size > 0 && !applied.has(first.name);
}

/** Checksums of the migrations that the store has had, by name. */
async function appliedTo(sql: Sql): Promise<ReadonlyMap<string, string>> {
  const rows = await sql.rows(
    `SELECT migration_name, checksum FROM "_prisma_migrations" WHERE finished_at IS NOT NULL AND rolled_back_at IS NULL`,
  );
  return new Map(rows.map(([name, checksum]) => [String(name), String(checksum)]));
}

/** `count` is how many migrations the store has had. */
async function compareHistory(sql: Sql, migrations: readonly MigrationFile[]): Promise<Verdict> {
  await sql.run(HISTORY);
  const checksumsByName = await appliedTo(sql);
  const edited = migrations.find(({ name, checksum }) => (checksumsByName.get(name) ?? checksum) !== checksum);
  if (edited) {
    return {
      kind: "refused",
      reason: `its migration ${edited.name} was edited after it was applied; restore that file`,
    };
  }
  const known = new Set(migrations.map(({ name }) => name));
  const unknown = [...checksumsByName.keys()].find((name) => !known.has(name));
  if (unknown !== undefined) {
    return { kind: "refused", reason: `a newer version of Stillroom has used it (${unknown}); start that version` };
  }
  const next = migrations.find(({ name }) => !checksumsByName.has(name));
  return next ? { kind: "pending", next, count: checksumsByName.size } : { kind: "up to date" };
}

async function apply(sql: Sql, migration: MigrationFile): Promise<void> {
  const startedAt = String(Date.now());
  try {
    await sql.script(migration.sql);
  } catch (fault) {
    const said = fault instanceof Error ? fault.message : String(fault);
    throw new Error(`migration ${migration.name} failed and nothing was changed: ${said}`, { cause: fault });
  }
  await sql.run(
    `INSERT INTO "_prisma_migrations" (id, checksum, migration_name, started_at, finished_at, applied_steps_count)
     VALUES (?, ?, ?, CAST(? AS INTEGER), CAST(? AS INTEGER), 1)`,
    randomUUID(),
    migration.checksum,
    migration.name,
    startedAt,
    String(Date.now()),
  );
}
