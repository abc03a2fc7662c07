import { copyFileSync } from "node:fs";
import path from "node:path";
import { setImmediate } from "node:timers/promises";
import { beforeEach, describe, expect, test } from "vitest";
import type { Books } from "@/lib/domain/desk";
import { readBooks, readBooksFrom } from "@/lib/store/books";
import { changeBooks } from "@/lib/store/change-books";
import { db } from "@/lib/store/client";
import { closeStore } from "@/lib/store/open-store";
import { runChild, startChild } from "../helpers/child";
import { formula, material, product } from "../helpers/notation";
import { booksOf, keepBooks, openBooks, richBooks } from "../helpers/store-desk";
import { storeForEachTest } from "../helpers/store-folder";
import { namesPlanned, planned } from "../helpers/store-planned";
import { bytesOf, soundness } from "../helpers/store-soundness";
import { bareWorkshop } from "../helpers/store-workshop";

const { file, folder } = storeForEachTest();

const bench = (): Books =>
  booksOf(
    bareWorkshop("Bench", {
      materials: [material("m")],
      formulas: [formula("f", { m: "100" })],
      products: [product("p", "f")],
    }),
  );
const stored = async (): Promise<Books> => {
  const books = await readBooks();
  if (books === null) throw new Error("the store holds no workshop");
  return books;
};

test("where no workshop was opened there is nothing to change, and nobody is asked", async () => {
  const asked = await changeBooks(() => {
    throw new Error("asked");
  });
  expect(asked).toEqual({ kind: "no workshop" });
  expect(await readBooks()).toBeNull();
});

describe("with a workshop open", () => {
  beforeEach(() => openBooks(bench()));

  test("[BOOK-1] every table can be changed, and what was decided is told", async () => {
    expect(await changeBooks(() => ({ kind: "keep", books: richBooks(), result: 42 }))).toBe(42);
    expect(await readBooks()).toStrictEqual(richBooks());
    // What was written at the bench stays (BENCH-4).
    const { workshop, desk } = bench();
    const emptied = { workshop, desk: { ...desk, batches: richBooks().desk.batches } };
    await keepBooks(emptied);
    expect(await readBooks()).toStrictEqual(emptied);
    await expect(keepBooks(bench())).rejects.toThrow("never_changed");
    expect(await readBooks()).toStrictEqual(emptied);
  });

  test("a refusal changes no byte, and neither does keeping the books as they are", async () => {
    await changeBooks(planned("one"));
    const before = bytesOf(file());
    expect(await changeBooks(() => ({ kind: "refuse", result: "no" }))).toBe("no");
    expect(await changeBooks((books) => ({ kind: "keep", books, result: "as it was" }))).toBe("as it was");
    const anew = await stored();
    expect(await changeBooks(() => ({ kind: "keep", books: anew, result: "the same" }))).toBe("the same");
    expect(bytesOf(file())).toEqual(before);
  });

  test("only the tables whose rows differ are written", async () => {
    await keepBooks(richBooks());
    await db().$executeRawUnsafe("CREATE TABLE written (name TEXT)");
    const tables = await db().$queryRaw<{ name: string }[]>`SELECT name FROM sqlite_master WHERE type = 'table'`;
    for (const { name } of tables.filter((each) => !/^_|^sqlite_|written/.test(each.name))) {
      await db().$executeRawUnsafe(
        `CREATE TRIGGER "log_${name}" BEFORE INSERT ON "${name}" BEGIN INSERT INTO written VALUES ('${name}'); END`,
      );
    }
    await changeBooks(({ workshop, desk }) => ({
      kind: "keep",
      result: null,
      books: { workshop: { ...workshop, lots: workshop.lots.slice(1) }, desk: { ...desk, benchMinutes: null } },
    }));
    expect(await db().$queryRaw`SELECT DISTINCT name FROM written`).toEqual([{ name: "lots" }]);
    expect((await stored()).desk).toStrictEqual({ ...richBooks().desk, benchMinutes: null });
  });

  test("what the tables refuse leaves no trace, and the next change has its turn", async () => {
    const twice = (books: Books): Books => ({
      ...books,
      workshop: { ...books.workshop, materials: [...books.workshop.materials, material("n"), material("n")] },
    });
    await expect(changeBooks((books) => ({ kind: "keep", books: twice(books), result: 0 }))).rejects.toThrow(
      "UNIQUE constraint failed: materials.id",
    );
    expect(await stored()).toStrictEqual(bench());
    await changeBooks(planned("next"));
    expect(namesPlanned(await stored())).toEqual(["next"]);
  });

  test("[BOOK-4] a record that something still names cannot go, whoever decides so", async () => {
    const without = { ...bench(), workshop: { ...bench().workshop, formulas: [] } };
    await expect(keepBooks(without)).rejects.toThrow("1 rows would name something that is not there");
    const retired = booksOf(bench().workshop, { retired: { ...bench().desk.retired, offers: ["gone"] } });
    await expect(keepBooks(retired)).rejects.toThrow("1 rows would name something that is not there");
    expect(await stored()).toStrictEqual(bench());
  });

  test("[CLOSE-1] a run goes from the plan to those made, and back, but is never both", async () => {
    await changeBooks(planned("one"));
    const { workshop, desk } = await stored();
    const swapped = {
      workshop: { ...workshop, runs: desk.closedRuns.map(({ run }) => run) },
      desk: {
        ...desk,
        closedRuns: desk.closedRuns.map((closed, at) => ({ ...closed, run: workshop.runs[at] ?? closed.run })),
      },
    };
    await keepBooks(swapped);
    expect(await stored()).toStrictEqual(swapped);
    const both = { workshop, desk: swapped.desk };
    await expect(keepBooks(both)).rejects.toThrow("runs_planned_or_made");
  });

  test("a decision that throws changes nothing", async () => {
    const thinking = changeBooks(() => {
      throw new Error("think again");
    });
    await expect(thinking).rejects.toThrow("think again");
    expect(await stored()).toStrictEqual(bench());
  });

  test("of twenty changes at once, each of which adds to what it finds, none is lost", async () => {
    const names = Array.from({ length: 20 }, (_, index) => `r${String(index)}`);
    await Promise.all(names.map((name) => changeBooks(planned(name))));
    expect(namesPlanned(await stored())).toEqual(names);
  });

  test("nothing is lost between two processes, and whoever reads meanwhile sees each change whole", async () => {
    const other = runChild("tests/helpers/store-changer.ts", ["other", "25"], { STILLROOM_STORE: file() });
    const ended = { yet: false };
    void other.then(() => (ended.yet = true));
    const own: string[] = [];
    const seen = new Set<string>();
    while (!ended.yet) {
      const name = `own${String(own.length)}`;
      await changeBooks(planned(name));
      own.push(name);
      seen.add(String(namesPlanned(await stored())));
      // SQLite is asked in one go; without a pause nobody would hear that the other has ended.
      await setImmediate();
    }
    expect(await other).toMatchObject({ code: 0, err: "" });
    const names = namesPlanned(await stored());
    expect(new Set(names)).toEqual(new Set([...own, ...Array.from({ length: 25 }, (_, at) => `other${String(at)}`)]));
    expect(names).toHaveLength(own.length + 25);
    expect(seen).not.toContain("torn");
    expect(own.length).toBeGreaterThan(1);
  });

  test("a reader sees the last committed books while a change is under way", async () => {
    await db().$transaction(async (tables) => {
      await tables.benchWeek.create({
        data: { id: 1, monday: 1, tuesday: 0, wednesday: 0, thursday: 0, friday: 0, saturday: 0, sunday: 0 },
      });
      expect((await stored()).desk.benchMinutes).toBeNull();
    });
    expect((await stored()).desk.benchMinutes).toEqual([1, 0, 0, 0, 0, 0, 0]);
  });

  test("killed at any instant while it makes one change after another, it leaves each of them whole or not at all", async () => {
    await closeStore(file());
    for (let round = 0; round < 8; round += 1) {
      const store = path.join(folder(), `round-${String(round)}.db`);
      copyFileSync(file(), store);
      const told = await killedAfter(store, round * 3);
      const names = await namesIn(store);
      // What it told of is there; the one after it may be.
      expect([told, told + 1]).toContain(names.length);
      expect(names).toEqual(names.map((_, at) => `k${String(at)}`));
      expect(soundness(store)).toEqual(["ok"]);
    }
  });
});

/** Starts the changer, lets it make one change, waits and kills it. How many changes it told of. */
function killedAfter(store: string, milliseconds: number): Promise<number> {
  const child = startChild("tests/helpers/store-changer.ts", ["k"], { STILLROOM_STORE: store });
  let told = "";
  return new Promise((resolve, reject) => {
    child.stderr?.on("data", (text: Buffer) => reject(new Error(text.toString())));
    child.stdout?.on("data", (text: Buffer) => {
      if (told === "") setTimeout(() => child.kill("SIGKILL"), milliseconds);
      told += text.toString();
    });
    child.once("close", () => resolve(told.trim().split("\n").length));
  });
}

async function namesIn(store: string): Promise<readonly string[]> {
  const books = await readBooksFrom(store);
  await closeStore(store);
  const names = books && namesPlanned(books);
  if (names === null || names === "torn") throw new Error(`${store} holds half of a change`);
  return names;
}
