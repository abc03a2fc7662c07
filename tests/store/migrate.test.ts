import { existsSync, readdirSync, readFileSync, writeFileSync } from "node:fs";
import path from "node:path";
import Database from "better-sqlite3";
import { expect, test } from "vitest";
import { openWriter } from "@/lib/store/connection";
import { type Migration, migrate } from "@/lib/store/migrate";
import { type MigrationFile, migrationFiles, migrationsFolder } from "@/lib/store/migration-files";
import { closeStore, openStore } from "@/lib/store/open-store";
import { runChild } from "../helpers/child";
import { folderForEachTest } from "../helpers/store-folder";
import { bytesOf } from "../helpers/store-soundness";

const folder = folderForEachTest();
const file = () => path.join(folder(), "stillroom.db");

/** A made-up history: jars on a shelf. */
const step = (name: string, sql: string): MigrationFile => ({ name, sql, checksum: `checksum of ${name} ${sql}` });
const JARS = step(
  "1_jars",
  "CREATE TABLE jars (id TEXT PRIMARY KEY, units INTEGER); CREATE TABLE lids (jar TEXT REFERENCES jars);",
);
const COLOURS = step("2_colours", "ALTER TABLE jars ADD colour TEXT; UPDATE jars SET colour = 'brown';");

async function migrated(...migrations: readonly MigrationFile[]): Promise<Migration> {
  const writer = await openWriter(file());
  try {
    return await migrate(writer, file(), migrations);
  } finally {
    await writer.close();
  }
}

function inStore<T>(look: (store: Database.Database) => T, named = file()): T {
  const store = new Database(named);
  try {
    return look(store);
  } finally {
    store.close();
  }
}

const all = (sql: string, named = file()) => inStore((store) => store.prepare(sql).all(), named);
const keptFiles = () => readdirSync(folder()).filter((name) => name.includes("kept") || name.includes("unfinished"));

test("an empty store gets every migration, in order, and nothing is kept of it", async () => {
  expect(await migrated(JARS, COLOURS)).toEqual({ kind: "ready", applied: ["1_jars", "2_colours"], keptAs: null });
  expect(all("SELECT migration_name, checksum FROM _prisma_migrations ORDER BY migration_name")).toEqual([
    { migration_name: "1_jars", checksum: JARS.checksum },
    { migration_name: "2_colours", checksum: COLOURS.checksum },
  ]);
  expect(keptFiles()).toEqual([]);
});

test("a store that is up to date stays as it is", async () => {
  await migrated(JARS);
  expect(await migrated(JARS)).toEqual({ kind: "ready", applied: [], keptAs: null });
  expect(keptFiles()).toEqual([]);
});

test("a store with jars in it is kept as it was, and then gets what is pending", async () => {
  await migrated(JARS);
  inStore((store) => store.exec("INSERT INTO jars VALUES ('j', 3)"));
  const result = await migrated(JARS, COLOURS);
  expect(result).toMatchObject({ kind: "ready", applied: ["2_colours"] });
  expect(all("SELECT * FROM jars")).toEqual([{ id: "j", units: 3, colour: "brown" }]);
  const kept = keptFiles();
  expect(kept).toEqual([expect.stringMatching(/^stillroom-kept-\d{4}-\d\d-\d\dT\d{6}\.db$/)]);
  expect(result.kind === "ready" && result.keptAs).toBe(path.join(folder(), kept[0] ?? ""));
  expect(all("SELECT * FROM jars", path.join(folder(), kept[0] ?? ""))).toEqual([{ id: "j", units: 3 }]);
});

test("a table that is rebuilt keeps its rows and those that name them", async () => {
  await migrated(JARS);
  inStore((store) => store.exec("INSERT INTO jars VALUES ('j', 3); INSERT INTO lids VALUES ('j')"));
  const rebuilt = step(
    "2_rebuilt",
    `CREATE TABLE new_jars (id TEXT PRIMARY KEY, units INTEGER NOT NULL CHECK (units >= 0));
     INSERT INTO new_jars SELECT * FROM jars; DROP TABLE jars; ALTER TABLE new_jars RENAME TO jars;`,
  );
  expect(await migrated(JARS, rebuilt)).toMatchObject({ kind: "ready" });
  expect(all("SELECT * FROM lids JOIN jars ON jars.id = lids.jar")).toEqual([{ jar: "j", id: "j", units: 3 }]);
});

test("a migration that fails half-way leaves nothing of itself, and the store can be used", async () => {
  await migrated(JARS);
  const failing = step("2_failing", "ALTER TABLE jars ADD colour TEXT; INSERT INTO nowhere VALUES (1);");
  await expect(migrated(JARS, failing)).rejects.toThrow(
    "migration 2_failing failed and nothing was changed: no such table: nowhere",
  );
  expect(all("SELECT name FROM pragma_table_info('jars')")).toEqual([{ name: "id" }, { name: "units" }]);
  expect(all("SELECT migration_name FROM _prisma_migrations")).toEqual([{ migration_name: "1_jars" }]);
  expect(await migrated(JARS, COLOURS)).toMatchObject({ kind: "ready", applied: ["2_colours"] });
});

test("a migration that would leave a name without its record is undone", async () => {
  await migrated(JARS);
  inStore((store) => store.exec("INSERT INTO jars VALUES ('j', 3); INSERT INTO lids VALUES ('j')"));
  await expect(migrated(JARS, step("2_breaking", "DELETE FROM jars"))).rejects.toThrow("1 rows would name something");
  expect(all("SELECT id FROM jars")).toEqual([{ id: "j" }]);
});

test("a migration that was edited after it was applied is refused, and so is a newer history", async () => {
  await migrated(JARS, COLOURS);
  const before = readFileSync(file());
  expect(await migrated({ ...JARS, checksum: "another" }, COLOURS)).toEqual({
    kind: "refused",
    reason: "its migration 1_jars was edited after it was applied; restore that file",
  });
  expect(await migrated(JARS)).toEqual({
    kind: "refused",
    reason: "a newer version of Stillroom has used it (2_colours); start that version",
  });
  expect(readFileSync(file()).equals(before)).toBe(true);
});

test.each([
  { which: "of another program", sql: "CREATE TABLE songs (title TEXT)" },
  {
    which: "that another program keeps with the same tool",
    sql: `CREATE TABLE songs (title TEXT);
      CREATE TABLE "_prisma_migrations" (id TEXT, checksum TEXT, finished_at DATETIME, migration_name TEXT,
        logs TEXT, rolled_back_at DATETIME, started_at DATETIME, applied_steps_count INTEGER);
      INSERT INTO "_prisma_migrations" VALUES ('a', 'b', 1, '1_songs', NULL, NULL, 1, 1)`,
  },
])("a database $which is refused, and not a byte of it changes", async ({ sql }) => {
  inStore((store) => store.exec(sql));
  const before = bytesOf(file());
  await expect(openStore(file())).rejects.toThrow(/another program/);
  expect(bytesOf(file())).toEqual(before);
});

test("two programs that start at once with an empty store both find it ready, and it is migrated once", async () => {
  const start = () => runChild("tests/helpers/store-opening.ts", [], { STILLROOM_STORE: file() });
  const ended = await Promise.all([start(), start(), start()]);
  expect(ended.map(({ code, err }) => ({ code, err }))).toEqual(ended.map(() => ({ code: 0, err: "" })));
  const names = migrationFiles(migrationsFolder()).map(({ name }) => ({ migration_name: name }));
  expect(all("SELECT migration_name FROM _prisma_migrations ORDER BY 1")).toEqual(names);
});

test("a file that is no store is told in a sentence, and may be asked for again", async () => {
  writeFileSync(file(), "a shopping list, long enough to be looked at as a database would be".repeat(20));
  await expect(openStore(file())).rejects.toThrow(
    /^The store .+ cannot be opened: file is not a database\. STILLROOM_STORE/,
  );
  await expect(openStore(file())).rejects.toThrow("cannot be opened");
});

test("a folder that cannot be made is told, and nothing waits for it", async () => {
  writeFileSync(file(), "a file where a folder should be");
  await expect(openStore(path.join(file(), "inside", "stillroom.db"))).rejects.toThrow("cannot be opened");
});

test("a folder is no store", async () => {
  await expect(openStore(folder())).rejects.toThrow("cannot be opened");
});

test("a store is made with the folders above it", async () => {
  const deep = path.join(folder(), "a", "b", "stillroom.db");
  const { migration } = await openStore(deep);
  await closeStore(deep);
  expect(migration.applied).toEqual(migrationFiles(migrationsFolder()).map(({ name }) => name));
  expect(existsSync(deep)).toBe(true);
});
