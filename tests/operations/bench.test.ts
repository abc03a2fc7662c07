/** A batch through the store: started, weighed, struck, closed, released; and what is refused on the way. */
import { writeFileSync } from "node:fs";
import path from "node:path";
import { beforeEach, describe, expect, test } from "vitest";
import { stateOf } from "@/lib/domain/bench/batch";
import { inBatchesOf } from "@/lib/domain/bench/in-batches";
import { linesWeighed, massIn } from "@/lib/domain/bench/weights";
import { batchOf, materialLot } from "@/lib/domain/ledger/posting";
import { latest, movesOf, standingAfter } from "@/lib/domain/ledger/standing";
import { plan, preparedFor } from "@/lib/domain/plan";
import { quantity } from "@/lib/domain/quantity";
import { readWorkshopFile, writeWorkshopFile } from "@/lib/edge/workshop-file";
import { deleteRun } from "@/lib/operations/delete-run";
import { makePlannedRun } from "@/lib/operations/make-run";
import { reversePosting } from "@/lib/operations/reverse-posting";
import { startBatch } from "@/lib/operations/start-batch";
import { checkLedger } from "@/lib/store/ledger/check-ledger";
import { readBooksWithPast } from "@/lib/store/ledger/past";
import { storeFile } from "@/lib/store/store-file";
import { batch, jars, left, note, starting, weighAll, write } from "../helpers/bench-shop";
import { runChild } from "../helpers/child";
import { books, finished, making, shop, TODAY, units } from "../helpers/ledger-shop";
import { day, formula, g, lot, material } from "../helpers/notation";
import { openBooks } from "../helpers/store-desk";
import { storeForEachTest } from "../helpers/store-folder";

storeForEachTest();

beforeEach(() => openBooks(shop()));

describe("starting", () => {
  test("[BENCH-1] a planned run is frozen with its targets, and nothing leaves the shelf yet", async () => {
    expect(await startBatch(starting())).toMatchObject({ kind: "started" });
    const { lines, versions, run, notes } = await batch();
    // NEED-1: ten units of 100 g; WEIGH-4: 1 % of it
    expect(lines).toMatchObject([{ key: "1", called: "Material oil", target: g("1000"), tolerance: g("10") }]);
    expect(versions).toEqual([{ formula: "f", number: 1, called: "Formula f" }]);
    expect([run.id, notes]).toEqual(["r", []]);
    expect(await left("soon")).toBe(g("600"));
    expect((await books()).workshop.runs.map(({ id }) => id)).toEqual(["r", "s"]);
  });

  test("[BENCH-1] started twice it is one batch, and the run cannot be made or deleted beside it", async () => {
    await startBatch(starting());
    expect(await startBatch(starting({ code: "B-2" }))).toMatchObject({ kind: "at the bench" });
    expect(await makePlannedRun(making("r"))).toMatchObject({ kind: "at the bench" });
    expect(await deleteRun(starting().run)).toMatchObject({ kind: "at the bench" });
    expect((await books()).desk.batches.map(({ code }) => code)).toEqual(["B-1"]);
  });

  test("[BENCH-2] without a code and a scheme it is refused, and so is a code that is taken", async () => {
    expect(await startBatch(starting({ code: null }))).toEqual({ kind: "no code" });
    for (const [code, next] of [
      ["soon", "soon-2"],
      ["jars", "jars-2"],
    ] as const)
      expect(await startBatch(starting({ code }))).toEqual({ kind: "code taken", code, next });
    await startBatch(starting());
    const other = { id: "s", product: "p", date: day("2026-11-26"), units: units(10) };
    expect(await startBatch(starting({ run: other }))).toEqual({ kind: "code taken", code: "B-1", next: "B-2" });
  });

  test("[BENCH-1] an error of the checks stops it, and a warning asks for a reason that is kept", async () => {
    const { workshop, desk } = shop();
    const limited = material("oil", { useMax: quantity(500_000n) });
    await openBooks({ workshop: { ...workshop, materials: [limited, ...workshop.materials.slice(1)] }, desk });
    const told = await startBatch(starting());
    expect(told).toMatchObject({ kind: "warnings to answer", findings: [{ code: "outside its use range" }] });
    expect(await startBatch(starting({ despite: "asked the supplier" }))).toMatchObject({ kind: "started" });
    expect((await batch()).despite).toBe("asked the supplier");
  });

  test("[BENCH-1] a premix comes before what it goes into; enough of it made ahead is weighed from its pot", async () => {
    const { workshop, desk } = shop();
    const materials = [...workshop.materials, material("herb"), material("pot")];
    const formulas = [formula("base", { oil: "50", herb: "50" }), formula("f", { oil: "80", "=base": "20" })];
    const [jar] = workshop.products;
    if (jar === undefined) throw new Error("the shop has a product");
    const stock = { ...jar, id: "stock", formula: "base", madeInto: "pot" };
    const withPot = { ...workshop, materials, formulas, products: [jar, stock] };
    await openBooks({ workshop: withPot, desk });
    await startBatch(starting());
    expect((await batch()).lines.map(({ part, of, target }) => [part, of.id, target])).toEqual([
      ["base", "oil", g("100")],
      ["base", "herb", g("100")],
      ["f", "oil", g("800")],
      ["f", "base", g("200")],
    ]);
    await openBooks({ workshop: { ...withPot, lots: [...workshop.lots, lot("P", "pot", "200", "2")] }, desk });
    await startBatch(starting());
    expect((await batch()).lines.map(({ of, target }) => [of.kind, of.id, target])).toEqual([
      ["material", "oil", g("800")],
      ["material", "pot", g("200")],
    ]);
  });
});

describe("weighing", () => {
  beforeEach(() => startBatch(starting()));

  test("[BENCH-5] each weight leaves the shelf as it is written; sent again it is one weight", async () => {
    const first = note("weighed", "w", { net: g("600"), more: true });
    expect(await write(first)).toMatchObject({ kind: "posted" });
    for (let again = 0; again < 4; again += 1)
      expect(["already posted", "written already"]).toContain((await write(first)).kind);
    expect(await left("soon")).toBe(0n);
    expect((await batch()).notes).toEqual([first]);
    const { past } = (await readBooksWithPast()) ?? {};
    const weights = past?.postings.filter(({ kind }) => kind === "weighed") ?? [];
    expect(weights.map(({ id, entries }) => [id, entries.map(({ place }) => place.kind)])).toEqual([
      ["w", ["shelf", "batch"]],
    ]);
  });

  test("[BENCH-6] the plan asks for what was not weighed yet, and for no more", async () => {
    await write(note("weighed", "w", { net: g("600"), more: true }));
    const { workshop, desk } = await books();
    const inBatches = inBatchesOf(desk.batches);
    const planned = plan(workshop, TODAY, preparedFor(workshop, TODAY, inBatches));
    const oil = planned.runs[0]?.draws.find(({ material: { id } }) => id === "oil");
    expect(oil).toMatchObject({ need: g("400"), there: g("900"), drawn: g("400") });
    // 600 g stand in the batch and 900 g on the shelf: fifteen units of 100 g, and as many jars and more
    expect(planned.runs[0]).toMatchObject({ makeable: true, mostUnits: 15n });
    expect(plan(workshop, TODAY).runs[0], "without the batch").toMatchObject({ makeable: false });
  });

  test("[BENCH-6] the report asks for no more either, from the store and from a file", async () => {
    await write(note("weighed", "w", { net: g("600"), more: true }));
    const open = await readBooksWithPast();
    if (open === null) throw new Error("no workshop");
    const saved = path.join(path.dirname(storeFile()), "saved.json");
    writeFileSync(saved, writeWorkshopFile(open.workshop, open.past));
    const report = async (...given: readonly string[]) => {
      const told = await runChild("lib/commands/report.ts", [...given, "--json"], { STILLROOM_STORE: storeFile() });
      expect(told).toMatchObject({ code: 0, err: "" });
      return (JSON.parse(told.out) as { readonly runs: readonly unknown[] }).runs[0];
    };
    // 900 g of 1000 g stand on the shelf, and 600 g are in the batch
    const asked = { run: "r", makeable: true, mostUnits: 15, short: [] };
    expect(await report()).toMatchObject(asked);
    expect(await report("--workshop", saved)).toMatchObject(asked);
  });

  test("[BENCH-3] outside the tolerance a weight is refused, or kept with a reason", async () => {
    const off = { net: g("589.9"), lot: "soon" };
    expect(await write(note("weighed", "w", off))).toMatchObject({
      kind: "out of tolerance",
      judged: { off: -g("410.1"), isTenfold: false },
    });
    expect(await write(note("weighed", "w", { ...off, why: "the drum was empty" }))).toMatchObject({ kind: "posted" });
    expect((await batch()).notes).toMatchObject([{ why: "the drum was empty" }]);
  });

  test.each([
    { says: "at the tolerance", net: "990", told: "posted" },
    { says: "just outside it", net: "989.9", told: "out of tolerance" },
    { says: "over it by the tolerance", net: "1010", told: "posted" },
    { says: "ten times", net: "10000", told: "out of tolerance", isTenfold: true },
    { says: "a tenth", net: "100", told: "out of tolerance", isTenfold: true },
  ])("[BENCH-3] $says", async ({ net, told, isTenfold }) => {
    const { workshop, desk } = shop();
    await openBooks({ workshop: { ...workshop, lots: [lot("big", "oil", "20000", "1"), ...workshop.lots] }, desk });
    await startBatch(starting());
    const answer = await write(note("weighed", "w", { lot: "big", net: g(net) }));
    expect(answer).toMatchObject({ kind: told, ...(isTenfold && { judged: { isTenfold } }) });
  });

  test("[BENCH-5] two devices that weigh the same line count once: the second is told what the first wrote", async () => {
    await write(note("weighed", "tablet", { net: g("600"), more: true }));
    const late = note("weighed", "phone", { lot: "late", net: g("1000") });
    expect(await write(late)).toMatchObject({ kind: "weighed already", by: { key: "tablet" } });
    const rest = note("weighed", "phone", { lot: "late", net: g("400") });
    expect(await write(rest, ["tablet"])).toMatchObject({ kind: "posted" });
    // The line is done: one more weight of it is a mistake, whoever has seen what.
    expect(await write(note("weighed", "again", { lot: "late" }), ["tablet", "phone"])).toMatchObject({
      kind: "weighed already",
    });
    expect(linesWeighed(await batch())).toMatchObject([{ total: g("1000"), state: "done" }]);
  });

  test("[BENCH-5] eight devices at once write one weight", async () => {
    const told = await Promise.all(
      Array.from({ length: 8 }, (_, at) => write(note("weighed", `d${String(at)}`, { net: g("600"), more: true }))),
    );
    expect(told.filter(({ kind }) => kind === "posted")).toHaveLength(1);
    expect((await batch()).notes).toHaveLength(1);
    expect(await left("soon")).toBe(0n);
  });

  test("[BENCH-3] a lot of another material, none, one that is not there, and an empty one are refused", async () => {
    expect(await write(note("weighed", "w", { lot: "jars" }))).toEqual({
      kind: "lot of another material",
      lot: "jars",
      is: "Material jar",
      wanted: "Material oil",
    });
    expect(await write(note("weighed", "w", { lot: null }))).toMatchObject({ kind: "lot is needed" });
    expect(await write(note("weighed", "w", { lot: "gone" }))).toMatchObject({ kind: "no such lot" });
    expect(await write(note("weighed", "w", { lot: "soon", net: g("1000") }))).toMatchObject({
      kind: "not there",
      there: g("600"),
    });
    expect((await batch()).notes).toEqual([]);
  });

  test("[BENCH-3] a lot that is out of date is drawn only where a reason says so", async () => {
    const { workshop, desk } = shop();
    const old = lot("old", "oil", "2000", "1", { expires: day("2026-11-01") });
    await openBooks({ workshop: { ...workshop, lots: [old, ...workshop.lots] }, desk });
    await startBatch(starting());
    expect(await write(note("weighed", "w", { lot: "old" }))).toMatchObject({ kind: "out of date" });
    expect(await write(note("weighed", "w", { lot: "old", why: "tested again" }))).toMatchObject({ kind: "posted" });
  });

  test("[BENCH-4] a mistake is struck with a reason: both stay, and the shelf has it back", async () => {
    await write(note("weighed", "w", { net: g("600"), more: true }));
    expect(await write(note("struck", "x", { why: null }))).toEqual({ kind: "reason is needed" });
    expect(await write(note("struck", "x"))).toMatchObject({ kind: "posted" });
    expect(await left("soon")).toBe(g("600"));
    expect((await batch()).notes.map(({ key }) => key)).toEqual(["w", "x"]);
    expect(linesWeighed(await batch())).toMatchObject([{ total: 0n, state: "open" }]);
    expect(await write(note("struck", "y"))).toEqual({ kind: "struck already" });
    expect(await write(note("struck", "y", { strikes: "nothing" }))).toEqual({ kind: "no such note" });
    const twice = { key: "z", day: TODAY, realToday: TODAY, reverses: "w", reason: "again" };
    expect(await reversePosting(twice), "not beside the record").toMatchObject({ kind: "belongs to a batch" });
  });

  test("[BENCH-4] temperatures, pH and what was seen are written down, and an addition beside the formula is drawn", async () => {
    expect(await write(note("temperature", "t"))).toEqual({ kind: "written" });
    expect(await write(note("temperature", "t"))).toEqual({ kind: "written already" });
    await write(note("acidity", "a"));
    await write(note("seen", "s"));
    expect(await write(note("added", "d"))).toMatchObject({ kind: "posted" });
    expect((await batch()).notes.map(({ kind }) => kind)).toEqual(["temperature", "acidity", "seen", "added"]);
    expect(await left("late")).toBe(g("895"));
    expect(massIn(await batch())).toBe(g("5"));
    await write(note("struck", "x", { strikes: "t" }));
    expect((await batch()).notes.at(-1)).toMatchObject({ kind: "struck", strikes: "t" });
  });
});

describe("closing", () => {
  beforeEach(async () => {
    await startBatch(starting());
  });

  test("[BENCH-7] the batch gives what it holds to the jars, at what they cost, and the run is closed", async () => {
    await weighAll();
    expect(await write(note("closed", "c"), [], jars)).toMatchObject({ kind: "posted" });
    const { workshop, desk } = await books();
    expect(workshop.runs.map(({ id }) => id)).toEqual(["s"]);
    expect(desk.closedRuns).toMatchObject([
      { run: { id: "r" }, unitsMade: 10n, versions: [{ formula: "f", number: 1 }] },
    ]);
    expect(stateOf(await batch())).toBe("released");
    // 6.00 and 400 of 900 g of 18.00 are 14.00; ten of 48 jars of 24.00 are 5.00; half an hour is 6.00 and 3.00
    const { past } = (await readBooksWithPast()) ?? {};
    const made = past?.postings.find(({ kind }) => kind === "made");
    const out = made?.entries.find(({ place, lot: { of } }) => place.kind === "finished" && of === "finished");
    expect(out?.value).toEqual({ materials: 19_000_000n, labour: 6_000_000n, overhead: 3_000_000n });
    expect(await finished()).toBe("B-1 10");
    expect(await checkLedger(storeFile())).toMatchObject({ disagreements: [] });
  });

  test("[BENCH-7] lines that were not weighed, and more than was weighed, ask for a reason", async () => {
    expect(await write(note("closed", "c"), [], jars)).toMatchObject({ kind: "lines not weighed" });
    await weighAll();
    expect(await write(note("closed", "c", { units: units(11) }), [], jars)).toMatchObject({
      kind: "more than was weighed",
      weighed: g("1000"),
      holds: g("1100"),
    });
    expect(await write(note("closed", "c", { units: units(0) }), [], jars)).toEqual({ kind: "reason is needed" });
  });

  test("[BENCH-7] a batch that is given up is a loss with a reason, and its run is closed with nothing", async () => {
    await write(note("weighed", "w", { net: g("600"), more: true }));
    const given = note("closed", "c", { units: units(0), why: "the emulsion broke" });
    expect(await write(given)).toMatchObject({ kind: "posted" });
    expect(stateOf(await batch())).toBe("given up");
    expect(await finished()).toBe("");
    expect(await left("soon")).toBe(0n);
    const { past } = (await readBooksWithPast()) ?? {};
    const lost = past?.postings.flatMap(({ entries }) => entries.filter(({ place }) => place.kind === "lost")) ?? [];
    expect(lost.reduce((sum, { value }) => sum + value.materials, 0n)).toBe(6_000_000n);
    expect(await checkLedger(storeFile())).toMatchObject({ disagreements: [] });
  });

  test("[BENCH-8] what is held is in no stock until it is released", async () => {
    await weighAll();
    await write(note("closed", "c", { held: true }), [], jars);
    expect(stateOf(await batch())).toBe("held");
    expect(await finished()).toBe("B-1 0");
    await write(note("seen", "s", { what: "Viscosity", found: "12000 mPa·s" }));
    expect(await write(note("released", "ok"))).toMatchObject({ kind: "posted" });
    expect(await finished()).toBe("B-1 10");
    expect(stateOf(await batch())).toBe("released");
  });

  test("[BENCH-8] what is rejected is lost with its reason; afterwards the record is only added to", async () => {
    await weighAll();
    await write(note("closed", "c", { held: true }), [], jars);
    expect(await write(note("rejected", "no", { why: null }))).toEqual({ kind: "reason is needed" });
    expect(await write(note("rejected", "no"))).toMatchObject({ kind: "posted" });
    expect(await finished()).toBe("B-1 0");
    for (const kind of ["weighed", "added", "struck", "seen", "closed", "released"] as const)
      expect(await write(note(kind, `late ${kind}`)), kind).toEqual({ kind: "not now", state: "rejected" });
    expect(await write(note("annexed", "more"))).toEqual({ kind: "written" });
    expect(await checkLedger(storeFile())).toMatchObject({ disagreements: [] });
  });

  test("[BENCH-4, FILE-5] a file carries batches with every note, byte for byte, as version 5", async () => {
    await weighAll();
    await write(note("acidity", "a"));
    await write(note("closed", "c", { held: true }), [], jars);
    const before = await readBooksWithPast();
    if (before === null) throw new Error("no workshop");
    const text = writeWorkshopFile(before.workshop, before.past);
    expect(text).toContain('"version": 5');
    const read = readWorkshopFile(new TextEncoder().encode(text), TODAY);
    if (read.kind !== "read" || read.past === undefined) throw new Error(JSON.stringify(read));
    expect(read.past.batches).toEqual(before.desk.batches);
    expect(writeWorkshopFile(read.workshop, read.past)).toBe(text);
  });
});

test("[BENCH-5] a batch that is open holds what was weighed, with its value", async () => {
  await startBatch(starting());
  await weighAll();
  const { past } = (await readBooksWithPast()) ?? {};
  const standing = standingAfter(movesOf(past?.postings ?? []));
  expect(latest(standing, materialLot("soon"), batchOf("r"))).toMatchObject({ quantity: g("600") });
  expect(latest(standing, materialLot("late"), batchOf("r")).value.materials).toBe(8_000_000n);
});
