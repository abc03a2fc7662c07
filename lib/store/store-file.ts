import path from "node:path";

/**
 * Where the store is: STILLROOM_STORE, or data/stillroom.db in the folder that the program was started in. Absolute.
 * Asked for each time, so that a test or a command can point at another store.
 */
export function storeFile(): string {
  const chosen = process.env.STILLROOM_STORE;
  return path.resolve(
    /* turbopackIgnore: true */ process.cwd(),
    chosen === undefined || chosen === "" ? "data/stillroom.db" : chosen,
  );
}
