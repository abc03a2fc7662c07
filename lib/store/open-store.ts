/**
 * The open stores of this process, one pair of connections for each file. They are kept on globalThis, so that a
 * hot reload or a second bundle of this module finds them: a second writer in one process would block it.
 */
import { existsSync, mkdirSync } from "node:fs";
import path from "node:path";
import { type Connection, openReader, openWriter } from "./connection";
import { type Migration, migrate } from "./migrate";
import { migrationFiles, migrationsFolder } from "./migration-files";
import { StoreUnusable } from "./store-unusable";

export interface Store {
  readonly file: string;
  readonly writer: Connection;
  readonly reader: Connection;
  /** What opening it has changed. */
  readonly migration: Extract<Migration, { kind: "ready" }>;
}

const thisProcess = globalThis as typeof globalThis & { stillroomStores?: Map<string, Promise<Store>> };
const openStores = (): Map<string, Promise<Store>> => (thisProcess.stillroomStores ??= new Map());

/**
 * The store of this file, opened and brought up to date the first time it is asked for.
 * @throws StoreUnusable where the file is no store, or one that this version cannot read
 */
export function openStore(file: string): Promise<Store> {
  const stores = openStores();
  const open = stores.get(file);
  if (open) return open;
  const opening = openAfresh(file);
  stores.set(file, opening);
  // What failed once may work after the person has done something about it.
  opening.catch(() => stores.delete(file));
  return opening;
}

/** Closes the store of this file, if it is open. */
export async function closeStore(file: string): Promise<void> {
  const open = openStores().get(file);
  if (!open) return;
  openStores().delete(file);
  const store = await open;
  await store.reader.close();
  await store.writer.close();
}

async function openAfresh(file: string): Promise<Store> {
  const writer = await writerOf(file);
  try {
    const migration = await migrate(writer, file, migrationFiles(migrationsFolder()));
    if (migration.kind === "refused") throw new StoreUnusable(`The store ${file} cannot be used: ${migration.reason}.`);
    return { file, writer, reader: await openReader(file), migration };
  } catch (fault) {
    await writer.close();
    throw fault;
  }
}

async function writerOf(file: string): Promise<Connection> {
  try {
    makeFolder(path.dirname(file));
    return await openWriter(file);
  } catch (fault) {
    const said = fault instanceof Error ? fault.message.replace(/^The store cannot be used: |\.$/g, "") : String(fault);
    throw new StoreUnusable(`The store ${file} cannot be opened: ${said}. STILLROOM_STORE chooses another file.`, {
      cause: fault,
    });
  }
}

/** Makes a folder and those above it. Node's own way of doing so never ends where the system refuses, as in /proc. */
function makeFolder(folder: string): void {
  if (existsSync(folder)) return;
  makeFolder(path.dirname(folder));
  mkdirSync(folder);
}
