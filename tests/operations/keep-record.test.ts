/** Forms as they are sent, through the readers of the file and into the store. */
import { beforeEach, describe, expect, test } from "vitest";
import type { Books } from "@/lib/domain/desk";
import { quantity } from "@/lib/domain/quantity";
import { finishDraft, putDraft, writtenDraft } from "@/lib/edge/forms/change-draft";
import { putRecord, putSettings } from "@/lib/edge/forms/change-record";
import { fingerprint } from "@/lib/edge/forms/fingerprint";
import type { RecordList } from "@/lib/edge/forms/form-fields";
import type { TypedRecord } from "@/lib/edge/forms/form-reading";
import { removeDraft, removeRecord as takeOut } from "@/lib/edge/forms/remove-record";
import { type Stale, staleness } from "@/lib/edge/forms/staleness";
import { writtenRecord, writtenSettings } from "@/lib/edge/forms/written-record";
import { keepDraft } from "@/lib/operations/keep-draft";
import { keepRecord } from "@/lib/operations/keep-record";
import { removeRecord } from "@/lib/operations/remove-record";
import { retireRecord } from "@/lib/operations/retire-record";
import { readBooks } from "@/lib/store/books";
import { day, formula, lot, material, offer, product, run, supplier } from "../helpers/notation";
import { auditAfterEachTest } from "../helpers/store-audit";
import { booksOf, openBooks } from "../helpers/store-desk";
import { storeForEachTest } from "../helpers/store-folder";
import { bytesOf } from "../helpers/store-soundness";
import { bareWorkshop } from "../helpers/store-workshop";

const { file } = storeForEachTest();
auditAfterEachTest(file);

const TODAY = day("2026-11-25");

const bench = (): Books =>
  booksOf(
    bareWorkshop("Bench", {
      suppliers: [supplier("s")],
      materials: [material("oil"), material("wax"), material("spare")],
      offers: [offer("o", "oil", "1000", "8.40")],
      lots: [lot("L", "oil", "100", "1")],
      formulas: [formula("balm", { oil: "80", wax: "20" }), formula("old", { oil: "100" })],
      products: [product("p", "balm")],
      runs: [run("r", "p", "2026-11-30", 10)],
    }),
    {
      drafts: [formula("half", { oil: "40", "=old": "10" })],
      closedRuns: [
        { run: run("made", "p", "2026-11-20", 5), madeOn: day("2026-11-21"), unitsMade: quantity(5n), versions: [] },
      ],
    },
  );

beforeEach(() => openBooks(bench()));

const books = async (): Promise<Books> => (await readBooks()) ?? bench();
const written = (list: RecordList, id: string): TypedRecord => writtenRecord(bench().workshop, list, id) ?? {};
interface Decided {
  readonly kind: string;
  readonly record?: TypedRecord;
}
const staleAgainst = (seen: string, stored: TypedRecord | null, decided: Decided): Stale | null =>
  staleness(seen, stored, decided.record ?? {});

/** Sends the form of a record that was drawn from `drawn`; of a new one where that is null. */
const send = (list: RecordList, record: TypedRecord, drawn: TypedRecord | null) => {
  const id = drawn === null ? null : String(record.id);
  return keepRecord({
    change: (workshop) => putRecord(workshop, list, id, record, TODAY),
    stale: (workshop, decided) =>
      drawn === null || decided.kind === "refused"
        ? null
        : staleAgainst(fingerprint(drawn), writtenRecord(workshop, list, String(record.id)), decided),
  });
};

describe("keeping a record", () => {
  const oil = written("materials", "oil");

  test("[BOOK-1] a change is kept, everything else stays, and the desk as well", async () => {
    const result = await send("materials", { ...oil, name: "Almond oil", density: "0.92" }, oil);
    expect(result).toMatchObject({ kind: "changed", record: { name: "Almond oil", density: "0.92" } });
    expect(result).not.toHaveProperty("workshop");
    const { workshop, desk } = await books();
    const [first, ...others] = bench().workshop.materials;
    expect(workshop).toStrictEqual({
      ...bench().workshop,
      materials: [{ ...first, name: "Almond oil", density: 920_000n }, ...others],
    });
    expect(desk).toStrictEqual(bench().desk);
  });

  test("a new record stands at the end of its list; sent twice it is one record", async () => {
    const butter = { id: "butter", name: "Shea butter", kind: "ingredient", measure: "mass" };
    expect(await send("materials", butter, null)).toMatchObject({ kind: "changed" });
    const bytes = bytesOf(file());
    expect(await send("materials", butter, null)).toMatchObject({ kind: "already kept" });
    expect(await send("materials", { ...butter, name: "Cocoa butter" }, null)).toMatchObject({ kind: "refused" });
    expect(bytesOf(file())).toEqual(bytes);
    expect((await books()).workshop.materials.map(({ id }) => id)).toEqual(["oil", "wax", "spare", "butter"]);
  });

  test("a form that was drawn before somebody else's change says what was and what is, and changes no byte", async () => {
    await send("materials", { ...oil, name: "Almond oil" }, oil);
    const bytes = bytesOf(file());
    expect(await send("materials", { ...oil, name: "Olive oil" }, oil)).toEqual({
      kind: "stale",
      changes: [{ field: "name", was: "Olive oil", now: "Almond oil" }],
    });
    expect(bytesOf(file())).toEqual(bytes);
  });

  test("the same change sent twice is kept once and is not stale", async () => {
    const changed = { ...oil, name: "Almond oil" };
    await send("materials", changed, oil);
    const bytes = bytesOf(file());
    expect(await send("materials", changed, oil)).toMatchObject({ kind: "changed" });
    expect(bytesOf(file())).toEqual(bytes);
  });

  test("what is wrong is told, and what it would break elsewhere, and no byte is changed", async () => {
    const bytes = bytesOf(file());
    const result = await send("materials", { ...oil, name: "", measure: "count" }, oil);
    expect(result).toMatchObject({ kind: "refused", faults: [{ field: "name" }] });
    // Its offer, its lot, and the formulas balm and old.
    expect(result).toHaveProperty("breaks.length", 4);
    expect(bytesOf(file())).toEqual(bytes);
  });

  test("[CLOSE-1] a run under the id of one that was made is refused with it", async () => {
    const bytes = bytesOf(file());
    const again = { id: "made", product: "p", date: "2026-12-01", units: 3 };
    expect(await send("runs", again, null)).toMatchObject({
      kind: "already made",
      closed: { madeOn: day("2026-11-21") },
    });
    expect(bytesOf(file())).toEqual(bytes);
  });

  test("the settings are kept like a record", async () => {
    const drawn = writtenSettings(bench().workshop);
    const sendSettings = (record: TypedRecord) =>
      keepRecord({
        change: (workshop) => putSettings(workshop, record, TODAY),
        stale: (workshop, decided) => staleAgainst(fingerprint(drawn), writtenSettings(workshop), decided),
      });
    expect(await sendSettings({ ...drawn, labourPerHour: "18" })).toMatchObject({ kind: "changed" });
    expect(await sendSettings({ ...drawn, labourPerHour: "20" })).toMatchObject({ kind: "stale" });
    expect((await books()).workshop.settings.labourPerHour).toBe(18_000_000n);
  });

  test("twenty forms at once keep twenty records", async () => {
    const ids = Array.from({ length: 20 }, (_, at) => `m${String(at)}`);
    await Promise.all(ids.map((id) => send("materials", { id, name: id, kind: "ingredient", measure: "mass" }, null)));
    expect((await books()).workshop.materials.map(({ id }) => id)).toEqual(["oil", "wax", "spare", ...ids]);
  });
});

describe("keeping a draft", () => {
  const half = writtenDraft(bench().workshop, bench().desk.drafts[0] ?? formula("half", {}));
  const whole = {
    ...half,
    lines: [
      { material: "oil", percent: "90" },
      { formula: "old", percent: "qs" },
    ],
  };
  const stale = (now: Books, decided: Decided) => {
    const draft = now.desk.drafts.find(({ id }) => id === "half");
    return staleAgainst(fingerprint(half), draft ? writtenDraft(now.workshop, draft) : null, decided);
  };
  const sendDraft = (record: TypedRecord) => keepDraft({ change: (now) => putDraft(now, "half", record), stale });
  const finish = (record: TypedRecord) =>
    keepDraft({ change: (now) => finishDraft(now, "half", record, TODAY), stale });

  test("[BOOK-3] it may come to anything, and the workshop does not change", async () => {
    const more = {
      ...half,
      lines: [
        { material: "oil", percent: "99" },
        { material: "wax", percent: "99" },
      ],
    };
    expect(await sendDraft(more)).toMatchObject({ kind: "changed", says: "198 %, which is 98 % too much" });
    const { workshop, desk } = await books();
    expect(workshop).toStrictEqual(bench().workshop);
    expect(desk.drafts).toStrictEqual([formula("half", { oil: "99", wax: "99" })]);
  });

  test("[BOOK-3] a form drawn before somebody else's change of the draft is stale", async () => {
    await sendDraft({ ...half, name: "Balm, softer" });
    const bytes = bytesOf(file());
    expect(await sendDraft({ ...half, name: "Balm, harder" })).toMatchObject({ kind: "stale" });
    expect(await finish({ ...whole, name: "Balm, harder" })).toMatchObject({ kind: "stale" });
    expect(bytesOf(file())).toEqual(bytes);
  });

  test("[BOOK-3] what names a material that is not there is refused, and no byte is changed", async () => {
    const bytes = bytesOf(file());
    const lines = [{ material: "gone", percent: "5" }];
    expect(await sendDraft({ ...half, lines })).toMatchObject({
      kind: "refused",
      faults: [{ field: "lines[0].material" }],
    });
    expect(bytesOf(file())).toEqual(bytes);
  });

  test("[BOOK-3] one that adds up leaves the desk and stands in the workshop", async () => {
    expect(await finish(half)).toMatchObject({ kind: "refused" });
    expect(await finish(whole)).toMatchObject({ kind: "changed" });
    const { workshop, desk } = await books();
    expect(desk.drafts).toEqual([]);
    expect(workshop.formulas.at(-1)).toStrictEqual({ ...formula("half", { oil: "90", "=old": "qs" }) });
  });

  test("[BOOK-3] finished twice it is one formula", async () => {
    await finish(whole);
    const bytes = bytesOf(file());
    await finish(whole);
    expect(bytesOf(file())).toEqual(bytes);
    expect((await books()).workshop.formulas.map(({ id }) => id)).toEqual(["balm", "old", "half"]);
  });

  test("[BOOK-3] a formula that is kept under the id of a draft is no draft any more", async () => {
    expect(await send("formulas", { ...whole, id: "half" }, null)).toMatchObject({ kind: "changed" });
    const { workshop, desk } = await books();
    expect(desk.drafts).toEqual([]);
    expect(workshop.formulas.map(({ id }) => id)).toEqual(["balm", "old", "half"]);
  });
});

describe("removing a record", () => {
  const remove = (list: RecordList, id: string, seen: TypedRecord = written(list, id)) =>
    removeRecord({
      remove: (now) => takeOut(now, list, id),
      stale: ({ workshop }) => staleness(fingerprint(seen), writtenRecord(workshop, list, id), {}),
    });

  test.each<{ list: RecordList; id: string; kind: string }>([
    { list: "materials", id: "spare", kind: "removed" },
    { list: "offers", id: "o", kind: "removed" },
    { list: "lots", id: "L", kind: "removed" },
    { list: "suppliers", id: "s", kind: "refused" },
    { list: "materials", id: "wax", kind: "refused" },
    { list: "formulas", id: "balm", kind: "refused" },
    // Only a draft is made with it.
    { list: "formulas", id: "old", kind: "refused" },
    { list: "products", id: "p", kind: "refused" },
    { list: "materials", id: "gone", kind: "refused" },
  ])("[BOOK-4] $id of the $list: $kind", async ({ list, id, kind }) => {
    const bytes = bytesOf(file());
    expect(await remove(list, id)).toMatchObject({ kind });
    const { workshop, desk } = await books();
    if (kind === "refused") expect(bytesOf(file())).toEqual(bytes);
    else {
      const without = bench().workshop[list].filter((record) => record.id !== id);
      expect(workshop).toStrictEqual({ ...bench().workshop, [list]: without });
      expect(desk).toStrictEqual(bench().desk);
    }
  });

  test("[BOOK-4] a product of which only a run was made stays as well", async () => {
    await removeRecord({ remove: (now) => takeOut(now, "runs", "r"), stale: () => null });
    expect(await remove("products", "p")).toMatchObject({
      kind: "refused",
      breaks: ["the run that was made on 2026-11-21"],
    });
  });

  test("[BOOK-2] one that was retired is forgotten on the desk too", async () => {
    await retireRecord("materials", "spare");
    expect(await remove("materials", "spare")).toMatchObject({ kind: "removed" });
    expect((await books()).desk).toStrictEqual(bench().desk);
  });

  test("one that somebody has changed since it was shown stays", async () => {
    const spare = written("materials", "spare");
    await send("materials", { ...spare, name: "Not spare at all" }, spare);
    const bytes = bytesOf(file());
    expect(await remove("materials", "spare", spare)).toMatchObject({ kind: "stale" });
    expect(bytesOf(file())).toEqual(bytes);
  });

  test("[BOOK-3] a draft goes, and then what it was made with can go", async () => {
    const drop = () => removeRecord({ remove: (now) => removeDraft(now, "half"), stale: () => null });
    expect(await drop()).toMatchObject({ kind: "removed" });
    expect(await drop()).toMatchObject({ kind: "refused" });
    expect(await remove("formulas", "old")).toMatchObject({ kind: "removed" });
  });
});
