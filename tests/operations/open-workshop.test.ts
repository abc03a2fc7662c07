import { copyFileSync, readdirSync, readFileSync, writeFileSync } from "node:fs";
import path from "node:path";
import { describe, expect, test } from "vitest";
import { emptyWorkshopFile } from "@/lib/edge/empty-workshop";
import { readWorkshopFile, writeWorkshopFile } from "@/lib/edge/workshop-file";
import { openFirstWorkshop, openWorkshop } from "@/lib/operations/open-workshop";
import { emptyDesk } from "@/lib/domain/desk";
import { readBooks, readBooksFrom, readWorkshop, readWorkshopFrom } from "@/lib/store/books";
import { db } from "@/lib/store/client";
import { closeStore } from "@/lib/store/open-store";
import { runChild, startChild } from "../helpers/child";
import { day } from "../helpers/notation";
import { richBooks, keepBooks } from "../helpers/store-desk";
import { storeForEachTest } from "../helpers/store-folder";
import { soundness } from "../helpers/store-soundness";
import { numberedWorkshop, numberOf, richWorkshop } from "../helpers/store-workshop";

const { file, folder } = storeForEachTest();
const keptFiles = () => readdirSync(folder()).filter((name) => name.includes("-kept-"));

test("the first workshop replaces nothing: nothing is kept", async () => {
  expect(await openWorkshop(richWorkshop())).toEqual({ kind: "opened", keptAs: null });
  expect(await readWorkshop()).toStrictEqual(richWorkshop());
  expect(keptFiles()).toEqual([]);
});

test("the next one replaces it, and the old store is kept under a name of its own, whole", async () => {
  await openWorkshop(richWorkshop());
  const second = await openWorkshop(numberedWorkshop(2));
  const third = await openWorkshop(numberedWorkshop(3));
  expect(await readWorkshop()).toStrictEqual(numberedWorkshop(3));
  expect(keptFiles()).toHaveLength(2);
  for (const [opened, held] of [
    [second, richWorkshop()],
    [third, numberedWorkshop(2)],
  ] as const) {
    expect(opened.keptAs).toMatch(/stillroom-kept-\d{4}-\d\d-\d\dT\d{6}(-2)?\.db$/);
    expect(await readWorkshopFrom(opened.keptAs ?? "")).toStrictEqual(held);
    await closeStore(opened.keptAs ?? "");
  }
});

test("[BOOK-1] a workshop that is opened begins with an empty desk, and what lay on the desk is kept with the old one", async () => {
  await openWorkshop(richWorkshop());
  await keepBooks(richBooks());
  const { keptAs } = await openWorkshop(richWorkshop());
  expect(await readBooks()).toStrictEqual({ workshop: richWorkshop(), desk: emptyDesk });
  expect(await readBooksFrom(keptAs ?? "")).toStrictEqual(richBooks());
  await closeStore(keptAs ?? "");
});

test("an empty workshop has its name, its currency and empty lists", async () => {
  const inFile = readWorkshopFile(emptyWorkshopFile({ name: "My kitchen", currency: "KWD" }), day("2026-11-25"));
  if (inFile.kind === "refused") throw new Error(inFile.faults.join("\n"));
  await openWorkshop(inFile.workshop);
  const workshop = await readWorkshop();
  expect(workshop?.settings).toMatchObject({ name: "My kitchen", currency: "KWD", horizonDays: 56, labourPerHour: 0n });
  expect(
    Object.values(workshop ?? {})
      .filter(Array.isArray)
      .flat(),
  ).toEqual([]);
});

test("a first workshop is opened where there is none, and one that is open stays", async () => {
  expect(await openFirstWorkshop(numberedWorkshop(1))).toEqual({ kind: "opened", keptAs: null });
  expect(await openFirstWorkshop(numberedWorkshop(2))).toEqual({ kind: "one is open" });
  expect(await readWorkshop()).toStrictEqual(numberedWorkshop(1));
});

test("[FILE-4] the demo is in the store as it is in its file", async () => {
  const inFile = readWorkshopFile(readFileSync("seed/demo-workshop.json"), day("2026-11-25"));
  if (inFile.kind === "refused") throw new Error(inFile.faults.join("\n"));
  await openWorkshop(inFile.workshop);
  const inStore = await readWorkshop();
  expect(inStore).toStrictEqual(inFile.workshop);
  expect(inStore && writeWorkshopFile(inStore)).toBe(writeWorkshopFile(inFile.workshop));
});

test("a rule that forbids deleting what was written does not stand in the way of another workshop", async () => {
  await openWorkshop(numberedWorkshop(1));
  await db().$executeRawUnsafe(
    "CREATE TRIGGER lots_stay BEFORE DELETE ON lots BEGIN SELECT RAISE(ABORT, 'lots stay'); END",
  );
  await expect(db().$executeRawUnsafe("DELETE FROM lots")).rejects.toThrow("lots stay");
  await openWorkshop(numberedWorkshop(2));
  expect(await readWorkshop()).toStrictEqual(numberedWorkshop(2));
});

describe("beside a running server", () => {
  test("whoever reads while workshops are opened sees one of them whole, never a mixture", async () => {
    await openWorkshop(numberedWorkshop(0));
    let seen = 0;
    const opening = (async () => {
      for (let number = 1; number <= 8; number += 1) await openWorkshop(numberedWorkshop(number));
    })();
    const done = { yet: false };
    void opening.then(() => (done.yet = true));
    while (!done.yet) {
      const workshop = await readWorkshop();
      expect(workshop && numberOf(workshop)).not.toBeNull();
      seen += 1;
    }
    await opening;
    expect(seen).toBeGreaterThan(3);
    expect(await readWorkshop()).toStrictEqual(numberedWorkshop(8));
  });

  test("a workshop that another process opens is seen at once, and can be written to", async () => {
    await openWorkshop(numberedWorkshop(1));
    expect((await readWorkshop())?.settings.name).toBe("Workshop 1");
    const other = await runChild("tests/helpers/store-opening-rich.ts", [], { STILLROOM_STORE: file() });
    expect(other).toEqual({ code: 0, out: "", err: "" });
    expect(await readWorkshop()).toStrictEqual(richWorkshop());
    await db().settings.update({ where: { id: 1 }, data: { name: "Renamed" } });
    expect((await readWorkshop())?.settings.name).toBe("Renamed");
  });
});

test("what a killed copy left is taken away with the next one", async () => {
  await openWorkshop(richWorkshop());
  writeFileSync(path.join(folder(), "stillroom-kept-2026-11-25T121530.db.unfinished"), "half");
  await openWorkshop(richWorkshop());
  expect(keptFiles()).toEqual([expect.stringMatching(/\d\.db$/)]);
});

test("killed at any instant while it opens one workshop after another, it leaves one of them whole", async () => {
  const found: (number | null)[] = [];
  for (let round = 0; round < 10; round += 1) {
    const store = path.join(folder(), `round-${String(round)}.db`);
    copyFileSync(file(), store);
    const printed = await killedAfter(store, round * 7);
    const workshop = await readWorkshopFrom(store);
    await closeStore(store);
    const number = workshop && numberOf(workshop);
    // What it told of is there; the one after it may be.
    expect([printed, printed + 1]).toContain(number);
    expect(soundness(store)).toEqual(["ok"]);
    found.push(number);
  }
  expect(found).toHaveLength(10);
});

/** Starts the opener, lets it open one workshop, waits and kills it. The last number that it told of. */
function killedAfter(store: string, milliseconds: number): Promise<number> {
  const child = startChild("tests/helpers/store-opener.ts", [], { STILLROOM_STORE: store });
  let told = "";
  return new Promise((resolve, reject) => {
    child.stderr?.on("data", (text: Buffer) => {
      reject(new Error(text.toString()));
    });
    child.stdout?.on("data", (text: Buffer) => {
      if (told === "") setTimeout(() => child.kill("SIGKILL"), milliseconds);
      told += text.toString();
    });
    child.once("close", () => {
      resolve(Number(told.trim().split("\n").at(-1)));
    });
  });
}
