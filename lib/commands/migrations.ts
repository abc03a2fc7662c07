/**
 * `npm run db:new -- name` writes the migration that takes the history to prisma/schema.prisma; `npm run db:check`
 * fails where the two differ. The history is replayed in memory by Prisma's schema engine as WebAssembly: nothing is
 * downloaded and no store is opened. CHECKs, triggers and partial indexes are invisible to it: they are written by
 * hand, and a table that it rebuilds loses them, which tests/store/never.test.ts notices.
 */
import { mkdirSync, readFileSync, writeFileSync } from "node:fs";
import { createRequire } from "node:module";
import path from "node:path";
import { PrismaBetterSqlite3 } from "@prisma/adapter-better-sqlite3";
import { bindMigrationAwareSqlAdapterFactory } from "@prisma/driver-adapter-utils";
import * as engineBindings from "@prisma/schema-engine-wasm/schema_engine_bg";
import { migrationFiles, migrationsFolder } from "@/lib/store/migration-files";

const ENGINE = "@prisma/schema-engine-wasm/schema_engine_bg";
/** The engine's exit code where there is a difference. */
const DIFFERENT = 2;

/**
 * Two things the engine asks of the driver that it refuses. A whole migration comes as one statement: without
 * arguments it is run as a script. And it asks for an index by name in double quotes, which are for columns.
 */
class ShadowStores extends PrismaBetterSqlite3 {
  override async connectToShadowDb() {
    const adapter = await super.connectToShadowDb();
    const executeOne = adapter.executeRaw.bind(adapter);
    adapter.executeRaw = async (statement) => {
      if (statement.args.length > 0) return executeOne(statement);
      await adapter.executeScript(statement.sql);
      return 0;
    };
    const ask = adapter.queryRaw.bind(adapter);
    adapter.queryRaw = (question) =>
      ask({ ...question, sql: question.sql.replace(/(FROM sqlite_master .* name = )"([^"']+)"/, "$1'$2'") });
    return adapter;
  }
}

let engineIsPutTogether = false;

/**
 * The package would have its bundler load the module; here it is put together by hand, once: its bindings keep a view
 * of the memory of the first, and a second module would be read through it.
 */
function putEngineTogether(): void {
  if (engineIsPutTogether) return;
  engineIsPutTogether = true;
  const file = createRequire(import.meta.url)
    .resolve(ENGINE)
    .replace(/\.js$/, ".wasm");
  const instance = new WebAssembly.Instance(new WebAssembly.Module(readFileSync(file)), {
    "./schema_engine_bg.js": engineBindings as unknown as WebAssembly.ModuleImports,
  });
  const bindings = engineBindings as unknown as { __wbg_set_wasm: (exports: WebAssembly.Exports) => void };
  bindings.__wbg_set_wasm(instance.exports);
  (instance.exports.__wbindgen_start as (() => void) | undefined)?.();
}

function startEngine(schemaFile: string, schema: string) {
  putEngineTogether();
  return engineBindings.SchemaEngine.new(
    { datamodels: [[schemaFile, schema]] },
    () => undefined,
    bindMigrationAwareSqlAdapterFactory(new ShadowStores({ url: ":memory:" })),
  );
}

/** The SQL that takes the migrations of the folder to the schema, or null where they agree. */
export async function sqlToSchema(schemaFile: string, folder: string): Promise<string | null> {
  const schema = readFileSync(schemaFile, "utf8");
  const engine = await startEngine(schemaFile, schema);
  const migrationDirectories = migrationFiles(folder).map(({ name, sql }) => ({
    path: name,
    migrationFile: { path: "migration.sql", content: { tag: "ok" as const, value: sql } },
  }));
  const difference = await engine.diff({
    from: {
      tag: "migrations",
      baseDir: folder,
      lockfile: { path: "migration_lock.toml", content: 'provider = "sqlite"\n' },
      shadowDbInitScript: "",
      migrationDirectories,
    },
    to: { tag: "schemaDatamodel", files: [{ path: schemaFile, content: schema }] },
    script: true,
    exitCode: true,
    filters: { externalTables: [], externalEnums: [] },
  });
  return difference.exitCode === DIFFERENT ? (difference.stdout ?? "") : null;
}

function write(folder: string, name: string, sql: string): string {
  const stamp = new Date().toISOString().replace(/\D/g, "").slice(0, 14);
  const file = path.join(folder, `${stamp}_${name}`, "migration.sql");
  mkdirSync(path.dirname(file), { recursive: true });
  writeFileSync(file, sql);
  return file;
}

async function run(deed: string | undefined, name: string | undefined): Promise<void> {
  if (deed === "new" && !/^[a-z0-9_]+$/.test(name ?? "")) {
    throw new Error("Name the migration with small letters, digits and _: npm run db:new -- what_changes");
  }
  const sql = await sqlToSchema(path.resolve("prisma/schema.prisma"), migrationsFolder());
  if (sql === null) {
    process.stdout.write("The migrations and prisma/schema.prisma agree.\n");
  } else if (deed === "new" && name !== undefined) {
    const file = write(migrationsFolder(), name, sql);
    process.stdout.write(
      `Written: ${path.relative(process.cwd(), file)}. Read it, and add its CHECKs, before it is committed.\n`,
    );
  } else {
    throw new Error(`prisma/schema.prisma is ahead of the migrations (npm run db:new -- name writes one):\n${sql}`);
  }
}

if (process.argv[1] === import.meta.filename) {
  run(process.argv[2], process.argv[3]).catch((fault: unknown) => {
    process.stderr.write(`${fault instanceof Error ? fault.message : String(fault)}\n`);
    process.exitCode = 1;
  });
}
