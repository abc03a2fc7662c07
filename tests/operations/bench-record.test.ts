/** The record of a batch: frozen at its start and at its release, its codes, and the checks that its formula asks for. */
import Database from "better-sqlite3";
import { createElement } from "react";
import { renderToStaticMarkup } from "react-dom/server";
import { beforeEach, describe, expect, test } from "vitest";
import { BatchRecord } from "@/app/bench/_parts/batch-record";
import type { BatchOnPage } from "@/app/bench/batch-for-page";
import { codeOf, type Instant, stateOf } from "@/lib/domain/bench/batch";
import { startedAs } from "@/lib/domain/bench/started-as";
import type { Books } from "@/lib/domain/desk";
import { byId } from "@/lib/domain/index-by-id";
import { finishedLot } from "@/lib/domain/ledger/posting";
import { release as releaseHeld } from "@/lib/domain/ledger/stock-moves";
import { preparedFor, plan } from "@/lib/domain/plan";
import { quantity } from "@/lib/domain/quantity";
import type { Formula, Product, Workshop } from "@/lib/domain/workshop";
import { readWorkshopFile, writeWorkshopFile } from "@/lib/edge/workshop-file";
import { keepRecord } from "@/lib/operations/keep-record";
import { onTheLedger } from "@/lib/operations/on-the-ledger";
import { receive } from "@/lib/operations/receive-delivery";
import { releaseLot } from "@/lib/operations/release-lot";
import { startBatch } from "@/lib/operations/start-batch";
import { writeOffStock } from "@/lib/operations/write-off";
import { changeBooks } from "@/lib/store/change-books";
import { readBooksWithPast } from "@/lib/store/ledger/past";
import { storeFile } from "@/lib/store/store-file";
import { batch, jars, note, starting, weighAll, write } from "../helpers/bench-shop";
import { books, delivery, finished, shop, TODAY, units } from "../helpers/ledger-shop";
import { day, decimal, g, grams, label, lot, material, paper } from "../helpers/notation";
import { openBooks } from "../helpers/store-desk";
import { storeForEachTest } from "../helpers/store-folder";

storeForEachTest();

/** The shop with other workshop lists. */
const shopWith = (change: (workshop: Workshop) => Partial<Workshop>): Books => {
  const { workshop, desk } = shop();
  return { workshop: { ...workshop, ...change(workshop) }, desk };
};
const oil = (given: Parameters<typeof material>[1] = {}) =>
  material("oil", { composition: [{ inci: "Avena Oil", share: quantity(1_000_000n) }], ...given });
const labelled = shopWith(({ materials }) => ({
  materials: [oil(), ...materials.slice(1)],
  labels: [
    label("l-eu", "p", { code: "QR", cautions: "Keep out of eyes." }),
    label("l-us", "p", { market: "US", code: "Code 128" }),
  ],
  papers: [paper("a4")],
}));

/** The record as its page draws it. */
async function recordDrawn(): Promise<string> {
  const { workshop, desk } = await books();
  const own = await batch();
  const prepared = preparedFor(workshop, TODAY);
  const found: BatchOnPage = {
    workshop,
    desk,
    today: TODAY,
    prepared,
    plan: plan(workshop, TODAY, prepared),
    materialsBefore: new Map(),
    batch: own,
    product: byId("product", workshop.products)(own.run.product),
    as: startedAs(own, workshop),
    code: codeOf(own),
  };
  return renderToStaticMarkup(createElement(BatchRecord, { found }));
}

/** Everything in the Book that a record could be drawn from is called and measured otherwise. */
const changeEverything = () =>
  changeBooks((before) => {
    const { workshop, desk } = before;
    const renamed = <T extends { readonly name: string }>(records: readonly T[]): readonly T[] =>
      records.map((record) => ({ ...record, name: `Other ${record.name}` }));
    const after: Workshop = {
      ...workshop,
      settings: { ...workshop.settings, name: "Other shop", balanceStep: grams("1") },
      materials: renamed(workshop.materials).map((each) =>
        each.id === "oil" ? { ...each, composition: [{ inci: "Other Oil", share: quantity(1_000_000n) }] } : each,
      ),
      formulas: renamed(workshop.formulas),
      products: renamed(workshop.products).map((each): Product => ({ ...each, fill: grams("55") })),
      labels: workshop.labels
        .slice(1)
        .map((each) => ({ ...each, title: "Other title", cautions: "Other", code: "QR" })),
      papers: [],
    };
    return { kind: "keep", books: { workshop: after, desk }, result: null };
  });

const release = async (closed: Parameters<typeof note<"closed">>[2] = {}) => {
  await startBatch(starting());
  await weighAll();
  await write(note("added", "d", { net: g("1") }));
  expect(await write(note("closed", "c", closed), [], jars)).toMatchObject({ kind: "posted" });
};

describe("one immutable record", () => {
  test("[BENCH-9] its labels are kept at release, each with all that draws it again", async () => {
    await openBooks(labelled);
    await release();
    expect((await batch()).labels).toMatchObject([
      { label: "l-eu", market: "EU", code: { text: "B-1", isGs1: false, kind: "QR" }, size: { width: "63.5" } },
      { label: "l-us", market: "US", code: { kind: "Code 128" } },
    ]);
    const words = (await batch()).labels[0]?.parts.map(({ text }) => text);
    expect(words).toContain("Ingredients: Avena Oil.");
    expect(words).toContain("Batch B-1");
    expect(await recordDrawn()).toContain("Batch B-1");
  });

  test("[BENCH-9] no later change of the Book changes record or label, in the store or over a file", async () => {
    await openBooks(labelled);
    await release({ held: true });
    await write(note("released", "ok"));
    const [kept, drawn] = [await batch(), await recordDrawn()];
    expect(drawn).toMatch(/Material oil, lot late; made up for what evaporated<\/td><td class="number">1\.0.g/);
    await changeEverything();
    expect(await batch()).toEqual(kept);
    expect(await recordDrawn()).toBe(drawn);
    const all = await readBooksWithPast();
    if (all === null) throw new Error("no workshop");
    const text = writeWorkshopFile(all.workshop, all.past);
    const read = readWorkshopFile(new TextEncoder().encode(text), TODAY);
    if (read.kind !== "read" || read.past === undefined) throw new Error(JSON.stringify(read));
    expect(read.past.batches).toEqual([kept]);
    expect(writeWorkshopFile(read.workshop, read.past)).toBe(text);
  });

  test("[BENCH-9] nothing is kept before the release, nor of what is rejected or given up", async () => {
    await openBooks(labelled);
    await release({ held: true });
    expect((await batch()).labels).toEqual([]);
    await write(note("rejected", "no"));
    expect((await batch()).labels).toEqual([]);
  });

  test("[BENCH-9] where no label was set up, the record says so", async () => {
    await openBooks(shop());
    await release();
    expect((await batch()).labels).toEqual([]);
    expect(await recordDrawn()).toContain("No label was set up when it was released.");
  });

  test("[BENCH-9, FILE-5] a file of before the record kept it all is read", async () => {
    await openBooks(labelled);
    await release();
    const all = await readBooksWithPast();
    if (all === null) throw new Error("no workshop");
    const file = JSON.parse(writeWorkshopFile(all.workshop, all.past)) as {
      readonly version: number;
      readonly batches: {
        as?: object;
        labels?: object;
        versions: { called?: string }[];
        notes: { called?: string }[];
      }[];
    };
    for (const each of file.batches) {
      delete each.as;
      delete each.labels;
      for (const named of [...each.versions, ...each.notes]) delete named.called;
    }
    const read = readWorkshopFile(new TextEncoder().encode(JSON.stringify(file)), TODAY);
    if (read.kind !== "read") throw new Error(read.faults.join("\n"));
    expect(file.version).toBe(5);
    expect(read.past?.batches).toMatchObject([{ as: null, labels: [], versions: [{ called: null }] }]);
    expect(read.past?.batches[0] && startedAs(read.past.batches[0], read.workshop).product).toBe("Product p");
  });
});

/** A lot that the ledger names and no list shows any more. */
async function strikeOff(id: string): Promise<void> {
  await changeBooks(({ workshop, desk }) => ({
    kind: "keep",
    books: { workshop: { ...workshop, lots: workshop.lots.filter((each) => each.id !== id) }, desk },
    result: null,
  }));
}

test("[BENCH-3, BENCH-4] nothing that was weighed is cut, and its day is that of its times", async () => {
  await openBooks(shop());
  await startBatch(starting({ at: "2026-11-24T23:30:00Z" as Instant }));
  await write(note("weighed", "w", { net: g("599.004"), more: true }));
  const drawn = await recordDrawn();
  expect(drawn).toMatch(/599\.004.g/);
  expect(drawn).toMatch(/−400\.996.g/);
  expect(drawn.match(/Tue.24.Nov.2026, times in UTC/g)).toHaveLength(2);
  expect(drawn).toMatch(/25.Nov.09:30, R\. Weaver/);
});

describe("codes", () => {
  test("[BENCH-10] what a lot has that was struck off is refused at the start, with the next that is free", async () => {
    await openBooks(shop());
    await strikeOff("soon");
    expect(await startBatch(starting({ code: "soon" }))).toEqual({ kind: "code taken", code: "soon", next: "soon-2" });
  });

  test("[BENCH-10] the scheme goes past numbers that struck-off lots have", async () => {
    const { workshop, desk } = shop();
    const scheme = { before: "S", dating: "none", between: "", digits: 1 } as const;
    const withLot = { ...workshop, lots: [...workshop.lots, lot("S1", "oil", "5", "1")] };
    await openBooks({ workshop: withLot, desk: { ...desk, batchCodeScheme: scheme } });
    await strikeOff("S1");
    expect(await startBatch(starting({ code: null }))).toMatchObject({ kind: "started", batch: { code: "S2" } });
  });

  test("[BENCH-10] a batch whose code is taken all the same gets another with a reason, and is closed under it", async () => {
    // As a file of before could bring it: the code is that of a lot which is on no list any more.
    const { workshop, desk } = shop();
    await openBooks({ workshop: { ...workshop, finished: [made("B-1")] }, desk });
    await changeBooks((before) => ({
      kind: "keep",
      books: { ...before, workshop: { ...before.workshop, finished: [] } },
      result: null,
    }));
    await startBatch(starting({ code: "B-9" }));
    changeCodeInTheStore("B-1");
    await weighAll();
    expect(await write(note("closed", "c"), [], jars)).toMatchObject({ kind: "finished lot exists" });
    expect(await write(note("recoded", "n", { code: "late" }))).toEqual({
      kind: "code taken",
      code: "late",
      next: "late-2",
    });
    expect(await write(note("recoded", "n"))).toEqual({ kind: "written" });
    expect(await write(note("closed", "c2"), [], jars)).toMatchObject({ kind: "posted" });
    expect(await finished()).toBe("B-1a 10");
    expect(await recordDrawn()).toContain("batch B-1a; the code is taken");
    expect(await write(note("struck", "x", { strikes: "n" }))).toMatchObject({ kind: "not now" });
  });

  test("[BENCH-10] no delivery and no lot of the Book takes the code of an open batch", async () => {
    await openBooks(shop());
    await startBatch(starting({ code: "B-1" }));
    const taken = { kind: "code of a batch", lot: "B-1" };
    expect(await receive(delivery([{ lot: "B-1" }]))).toEqual(taken);
    const entered = (id: string) =>
      keepRecord<{ kind: "changed"; workshop: Workshop }, { kind: "stale" }>({
        change: (workshop) => ({
          kind: "changed",
          workshop: { ...workshop, lots: [...workshop.lots, lot(id, "oil", "5", "1", { received: TODAY })] },
        }),
        stale: () => null,
      });
    expect(await entered("B-1")).toEqual(taken);
    expect(await entered("B-2")).toMatchObject({ kind: "changed" });
  });
});

const made = (id: string) => ({ id, product: "p", made: day("2026-10-01"), bestBefore: null, units: units(1) });

/** As no operation writes it: under the triggers that hold what was written. */
function changeCodeInTheStore(code: string): void {
  const store = new Database(storeFile());
  const [trigger] = store
    .prepare("SELECT sql FROM sqlite_master WHERE name = 'batches_never_changed_changed'")
    .all() as { sql: string }[];
  store.exec("DROP TRIGGER batches_never_changed_changed");
  store.prepare("UPDATE batches SET code = ?").run(code);
  store.exec(trigger?.sql ?? "");
  store.close();
}

describe("checks that the formula asks for", () => {
  const asking = (given: Partial<Formula>): Books =>
    shopWith(({ formulas }) => ({ formulas: formulas.map((each) => ({ ...each, ...given })) }));
  const viscosity = { what: "Viscosity", from: decimal("8000"), to: decimal("14000"), unit: "mPa·s", looks: null };
  const smooth = { what: "Appearance", from: null, to: null, unit: null, looks: "smooth" };
  const said = (what: string, found: string, within: boolean, why: string | null = null) =>
    note("checked", `${what} ${found}`, { what, asked: "as the formula asks", found, within, why });

  beforeEach(async () => {
    await openBooks(asking({ phFrom: decimal("5"), phTo: decimal("6"), checks: [viscosity, smooth] }));
    await startBatch(starting());
    await weighAll();
  });

  test("[BENCH-11] nothing is released that was not looked at, unless a reason says why", async () => {
    const told = await write(note("closed", "c"), [], jars);
    expect(told).toMatchObject({ kind: "not checked", checks: [{ what: "pH" }, viscosity, smooth] });
    // One reason answers one question alone.
    expect(await write(note("closed", "c", { why: "in a hurry" }), [], jars)).toMatchObject({ kind: "not checked" });
    const excused = note("closed", "c", { whyNotChecked: "the meter is away" });
    expect(await write(excused, [], jars)).toMatchObject({ kind: "posted" });
    expect(await recordDrawn()).toContain("not checked: the meter is away");
  });

  test("[BENCH-11] what waits for a second look is checked by then", async () => {
    expect(await write(note("closed", "c", { held: true }), [], jars)).toMatchObject({ kind: "posted" });
    expect(await write(note("released", "r"))).toMatchObject({ kind: "not checked" });
    await write(said("Viscosity", "12000", true));
    await write(said("Appearance", "as asked", true));
    expect(await write(note("released", "r"))).toMatchObject({ kind: "not checked", checks: [{ what: "pH" }] });
    await write(note("acidity", "a", { ph: decimal("6.0") }));
    expect(await write(note("released", "r"))).toMatchObject({ kind: "posted" });
    expect(stateOf(await batch())).toBe("released");
  });

  test.each([
    { found: "7999.9", within: false, why: null, told: "outside its limits" },
    { found: "8000", within: true, why: null, told: "written" },
    { found: "14000", within: true, why: null, told: "written" },
    { found: "14000.1", within: false, why: "it thickens overnight", told: "written" },
    { found: "thick", within: true, why: null, told: "not a figure" },
    // Said to be within by a form that was drawn from other limits.
    { found: "7999.9", within: true, why: null, told: "no such check" },
  ])("[BENCH-11] a viscosity of $found: $told", async ({ found, within, why, told }) => {
    expect(await write(said("Viscosity", found, within, why))).toMatchObject({ kind: told });
  });

  test("[BENCH-11] what is seen is judged by whoever sees it, and no check is made up", async () => {
    expect(await write(said("Appearance", "grainy", false))).toMatchObject({ kind: "outside its limits" });
    expect(await write(said("Appearance", "grainy", false, "sold as a scrub"))).toEqual({ kind: "written" });
    expect(await write(said("Smell", "none", true))).toEqual({ kind: "no such check" });
    expect(await recordDrawn()).toContain(", not as asked; sold as a scrub");
  });

  test("[BENCH-11] a pH outside that was measured on the way is no answer; within, or with a reason, it is", async () => {
    await write(note("acidity", "a", { ph: decimal("6.4") }));
    await write(said("Viscosity", "9000", true));
    await write(said("Appearance", "as asked", true));
    expect(await write(note("closed", "c"), [], jars)).toMatchObject({ kind: "not checked", checks: [{ what: "pH" }] });
    await write(said("pH", "6.4", false, "within what the preservative bears"));
    expect(await write(note("closed", "c"), [], jars)).toMatchObject({ kind: "posted" });
  });

  test("[BENCH-7] each question at closing has a reason of its own", async () => {
    const more = { units: units(11), whyNotChecked: "later" };
    expect(await write(note("closed", "c", more), [], jars)).toMatchObject({ kind: "more than was weighed" });
    const both = { ...more, whyMoreFilled: "the line was rinsed" };
    expect(await write(note("closed", "c", both), [], jars)).toMatchObject({ kind: "posted" });
    const drawn = await recordDrawn();
    expect(drawn).toContain("more filled than was weighed: the line was rinsed");
    expect(drawn).toContain("not checked: later");
  });
});

test("[BENCH-8] what waits for a second look is neither released nor written off over the shelf", async () => {
  await openBooks(
    shopWith(({ products, materials }) => ({
      materials: [...materials, material("stock")],
      products: products.map((each) => ({ ...each, madeInto: "stock" })),
    })),
  );
  await release({ held: true });
  const lines = [{ lot: { of: "material", id: "B-1" } as const, quantity: g("1000") }];
  const asked = { key: "k", day: TODAY, realToday: TODAY, reason: "looked at", lines };
  const told = { kind: "waits at the bench", run: "r", code: "B-1" };
  expect(await releaseLot(asked)).toEqual(told);
  expect(await writeOffStock({ ...asked, as: "lost", from: "hold" })).toEqual(told);
  expect(await write(note("released", "ok"))).toMatchObject({ kind: "posted" });
  expect(stateOf(await batch())).toBe("released");
});

describe("what was on hold has left it beside the bench", () => {
  /** As could be done before a held batch was judged at the bench alone. */
  async function emptyHold(): Promise<void> {
    const line = { lot: finishedLot("B-1"), quantity: 10n };
    const move = { key: "over the shelf", day: TODAY, today: TODAY, reason: "looked at", lines: [line] };
    const told = await onTheLedger({ key: move.key, realToday: TODAY }, async ({ standingOf, records }) =>
      releaseHeld(move, await standingOf([line.lot]), records),
    );
    expect(told).toMatchObject({ kind: "posted" });
  }

  test("[BENCH-8] the record says how it was judged, once: a second judgement is refused", async () => {
    await openBooks(labelled);
    await release({ held: true });
    await emptyHold();
    const told = await Promise.all([write(note("released", "one")), write(note("rejected", "two"))]);
    expect(told.map(({ kind }) => kind).toSorted()).toEqual(["not now", "written"]);
    const judged = (await batch()).notes.filter(({ kind }) => kind === "released" || kind === "rejected");
    expect(judged).toHaveLength(1);
    expect(await finished()).toBe("B-1 10");
  });
});
