/**
 * One server for all the journeys of a worker that change what they find. To start one and to have it read its code costs
 * more than most journeys; so the store under it is put back, as `npm run load` does beside an app that runs: the
 * server reads anew whatever another process has written. What it knows of earlier journeys must then make no difference.
 */
import { readdirSync, rmSync } from "node:fs";
import { basename, dirname, join } from "node:path";
import Database from "better-sqlite3";
import { filledStore, type Opened, type RunningApp, serveStore } from "./server";

export interface KeptServer {
  /** The app with this in its store and nothing else, whatever the journey before has left there. */
  readonly begin: (opened: Opened) => Promise<RunningApp>;
  readonly stop: () => Promise<void>;
}

export function keptServer(): KeptServer {
  let app: RunningApp | undefined;
  return {
    begin: async (opened) => {
      if (app === undefined) return (app = await serveStore(opened));
      // What the last journey sent and did not wait for is answered before this is.
      await fetch(`${app.url}/week`).then((answer) => answer.text());
      await putBack(filledStore(opened), app.store);
      return app;
    },
    stop: async () => {
      await app?.stop();
    },
  };
}

/** Makes an open store hold what a filled one does, in one transaction, and takes away the copies that lie beside it. */
async function putBack(filled: string, store: string): Promise<void> {
  const source = new Database(filled, { readonly: true, fileMustExist: true });
  await source.backup(store);
  source.close();
  for (const name of readdirSync(dirname(store)))
    if (!name.startsWith(basename(store))) rmSync(join(dirname(store), name), { recursive: true });
}
