/** Versions, trials and batches in the store: what a run freezes, what a trial takes, and that errors stop a run. */
import { beforeEach, expect, test } from "vitest";
import { type Trial, type TrialLine } from "@/lib/domain/formula-book/trials";
import { standingVersion } from "@/lib/domain/formula-book/versions";
import type { Formula, Workshop } from "@/lib/domain/workshop";
import { madeBySwap, putFormula, putSwapInPlace } from "@/lib/edge/forms/next-version";
import { beginVersion } from "@/lib/operations/begin-version";
import { keepFormula } from "@/lib/operations/keep-formula";
import { keepRecord } from "@/lib/operations/keep-record";
import { addReading, keepTrialAlone, keepTrialFromShelf } from "@/lib/operations/keep-trial";
import { makePlannedRun } from "@/lib/operations/make-run";
import { planBatches } from "@/lib/operations/plan-batches";
import { reversePosting } from "@/lib/operations/reverse-posting";
import { checkLedger } from "@/lib/store/ledger/check-ledger";
import { storeFile } from "@/lib/store/store-file";
import { books, lots, making, shop, TODAY, units } from "../helpers/ledger-shop";
import { decimal, formula, g, material, percent } from "../helpers/notation";
import { openBooks } from "../helpers/store-desk";
import { storeForEachTest } from "../helpers/store-folder";

storeForEachTest();

const wax = material("wax");
const balm = formula("f", { oil: "100" });
const harder: Formula = { ...balm, lines: formula("f", { oil: "qs", wax: "10" }).lines };

beforeEach(() => {
  const { workshop, desk } = shop();
  return openBooks({ workshop: { ...workshop, materials: [...workshop.materials, wax] }, desk });
});

const keep = (is: Formula, why: string | null) =>
  keepFormula(
    { change: (workshop: Workshop) => putFormula(workshop, is, TODAY), stale: () => null },
    { formula: "f", why, asNext: false, realToday: TODAY },
  );

const reversal = (reverses: string, key = `back ${reverses}`) => ({
  key,
  day: TODAY,
  realToday: TODAY,
  reverses,
  reason: "a mistake",
});

const numbers = async (): Promise<readonly number[]> => (await books()).desk.versions.map(({ number }) => number);

test("[VERSION-2] a run notes the versions that it was made by, and what is changed afterwards becomes the next", async () => {
  expect(await keep({ ...balm, density: null, keepsDays: 90 }, null), "no batch yet").toMatchObject({
    kind: "changed",
  });
  await makePlannedRun(making("r"));
  expect((await books()).desk.closedRuns.map(({ versions }) => versions)).toEqual([[{ formula: "f", number: 1 }]]);
  expect(await keep(harder, null)).toEqual({ kind: "why is needed", number: 1 });
  expect(await numbers()).toEqual([]);
  expect(await keep(harder, "It ran in summer.")).toMatchObject({ kind: "changed" });
  const { workshop, desk } = await books();
  expect(desk.versions).toMatchObject([
    { number: 1, content: { keepsDays: 90 } },
    { number: 2, content: null, why: "It ran in summer.", since: TODAY },
  ]);
  expect(workshop.formulas.find(({ id }) => id === "f")?.lines).toEqual(harder.lines);
  await makePlannedRun(making("s"));
  expect((await books()).desk.closedRuns.at(-1)?.versions).toEqual([{ formula: "f", number: 2 }]);
});

test("[VERSION-2] a run that is taken back frees its version, and leaves what other runs noted", async () => {
  await makePlannedRun(making("r"));
  await makePlannedRun(making("s", { draws: [{ lot: "late", quantity: g("500"), spilt: 0n }] }));
  expect(await reversePosting(reversal("made r"))).toMatchObject({ kind: "posted" });
  const { desk } = await books();
  expect(desk.closedRuns.map(({ run, versions }) => [run.id, versions])).toEqual([
    ["s", [{ formula: "f", number: 1 }]],
  ]);
  expect(standingVersion(desk, balm).usedBy).toEqual(["s"]);
  await reversePosting(reversal("made s"));
  expect(standingVersion((await books()).desk, balm).usedBy).toEqual([]);
  expect(await checkLedger(storeFile())).toMatchObject({ disagreements: [] });
});

test("[VERSION-5] an error of the checks stops a run, and nothing is posted", async () => {
  const { workshop, desk } = shop();
  const materials = workshop.materials.map((one) => (one.id === "oil" ? { ...one, addBelow: decimal("40") } : one));
  const hot: Formula = {
    ...balm,
    phases: [{ name: "A", temperature: decimal("75") }],
    lines: balm.lines.map((line) => ({ ...line, phase: "A" })),
  };
  await openBooks({ workshop: { ...workshop, materials, formulas: [hot] }, desk });
  const before = await lots();
  expect(await makePlannedRun(making("r"))).toMatchObject({
    kind: "formula has errors",
    findings: [{ code: "too hot for it" }],
  });
  expect(await lots()).toBe(before);
});

const trial = (id: string, weighed: string): Omit<Trial, "posting"> => ({
  id,
  formula: "f",
  name: id,
  day: TODAY,
  notes: null,
  lines: [{ of: { kind: "material", id: "oil" }, weighed: g(weighed), phase: null } satisfies TrialLine],
  readings: [],
});
const fromShelf = (id: string, weighed: string) =>
  keepTrialFromShelf({ key: id, day: TODAY, realToday: TODAY, reason: `trial ${id}`, trial: trial(id, weighed) });

test("[TRIAL-2] a trial takes what was weighed off the shelf, once, and is refused whole where that is not there", async () => {
  expect(await fromShelf("t", "20")).toMatchObject({ kind: "posted" });
  expect(await fromShelf("t", "20")).toMatchObject({ kind: "already kept" });
  expect(await lots()).toBe("late 900 for 18, soon 580 for 5.8, jars 48 for 24");
  expect(await fromShelf("u", "1481")).toMatchObject({
    kind: "short",
    short: [{ material: { id: "oil" }, by: g("1") }],
  });
  expect((await books()).desk.trials.map(({ id, posting }) => [id, posting])).toEqual([["t", "t"]]);
  expect(await keepTrialAlone({ trial: trial("u", "1481") })).toMatchObject({ kind: "kept" });
  expect(await keepTrialAlone({ trial: trial("u", "1481") })).toMatchObject({ kind: "already kept" });
  expect(await checkLedger(storeFile())).toMatchObject({ disagreements: [] });
});

test("[BOOK-4] what a trial has weighed stays weighed, for a file with it counted could not be opened again", async () => {
  const weighed = {
    ...trial("t", "20"),
    lines: [{ of: { kind: "material", id: "wax" }, weighed: g("2"), phase: null } as const],
  };
  const counting = () =>
    keepRecord({
      change: (workshop: Workshop) => ({
        kind: "changed" as const,
        workshop: {
          ...workshop,
          materials: workshop.materials.map((one) => (one.id === "wax" ? { ...one, measure: "count" as const } : one)),
        },
      }),
      stale: () => null,
    });
  await keepTrialAlone({ trial: weighed });
  expect(await counting()).toEqual({ kind: "measure is held", by: ["t"] });
  expect((await books()).workshop.materials.find(({ id }) => id === "wax")?.measure).toBe("mass");
});

test("[TRIAL-3] readings are added, each once however often it is sent", async () => {
  await keepTrialAlone({ trial: trial("t", "20") });
  const reading = { afterMinutes: 1440, ph: null, viscosity: decimal("9000"), appearance: null };
  expect(await addReading("t", reading)).toMatchObject({ kind: "kept" });
  expect(await addReading("t", reading)).toMatchObject({ kind: "already kept" });
  expect(await addReading("gone", reading)).toMatchObject({ kind: "no such trial" });
  expect((await books()).desk.trials[0]?.readings).toEqual([reading]);
});

test("[TRIAL-5] what is begun is the next version, whether or not a batch has used the one that stands; twice it is one", async () => {
  const begin = () =>
    beginVersion({
      formula: "f",
      why: "Harder.",
      realToday: TODAY,
      change: ({ workshop }) => putFormula(workshop, harder, TODAY),
    });
  expect(await begin()).toMatchObject({ kind: "begun" });
  expect(await begin()).toMatchObject({ kind: "stands already" });
  expect(await numbers()).toEqual([1, 2]);
});

test("[SWAP-1, VERSION-2] a swap that is sent twice stands already, though nothing is left to be swapped", async () => {
  const typed = { from: "oil", to: "wax", percent: "", phase: "" };
  const made = madeBySwap((await books()).workshop, "f", typed);
  const swap = (wanted = made) =>
    beginVersion({
      formula: "f",
      why: "Harder.",
      realToday: TODAY,
      change: (all) => putSwapInPlace(all, "f", typed, wanted, TODAY),
    });
  expect(await swap()).toMatchObject({ kind: "begun" });
  expect(await swap()).toMatchObject({ kind: "stands already" });
  expect(await numbers()).toEqual([1, 2]);
  expect(await swap("something else"), "a page that was drawn of another formula").toMatchObject({ kind: "refused" });
});

test("[VERSION-2] a version with a round of premixes in it is not begun", async () => {
  const round: Formula = {
    ...balm,
    lines: [{ of: { kind: "formula", id: "f" }, percent: percent("100"), phase: null }],
  };
  const told = await beginVersion({
    formula: "f",
    why: "-",
    realToday: TODAY,
    change: ({ workshop }) => putFormula(workshop, round, TODAY),
  });
  expect(told.kind).toBe("refused");
  expect(await numbers()).toEqual([]);
});

test("[SCALE-5] batches are planned as runs of their own, all or none, and once", async () => {
  const asked = { run: { id: "b", product: "p", date: TODAY }, units: [units(12), units(12), units(11)] };
  expect(await planBatches(asked)).toMatchObject({ kind: "all planned" });
  expect(await planBatches(asked)).toMatchObject({ kind: "all planned" });
  const planned = (await books()).workshop.runs.filter(({ date }) => date === TODAY);
  expect(planned.map(({ id, units: each }) => [id, each])).toEqual([
    ["b", 12n],
    ["b-2", 12n],
    ["b-3", 11n],
  ]);
  expect(await planBatches({ ...asked, units: [units(12), units(13)] })).toMatchObject({ kind: "planned otherwise" });
});
