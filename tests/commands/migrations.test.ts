import { cpSync, mkdirSync, readdirSync, readFileSync, writeFileSync } from "node:fs";
import path from "node:path";
import { beforeEach, expect, test } from "vitest";
import { sqlToSchema } from "@/lib/commands/migrations";
import { migrationsFolder } from "@/lib/store/migration-files";
import { runChild } from "../helpers/child";
import { folderForEachTest } from "../helpers/store-folder";

const folder = folderForEachTest();
const schema = () => path.join(folder(), "schema.prisma");
const history = () => path.join(folder(), "migrations");

beforeEach(() => {
  mkdirSync(history());
  cpSync("prisma/schema.prisma", schema());
  cpSync(migrationsFolder(), history(), { recursive: true });
});

const changeSchema = (from: string, to: string) => {
  const before = readFileSync(schema(), "utf8");
  expect(before).toContain(from);
  writeFileSync(schema(), before.replace(from, to));
};

test("the migrations make what prisma/schema.prisma says: npm run db:check", async () => {
  expect(await runChild("lib/commands/migrations.ts", ["check"])).toEqual({
    code: 0,
    out: "The migrations and prisma/schema.prisma agree.\n",
    err: "",
  });
});

test("a column that the schema has and the migrations have not is found, with the SQL that adds it", async () => {
  expect(await sqlToSchema(schema(), history())).toBeNull();
  changeSchema("safetyDays        Int", "safetyDays        Int\n  supplierCode      String?");
  expect(await sqlToSchema(schema(), history())).toContain('ALTER TABLE "materials" ADD COLUMN "supplierCode" TEXT');
});

test("a history without its first step is a whole schema behind", async () => {
  expect(readdirSync(migrationsFolder())).toContain("migration_lock.toml");
  expect(await sqlToSchema(schema(), path.join(folder(), "none"))).toContain('CREATE TABLE "settings"');
});

test("a name that would make no folder is refused before anything is written", async () => {
  const before = readdirSync(migrationsFolder());
  const ended = await runChild("lib/commands/migrations.ts", ["new", "../Oops"]);
  expect(ended).toMatchObject({ code: 1, out: "" });
  expect(ended.err).toContain("npm run db:new -- what_changes");
  expect(readdirSync(migrationsFolder())).toEqual(before);
});
