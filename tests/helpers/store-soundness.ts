/** What SQLite itself says of a store: that its pages hang together, and that every name names something. */
import { createHash } from "node:crypto";
import { existsSync, readFileSync } from "node:fs";
import Database from "better-sqlite3";

/** `["ok"]` where nothing is wrong. */
export function soundness(store: string): readonly unknown[] {
  const database = new Database(store, { readonly: true });
  const said = [
    ...(database.pragma("integrity_check") as object[]),
    ...(database.pragma("foreign_key_check") as object[]),
  ];
  database.close();
  return said.flatMap((row) => Object.values(row) as unknown[]);
}

/** A digest of every byte that a store keeps: the file, and the log beside it. */
export const bytesOf = (store: string): readonly (string | null)[] =>
  [store, `${store}-wal`].map((file) =>
    existsSync(file) ? createHash("sha256").update(readFileSync(file)).digest("hex") : null,
  );
