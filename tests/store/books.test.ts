import { DEFAULT_NOTATION } from "@/lib/domain/notation";
import path from "node:path";
import { expect, test } from "vitest";
import { type Books, emptyDesk } from "@/lib/domain/desk";
import { openings } from "@/lib/domain/ledger/opening";
import { NO_FORMULA_FACTS, NO_MATERIAL_FACTS } from "@/lib/domain/formula-book/facts";
import type { MicroUnits } from "@/lib/domain/money";
import type { Stock, Units } from "@/lib/domain/quantity";
import type { Workshop } from "@/lib/domain/workshop";
import { readBooks, readBooksFrom, readWorkshop, textsOfBooks } from "@/lib/store/books";
import { day as dayCell, orNull, small, table, text, whole } from "@/lib/store/columns";
import { openWriter } from "@/lib/store/connection";
import { allPostings } from "@/lib/store/ledger/ledger-reading";
import { migrate } from "@/lib/store/migrate";
import { migrationFiles, migrationsFolder } from "@/lib/store/migration-files";
import { closeStore, openStore } from "@/lib/store/open-store";
import { type Row, TABLE_NAMES, TABLES } from "@/lib/store/tables";
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

/** Lots and finished units as they lay before there was a ledger: what is there stood with them. */
const OLD_LOTS = table<Row<"lots"> & { readonly remaining: Stock; readonly value: MicroUnits }>(
  "lots",
  {
    id: text(),
    position: small,
    material: text(),
    received: dayCell,
    expires: orNull(dayCell),
    remaining: whole(),
    value: whole(),
  },
  ["position"],
);
const OLD_FINISHED = table<Row<"finished"> & { readonly units: Units }>(
  "finished_lots",
  { id: text(), position: small, product: text(), made: dayCell, bestBefore: orNull(dayCell), units: whole() },
  ["position"],
);

/** An insert of today's into a table that had only these columns then: the others are left out. */
function insertInto(insert: string, columns: readonly string[]): string {
  const [, table = "", names = "", cells = "", rest = ""] =
    /^(INSERT INTO \S+) \((.*?)\) SELECT (.*?)( FROM .*)$/s.exec(insert) ?? [];
  const values = cells.split(", ");
  const known = names
    .split(", ")
    .flatMap((name, at) => (columns.includes(name.replaceAll('"', "")) ? [{ name, value: values[at] ?? "NULL" }] : []));
  return `${table} (${known.map(({ name }) => name).join(", ")}) SELECT ${known.map(({ value }) => value).join(", ")}${rest}`;
}

/** What the first migrations had no column for is not known of what was kept then. */
const asItWasKeptThen = (workshop: Workshop): Workshop => ({
  ...workshop,
  labels: [],
  papers: [],
  offers: workshop.offers.map((offer) => ({ ...offer, shelfLifeDays: null, confirmedOn: null })),
  materials: workshop.materials.map((material) => ({ ...material, ...NO_MATERIAL_FACTS })),
  formulas: workshop.formulas.map((formula) => ({ ...formula, ...NO_FORMULA_FACTS })),
  products: workshop.products.map((product) => ({ ...product, madeInto: null })),
});

/** A store that only the first migrations have made, with these books in it. */
async function olderStore(migrations: number, books: Books): Promise<string> {
  const older = path.join(folder(), "older.db");
  const writer = await openWriter(older);
  await migrate(writer, older, migrationFiles(migrationsFolder()).slice(0, migrations));
  const texts = {
    ...textsOfBooks(books),
    lots: OLD_LOTS.textOf(books.workshop.lots.map((lot, position) => ({ ...lot, position }))),
    finished: OLD_FINISHED.textOf(books.workshop.finished.map((lot, position) => ({ ...lot, position }))),
  };
  const inserts = { ...TABLES, lots: OLD_LOTS, finished: OLD_FINISHED };
  await writer.alone(async (sql) => {
    for (const name of TABLE_NAMES) {
      const there = await sql.rows(`SELECT "name" FROM pragma_table_info('${inserts[name].name}')`);
      if (there.length === 0) continue;
      const insert = insertInto(
        inserts[name].insert,
        there.map(([column]) => String(column)),
      );
      if (texts[name] !== "[]") await sql.run(insert, texts[name]);
    }
  });
  await writer.close();
  return older;
}

test("[BOOK-1] a store from before there was a desk gets an empty one, beside the workshop that it holds", async () => {
  const older = await olderStore(1, { workshop: richWorkshop(), desk: emptyDesk });
  expect(await readBooksFrom(older)).toStrictEqual({
    workshop: asItWasKeptThen(richWorkshop()),
    desk: emptyDesk,
  });
  await closeStore(older);
});

test("[OFFER-1] [OFFER-2] a store from before offers said how long they keep opens, and nobody has said it", async () => {
  const workshop: Workshop = { ...richWorkshop(), lots: [], finished: [] };
  const older = await olderStore(3, { workshop, desk: emptyDesk });
  expect(await readBooksFrom(older)).toStrictEqual({ workshop: asItWasKeptThen(workshop), desk: emptyDesk });
  await closeStore(older);
});

test("[LEDGER-21] a store from before there was a ledger opens its books with the lots that are there, and loses nothing", async () => {
  const older = await olderStore(2, richBooks());
  const { workshop, desk } = richBooks();
  const drafts = desk.drafts.map((draft) => ({ ...draft, ...NO_FORMULA_FACTS }));
  expect(await readBooksFrom(older)).toStrictEqual({
    workshop: asItWasKeptThen(workshop),
    desk: {
      ...desk,
      drafts,
      countRhythms: [],
      closedRuns: desk.closedRuns.map((closed) => ({ ...closed, versions: [] })),
      versions: [],
      trials: [],
      batches: [],
      batchCodeScheme: null,
      notation: DEFAULT_NOTATION,
    },
  });
  const { reader } = await openStore(older);
  const postings = await reader.alone(allPostings);
  expect(postings.map(({ sequence, ...posting }) => ({ ...posting, sequence: typeof sequence }))).toEqual(
    openings(richWorkshop()).map((posting) => ({ ...posting, sequence: "number" })),
  );
  expect(postings.length).toBeGreaterThan(1);
  await closeStore(older);
});
