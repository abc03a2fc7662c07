/** Books that were read are not read again until somebody writes; what has not changed is then the very same. */
import path from "node:path";
import { beforeEach, expect, test } from "vitest";
import type { Books } from "@/lib/domain/desk";
import type { Workshop } from "@/lib/domain/workshop";
import { readBooks, readBooksFrom } from "@/lib/store/books";
import { changeBooks } from "@/lib/store/change-books";
import { db } from "@/lib/store/client";
import { closeStore } from "@/lib/store/open-store";
import { replaceWorkshop } from "@/lib/store/replace-workshop";
import { runChild } from "../helpers/child";
import { formula, material, product, supplier } from "../helpers/notation";
import { booksOf, openBooks, richBooks } from "../helpers/store-desk";
import { storeForEachTest } from "../helpers/store-folder";
import { bareWorkshop } from "../helpers/store-workshop";

const { file, folder } = storeForEachTest();
beforeEach(() => openBooks(richBooks()));

const stored = async (): Promise<Books> => {
  const books = await readBooks();
  if (books === null) throw new Error("the store holds no workshop");
  return books;
};
/** The lists, or parts of the desk, of which another came back. */
const anew = <Part extends object>(before: Part, after: Part): readonly string[] =>
  Object.keys(before).filter((part) => before[part as keyof Part] !== after[part as keyof Part]);

test("read twice, the books are the very same; after a change of one run, all but the runs are", async () => {
  const before = await stored();
  expect(await stored()).toBe(before);
  const withoutOne = (workshop: Workshop): Workshop => ({ ...workshop, runs: workshop.runs.slice(1) });
  await changeBooks((books) => ({
    kind: "keep",
    books: { ...books, workshop: withoutOne(books.workshop) },
    result: null,
  }));
  const after = await stored();
  expect(after).toStrictEqual({ desk: before.desk, workshop: withoutOne(before.workshop) });
  expect(anew(before.workshop, after.workshop)).toEqual(["runs"]);
  expect(anew(before.desk, after.desk)).toEqual([]);
});

test("what another process writes, and what is written past the books, is seen at once", async () => {
  const [materials, formulas, products] = [[material("m")], [formula("f", { m: "100" })], [product("p", "f")]];
  await openBooks(booksOf(bareWorkshop("Bench", { materials, formulas, products })));
  const before = await stored();
  await runChild("tests/helpers/store-changer.ts", ["other", "1"], { STILLROOM_STORE: file() });
  const between = await stored();
  expect(between.workshop.runs.length).toBe(before.workshop.runs.length + 1);
  await db().$executeRaw`UPDATE "materials" SET "name" = 'Renamed past the books' WHERE "position" = 0`;
  const after = await stored();
  expect(after.workshop.materials[0]?.name).toBe("Renamed past the books");
  expect(anew(between.workshop, after.workshop)).toEqual(["materials"]);
});

test("a change begins from what is there, whoever wrote last: this writer, another process, or nobody by the books", async () => {
  const renamed = (name: string) =>
    changeBooks<readonly string[]>(({ workshop, desk }) => {
      const settings = { ...workshop.settings, name };
      const found = [workshop.settings.name, workshop.suppliers[0]?.name ?? "", String(workshop.runs.length)];
      return { kind: "keep", books: { workshop: { ...workshop, settings }, desk }, result: found };
    });
  const [materials, formulas, products] = [[material("m")], [formula("f", { m: "100" })], [product("p", "f")]];
  await openBooks(booksOf(bareWorkshop("First", { materials, formulas, products, suppliers: [supplier("s")] })));
  expect(await renamed("Second")).toEqual(["First", "Supplier s", "0"]);
  expect(await renamed("Third")).toEqual(["Second", "Supplier s", "0"]);
  await runChild("tests/helpers/store-changer.ts", ["other", "1"], { STILLROOM_STORE: file() });
  expect(await renamed("Fourth")).toEqual(["Third", "Supplier s", "1"]);
  await db().$executeRaw`UPDATE "suppliers" SET "name" = 'Renamed past the books'`;
  expect(await renamed("Fifth")).toEqual(["Fourth", "Renamed past the books", "1"]);
  await expect(
    changeBooks(({ workshop, desk }) => ({
      kind: "keep",
      books: { workshop: { ...workshop, suppliers: [], settings: { ...workshop.settings, name: "" } }, desk },
      result: null,
    })),
  ).rejects.toThrow();
  expect(await renamed("Sixth")).toEqual(["Fifth", "Renamed past the books", "1"]);
});

test("two stores read by turns each give their own", async () => {
  const other = path.join(folder(), "other.db");
  await replaceWorkshop(other, bareWorkshop("Another"));
  for (let turn = 0; turn < 2; turn += 1) {
    expect((await readBooksFrom(other))?.workshop).toStrictEqual(bareWorkshop("Another"));
    expect(await stored()).toStrictEqual(richBooks());
  }
  await closeStore(other);
});
