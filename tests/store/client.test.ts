import { beforeEach, describe, expect, test } from "vitest";
import { readWorkshop } from "@/lib/store/books";
import { db, dbForReading } from "@/lib/store/client";
import { openStore } from "@/lib/store/open-store";
import { replaceWorkshop } from "@/lib/store/replace-workshop";
import { runChild } from "../helpers/child";
import { material } from "../helpers/notation";
import { storeForEachTest } from "../helpers/store-folder";
import { addOne } from "../helpers/store-sums";
import { bareWorkshop } from "../helpers/store-workshop";

const { file } = storeForEachTest();

beforeEach(async () => {
  await replaceWorkshop(file(), bareWorkshop("Bench", { materials: [material("m")] }));
});

const safetyDays = async (): Promise<number> =>
  (await dbForReading().material.findUniqueOrThrow({ where: { id: "m" } })).safetyDays;
const setting = async (name: string): Promise<unknown> => {
  const [row] = await db().$queryRawUnsafe<Record<string, unknown>[]>(`PRAGMA ${name}`);
  return Object.values(row ?? {})[0];
};

describe("the writer", () => {
  test("writes through to the disk, ahead of the tables, and looks at every name", async () => {
    expect(await setting("journal_mode")).toBe("wal");
    expect(Number(await setting("synchronous"))).toBe(2); // FULL
    expect(Number(await setting("foreign_keys"))).toBe(1);
    expect(Number(await setting("busy_timeout"))).toBe(10_000);
  });

  test("keeps its settings after a transaction and after a workshop was opened", async () => {
    await addOne();
    expect(Number(await setting("synchronous"))).toBe(2);
    expect(Number(await setting("foreign_keys"))).toBe(1);
  });

  test("loses nothing of forty changes at once, each of which reads before it writes", async () => {
    await Promise.all(Array.from({ length: 40 }, addOne));
    expect(await safetyDays()).toBe(40);
  });

  test("loses nothing when another process changes the same store", async () => {
    const other = runChild("tests/helpers/store-adder.ts", ["40"], { STILLROOM_STORE: file() });
    let added = 0;
    const ended = { yet: false };
    void other.then(() => (ended.yet = true));
    // Until the other has ended, so that the two are surely at it together.
    while (!ended.yet) {
      await addOne();
      added += 1;
      // SQLite gives no one a turn: who asks without a pause can keep the other from ever getting in.
      await new Promise((resolve) => setTimeout(resolve, 5));
    }
    expect(await other).toEqual({ code: 0, out: "", err: "" });
    expect(await safetyDays()).toBe(40 + added);
  });

  test("a statement beside a transaction waits for it, and is not lost when that is rolled back", async () => {
    let hasWritten: () => void = () => undefined;
    const written = new Promise<void>((resolve) => (hasWritten = resolve));
    const failing = db().$transaction(async (books) => {
      await books.material.update({ where: { id: "m" }, data: { safetyDays: 5 } });
      hasWritten();
      await new Promise((resolve) => setTimeout(resolve, 50));
      throw new Error("think again");
    });
    const thoughtAgain = expect(failing).rejects.toThrow("think again");
    await written;
    const beside = await Promise.all([
      db().$queryRaw`SELECT "safetyDays" FROM materials`,
      db().$executeRaw`UPDATE materials SET position = 7`,
    ]);
    await thoughtAgain;
    expect(beside).toEqual([[{ safetyDays: 0 }], 1]);
    expect(await db().material.findUniqueOrThrow({ where: { id: "m" } })).toMatchObject({ safetyDays: 0, position: 7 });
  });

  test("a transaction that breaks a rule leaves nothing behind, and the next one has its turn", async () => {
    const breaking = db().$transaction(async (books) => {
      await books.material.update({ where: { id: "m" }, data: { safetyDays: 5 } });
      await books.material.update({ where: { id: "m" }, data: { safetyDays: -1 } });
    });
    await expect(breaking).rejects.toThrow("materials_safetyDays");
    await addOne();
    expect(await safetyDays()).toBe(1);
  });
});

describe("the reader", () => {
  test("sees the last committed state while a transaction is open, and does not wait for it", async () => {
    await db().$transaction(async (books) => {
      await books.material.update({ where: { id: "m" }, data: { safetyDays: 5 } });
      expect(await safetyDays()).toBe(0);
      expect((await readWorkshop())?.materials[0]?.safetyDays).toBe(0);
    });
    expect(await safetyDays()).toBe(5);
  });

  test("cannot write", async () => {
    await expect(dbForReading().material.update({ where: { id: "m" }, data: { safetyDays: 1 } })).rejects.toThrow(
      "readonly",
    );
  });
});

test("a store is opened once in a process, whoever asks, and again where STILLROOM_STORE names another", async () => {
  expect(await openStore(file())).toBe(await openStore(file()));
  expect(db()).toBe(db());
  const first = db();
  process.env.STILLROOM_STORE = `${file()}-other`;
  expect(db()).not.toBe(first);
});
