/** Prisma's clients of the store: the one that writes and the one that only reads. */
import { PrismaClient } from "./generated/client";
import type { Connection } from "./connection";
import { openStore, type Store } from "./open-store";
import { storeFile } from "./store-file";

interface Clients {
  readonly writing: PrismaClient;
  readonly reading: PrismaClient;
}

const thisProcess = globalThis as typeof globalThis & { stillroomClients?: Map<string, Clients> };

/**
 * The one writer of this process. Its transactions and statements have their turns, one after another; a transaction
 * uses the client that it is given, never this one, which would wait for the transaction to end.
 */
export const db = (): PrismaClient => clients().writing;

/** Reads the last committed state, also while a transaction is open. */
export const dbForReading = (): PrismaClient => clients().reading;

function clients(): Clients {
  const byFile = (thisProcess.stillroomClients ??= new Map<string, Clients>());
  const file = storeFile();
  const known = byFile.get(file);
  if (known) return known;
  const made = {
    writing: clientOf(
      () => openStore(file),
      (store) => store.writer,
    ),
    reading: clientOf(
      () => openStore(file),
      (store) => store.reader,
    ),
  };
  byFile.set(file, made);
  return made;
}

function clientOf(store: () => Promise<Store>, side: (store: Store) => Connection): PrismaClient {
  return new PrismaClient({
    adapter: {
      provider: "sqlite",
      adapterName: "stillroom-queued-sqlite",
      connect: async () => {
        const { adapter } = side(await store());
        // The connection outlives the client: the store closes it.
        return Object.create(adapter, { dispose: { value: () => Promise.resolve() } }) as typeof adapter;
      },
    },
  });
}
