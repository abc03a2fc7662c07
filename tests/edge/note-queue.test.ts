/** What waits on a device, batch by batch, as the browser keeps it. */
import { afterEach, beforeEach, expect, test, vi } from "vitest";

/** The browser's storage: its items are its own keys, as Object.keys sees them. */
function storageOf(): Storage {
  const storage = {} as Record<string, string>;
  const deeds = {
    getItem: (key: string): string | null => storage[key] ?? null,
    setItem: (key: string, value: string): void => {
      storage[key] = value;
    },
    removeItem: (key: string): void => {
      Reflect.deleteProperty(storage, key);
    },
  };
  for (const [name, value] of Object.entries(deeds)) Object.defineProperty(storage, name, { value, enumerable: false });
  return storage as unknown as Storage;
}

const sent: string[] = [];
beforeEach(() => {
  sent.length = 0;
  vi.stubGlobal("localStorage", storageOf());
  vi.stubGlobal("fetch", (address: string) => {
    sent.push(address);
    return Promise.reject(new TypeError("no network"));
  });
});
afterEach(() => {
  vi.unstubAllGlobals();
  vi.resetModules();
});

/** The queues as a page that was just loaded has them. */
const freshPage = async () => {
  vi.resetModules();
  return (await import("@/app/bench/_parts/note-queue")).noteQueue;
};
const keysOf = async (batch: string): Promise<readonly string[]> =>
  (await freshPage())(batch)
    .state()
    .notes.map(({ key }) => key);

test.each([
  ["r1", "r1 2"],
  ["r", "r n1"],
  ["a/b", "a"],
  ["%20", " "],
])("[BENCH-5] batches %j and %j keep what waits apart, over a reload too", async (one, other) => {
  const noteQueue = await freshPage();
  noteQueue(one).add({ key: "n1", kind: "seen" });
  noteQueue(other).add({ key: "n2", kind: "seen" });
  expect(await keysOf(one)).toEqual(["n1"]);
  expect(await keysOf(other)).toEqual(["n2"]);
  (await freshPage())(one).drop(["n1"]);
  expect(await keysOf(one)).toEqual([]);
  expect(await keysOf(other)).toEqual(["n2"]);
});

test("[BENCH-5] each is sent to its own batch, and stays where nobody answers", async () => {
  const noteQueue = await freshPage();
  noteQueue("r1").add({ key: "n1", kind: "seen" });
  noteQueue("r1 2").add({ key: "n2", kind: "seen" });
  await vi.waitFor(() => {
    expect(noteQueue("r1").state().isOffline && noteQueue("r1 2").state().isOffline).toBe(true);
  });
  expect(sent).toEqual(["/bench/~r1/notes", "/bench/~r1%202/notes"]);
  expect(await keysOf("r1")).toEqual(["n1"]);
});
