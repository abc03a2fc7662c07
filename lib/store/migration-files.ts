import { createHash } from "node:crypto";
import { existsSync, readdirSync, readFileSync } from "node:fs";
import path from "node:path";

/** One step of the schema's history, as it lies in prisma/migrations. */
export interface MigrationFile {
  readonly name: string;
  readonly sql: string;
  /** SHA-256 of the file, in hexadecimal: what Prisma's own tool records. */
  readonly checksum: string;
}

export const migrationsFolder = (): string =>
  path.join(/* turbopackIgnore: true */ process.cwd(), "prisma", "migrations");

/** The migrations of a folder in the order in which they are applied: by name, which begins with a time stamp. */
export function migrationFiles(folder: string): readonly MigrationFile[] {
  if (!existsSync(folder)) return [];
  return readdirSync(folder)
    .sort()
    .map((name) => ({ name, file: path.join(folder, name, "migration.sql") }))
    .filter(({ file }) => existsSync(file))
    .map(({ name, file }) => {
      const sql = readFileSync(file, "utf8");
      return { name, sql, checksum: createHash("sha256").update(sql).digest("hex") };
    });
}
