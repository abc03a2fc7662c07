import path from "node:path";
import { expect, test } from "vitest";
import { emptyDesk } from "@/lib/domain/desk";
import { readBooks, readBooksFrom, readWorkshop, textsOfBooks } from "@/lib/store/books";
import { openWriter } from "@/lib/store/connection";
import { migrate } from "@/lib/store/migrate";
import { migrationFiles, migrationsFolder } from "@/lib/store/migration-files";
import { closeStore } from "@/lib/store/open-store";
import { TABLES, type TableName } from "@/lib/store/tables";
import { replaceWorkshop } from "@/lib/store/replace-workshop";
import { keepBooks, richBooks } from "../helpers/store-desk";
import { storeForEachTest } from "../helpers/store-folder";
import { bareWorkshop, richWorkshop } from "../helpers/store-workshop";

const { file, folder } = storeForEachTest();

test("a store in which no workshop was opened has none", async () => {
  expect(await readWorkshop()).toBeNull();
  expect(await readBooks()).toBeNull();
});

test("[FILE-4] [QTY-6] a rich workshop comes back as it went in: order, ids, absent values, the largest figures", async () => {
  await replaceWorkshop(file(), richWorkshop());
  // strictly: a key that is there with undefined is not a key that is absent
  expect(await readWorkshop()).toStrictEqual(richWorkshop());
});

test("[BOOK-1] a full desk comes back as it went in, beside its workshop", async () => {
  await replaceWorkshop(file(), bareWorkshop("Bare"));
  await keepBooks(richBooks());
  expect(await readBooks()).toStrictEqual(richBooks());
  expect(await readWorkshop()).toStrictEqual(richWorkshop());
});

test("what was there before is gone: a workshop replaces, it does not join", async () => {
  await replaceWorkshop(file(), richWorkshop());
  const bare = bareWorkshop("Bare");
  await replaceWorkshop(file(), bare);
  expect(await readWorkshop()).toStrictEqual(bare);
});

test("a workshop that the tables refuse leaves the store as it was", async () => {
  await replaceWorkshop(file(), richWorkshop());
  const rich = richWorkshop();
  const twice = { ...rich, runs: [...rich.runs, ...rich.runs.slice(0, 1)] };
  await expect(replaceWorkshop(file(), twice)).rejects.toThrow("UNIQUE constraint failed: runs.id");
  expect(await readWorkshop()).toStrictEqual(rich);
});

test("a workshop that names something that is not there is refused whole", async () => {
  const rich = richWorkshop();
  await replaceWorkshop(file(), rich);
  await expect(replaceWorkshop(file(), { ...rich, formulas: [] })).rejects.toThrow("name something that is not there");
  expect(await readWorkshop()).toStrictEqual(rich);
});

test("[BOOK-1] a store from before there was a desk gets an empty one, beside the workshop that it holds", async () => {
  const older = path.join(folder(), "older.db");
  const [first] = migrationFiles(migrationsFolder());
  const writer = await openWriter(older);
  await migrate(writer, older, first ? [first] : []);
  const texts = Object.entries(textsOfBooks({ workshop: richWorkshop(), desk: emptyDesk }));
  await writer.alone(async (sql) => {
    for (const [name, text] of texts) if (text !== "[]") await sql.run(TABLES[name as TableName].insert, text);
  });
  await writer.close();
  expect(await readBooksFrom(older)).toStrictEqual({ workshop: richWorkshop(), desk: emptyDesk });
  await closeStore(older);
});
