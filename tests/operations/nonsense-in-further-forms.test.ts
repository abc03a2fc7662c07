/**
 * Nonsense typed into the forms that are no record's own: a product in one go, drafts, swaps, trials, batches and what is
 * asked of a purchase. Refused at its field, or right; never an error, nothing typed lost, nothing kept. @rule FILE-3
 */
import { beforeEach, describe, expect, test, vi } from "vitest";
import { NOT_SENT as NOT_ASKED } from "@/app/_ui/asking-answer";
import { NOT_SENT } from "@/app/_ui/form-answer";
import { keep } from "@/app/book/actions";
import { keepOrFinish } from "@/app/book/drafts/actions";
import { keepFirstProduct } from "@/app/book/first/actions";
import { planTheBatches } from "@/app/book/formulas/[id]/batch/actions";
import { keepSwap, swapAsNextVersion } from "@/app/book/formulas/[id]/swap/actions";
import { correctTheTrial } from "@/app/book/formulas/[id]/trials/[trial]/actions";
import { addTheReading, keepTheTrial, promoteTheTrial } from "@/app/book/formulas/[id]/trials/actions";
import { readFrame } from "@/lib/edge/forms/buying-frame";
import { formFromRecord } from "@/lib/edge/forms/form-reading";
import { readSwap, type TypedSwap } from "@/lib/edge/forms/swap-form";
import { readAims } from "@/lib/edge/forms/trial-aims";
import { typedSeen } from "@/lib/edge/forms/trial-seen";
import { writtenRecords } from "@/lib/edge/forms/written-record";
import { type Act, answered, type Typed } from "../helpers/forms-sent";
import { books, shop, TODAY } from "../helpers/ledger-shop";
import { formula, g, lot, material } from "../helpers/notation";
import { openBooks } from "../helpers/store-desk";
import { storeForEachTest } from "../helpers/store-folder";

vi.mock("next/cache", () => ({ revalidatePath: () => undefined }));
vi.mock("next/navigation", async () => {
  const { goOn } = await import("../helpers/forms-sent");
  return { RedirectType: {}, redirect: goOn };
});

storeForEachTest();

beforeEach(async () => {
  const { workshop, desk } = shop();
  await openBooks({
    workshop: {
      ...workshop,
      settings: { ...workshop.settings, today: TODAY },
      materials: [...workshop.materials, material("wax")],
      formulas: [formula("f", { oil: "90", wax: "10" })],
      lots: [...workshop.lots, lot("w", "wax", "500", "5")],
    },
    desk,
  });
});

const SCRIPT = "<script>alert(1)</script>";
const HUGE = "9".repeat(30);
const PASTED = "Glycerin 5 %\n".repeat(10_000);
const NONSENSE = [HUGE, "-5", "1,500", "1e9", "12 furlongs", "abc", SCRIPT, PASTED, "?", "½"];
/** What may stand where anything short may be written, on one line. */
const NO_TEXT = [PASTED];
/** Words of the file or of the program, which say nothing to a maker. */
const UNSAID = /2\^53|undefined|\[object|\bNaN\b|\w\[\d+\]/;

/** Carried hidden, so that the page draws it anew. */
const DRAWN_ANEW = ["formula", "trial", "seen"];

/** Sends each nonsense in each field, and expects it to be refused there with nothing lost and nothing kept. */
async function walked(act: Act, right: Typed, fields: Readonly<Record<string, readonly string[]>>): Promise<void> {
  const before = await books();
  for (const [name, nonsense] of Object.entries(fields))
    for (const each of nonsense) {
      const { says, lost } = await answered(act, { ...right, [name]: each });
      const told = `${name} = ${each.slice(0, 30)}: ${says}`;
      expect(
        says.split(" | ").some((fault) => fault.startsWith(`${name}: `)),
        told,
      ).toBe(true);
      expect(says, told).not.toMatch(UNSAID);
      expect(
        lost.filter((field) => !DRAWN_ANEW.includes(field)),
        told,
      ).toEqual([]);
    }
  expect(await books()).toStrictEqual(before);
}

/** Sends what is right twice: it goes on both times, and is done once. */
async function stands(act: Act, right: Typed): Promise<void> {
  const before = await books();
  expect((await answered(act, right)).says).toMatch(/^goes on/);
  const after = await books();
  expect(after).not.toStrictEqual(before);
  expect((await answered(act, right)).says).toMatch(/^goes on/);
  expect(await books()).toStrictEqual(after);
}

const asking =
  (act: (before: typeof NOT_ASKED, form: FormData) => ReturnType<typeof keepTheTrial>): Act =>
  (form) =>
    act(NOT_ASKED, form);

test("[FILE-3] a product in one go", async () => {
  const act: Act = (form) => keepFirstProduct(NOT_SENT, form);
  const right: Typed = {
    id: "new",
    name: "Hand balm",
    fill: "50 g",
    "lines.0.material": "oil",
    "lines.0.percent": "95",
    "lines.1.material": "Sunflower oil",
    "lines.1.percent": "qs",
    "lines.1.pack": "1 L",
    "lines.1.price": "8.40",
    "lines.1.density": "0.92",
    "packaging.0.material": "Tin",
    "packaging.0.pack": "100 each",
    "packaging.0.price": "45",
    usualRun: "10",
    supplier: "A supplier",
    leadDays: "3",
    deed: "keep",
  };
  await walked(act, right, {
    name: NO_TEXT,
    fill: [...NONSENSE, "", "0 g", "50"],
    "lines.1.material": [...NO_TEXT, ""],
    "lines.1.percent": [...NONSENSE, "", "0", "101"],
    "lines.1.pack": [...NONSENSE, "", "0 mL"],
    "lines.1.price": [...NONSENSE, "", "0"],
    "lines.1.density": [...NONSENSE, "0"],
    "packaging.0.material": [...NO_TEXT, ""],
    "packaging.0.pack": [...NONSENSE, "1.5 each", "100 g"],
    "packaging.0.price": NONSENSE,
    usualRun: [...NONSENSE, "", "0"],
    supplier: [...NO_TEXT, ""],
    leadDays: [...NONSENSE, ""],
  });
  await stands(act, right);
});

describe("[FILE-3] [BOOK-3] a draft", () => {
  const typed: Typed = {
    ...{ draftId: "d", name: "Draft", "lines.0.material": "oil", "lines.0.percent": "40", "lines.0.phase": "A" },
    ...{ "lines.1.material": "wax", "lines.1.percent": "60" },
  };
  const fields = {
    name: NO_TEXT,
    "lines.0.material": ["?", SCRIPT, "gone", ""],
    "lines.0.percent": [...NONSENSE, "0"],
    density: NONSENSE,
  };

  test("that is begun", async () => {
    const begin: Act = (form) => keep("formulas", null, NOT_SENT, form);
    await walked(begin, { ...typed, deed: "draft" }, fields);
    await stands(begin, { ...typed, "lines.1.percent": "20", deed: "draft" });
  });

  test("that is kept on, or made a formula", async () => {
    await answered((form) => keep("formulas", null, NOT_SENT, form), { ...typed, deed: "draft" });
    const { workshop } = await books();
    const [draft] = (await books()).desk.drafts;
    if (draft === undefined) throw new Error("no draft was kept");
    const record = writtenRecords({ ...workshop, formulas: [draft] }, "formulas")[0] ?? {};
    const right: Typed = { ...formFromRecord("formulas", record), id: "d" };
    const act: Act = (form) => keepOrFinish("d", NOT_SENT, form);
    await walked(act, { ...right, deed: "draft" }, fields);
    await walked(act, { ...right, deed: "finish" }, fields);
    expect((await answered(act, { ...right, deed: "finish" })).says).toMatch(/^goes on/);
    const after = await books();
    expect([after.desk.drafts, after.workshop.formulas.map(({ id }) => id)]).toEqual([[], ["f", "d"]]);
    // Pressed twice: the draft is gone, as was asked, and nothing is made twice.
    await answered(act, { ...right, deed: "finish" });
    expect(await books()).toStrictEqual(after);
  });
});

describe("[SWAP-1] a swap", () => {
  const right: TypedSwap = { from: "wax", to: "jelly", percent: "8", phase: "" };
  beforeEach(async () => {
    const { workshop, desk } = await books();
    await openBooks({ workshop: { ...workshop, materials: [...workshop.materials, material("jelly")] }, desk });
  });

  test("is refused at its field, before anything is kept", async () => {
    const before = await books();
    const { workshop } = before;
    for (const [field, nonsense] of [
      ["from", ["jelly", "jar", SCRIPT, "?wax", ""]],
      ["to", ["wax", "jar", SCRIPT, "?jelly", ""]],
      ["percent", [...NONSENSE, "0", "101", "0.00001"]],
    ] as const)
      for (const each of nonsense) {
        const typed = { ...right, [field]: each };
        const read = readSwap(workshop, "f", typed);
        expect([each.slice(0, 20), read.kind === "refused" && read.field]).toEqual([each.slice(0, 20), field]);
        expect(await keepSwap("f", typed, "d")).toMatchObject({ kind: "refused" });
      }
    expect(await books()).toStrictEqual(before);
  });

  test("stands as a draft once, and as the next version only with a reason", async () => {
    await stands(() => keepSwap("f", right, "d") as never, {});
    const act = asking((before, form) => swapAsNextVersion("f", right, "", before, form));
    const before = await books();
    for (const why of ["", PASTED]) {
      const { says, lost } = await answered(act, { why });
      expect([says.startsWith("why: "), lost]).toEqual([true, []]);
    }
    // Drawn from another state of the formula than the one that stands.
    expect((await answered(act, { why: "cheaper" })).says).not.toMatch(/^goes on/);
    expect(await books()).toStrictEqual(before);
  });
});

describe("[TRIAL-1] [TRIAL-3] a trial", () => {
  const right: Typed = {
    ...{ key: "t", formula: "f", name: "8 % wax", day: "2026-11-25", notes: "", shelf: "no" },
    ...{ "line.0.weighed": "92 g", "line.0.of": "material oil", "line.1.weighed": "8 g", "line.1.of": "material wax" },
    ...{ after: "", ph: "", viscosity: "", appearance: "" },
  };
  const fields = {
    name: [...NO_TEXT, ""],
    day: ["", "?", "tomorrow", SCRIPT, HUGE, PASTED, "2026-02-30"],
    "line.0.weighed": [...NONSENSE, "5 %"],
    "line.0.of": [SCRIPT, "", "?"],
    after: NONSENSE,
    ph: [...NONSENSE, "15"],
    viscosity: NONSENSE,
  };

  test("is refused at its field, and stands once", async () => {
    const act = asking(keepTheTrial);
    await walked(act, right, fields);
    await walked(act, { ...right, shelf: "yes" }, { ...fields, day: [...fields.day, "2026-11-26"] });
    await stands(act, right);
    expect((await books()).desk.trials).toHaveLength(1);
  });

  test("is corrected, read of and promoted likewise", async () => {
    await answered(asking(keepTheTrial), right);
    const [trial] = (await books()).desk.trials;
    if (trial === undefined) throw new Error("no trial was kept");
    const seen = typedSeen(trial);
    const put = { ...right, trial: trial.id, seen };
    await walked(asking(correctTheTrial), put, {
      name: fields.name,
      day: fields.day,
      "line.0.weighed": fields["line.0.weighed"],
      "line.0.of": fields["line.0.of"],
    });
    const reading = { trial: trial.id, formula: "f", after: "1 day", ph: "5.5", viscosity: "", appearance: "" };
    await walked(asking(addTheReading), reading, { after: NONSENSE, ph: [...NONSENSE, "15"], viscosity: NONSENSE });
    await stands(asking(addTheReading), reading);
    const promoted = { trial: trial.id, formula: "f", why: "better" };
    await walked(asking(promoteTheTrial), promoted, { why: [...NO_TEXT, ""] });
    await stands(asking(promoteTheTrial), promoted);
    expect((await answered(asking(correctTheTrial), { ...put, name: "8 % wax, again" })).says).toMatch(
      /^goes on|meanwhile/,
    );
  });

  test("has aims that are read from its address", async () => {
    const [of] = (await books()).workshop.formulas;
    if (of === undefined) throw new Error("no formula");
    const aims = (typed: Partial<Parameters<typeof readAims>[1]>) =>
      readAims(of, { size: "100 g", line: "1", percent: "8", ...typed });
    for (const size of [...NONSENSE, "0 g"]) expect(aims({ size })).toMatchObject({ kind: "refused", field: "size" });
    for (const percent of [...NONSENSE, "0", "100"])
      expect([percent.slice(0, 20), aims({ percent })]).toMatchObject([
        percent.slice(0, 20),
        { kind: "refused", field: "percent" },
      ]);
    for (const line of NONSENSE) expect(aims({ line })).toMatchObject({ kind: "aims" });
    expect(aims({})).toMatchObject({ kind: "aims" });
  });
});

test("[FILE-3] batches of a size are planned for a day that there is", async () => {
  const act = asking(planTheBatches);
  const right = { key: "batch", product: "p", units: "10 10", day: "2026-11-27" };
  await walked(act, right, { day: ["", "?", "tomorrow", SCRIPT, HUGE, PASTED, "2026-02-30"] });
  const before = await books();
  for (const forged of [
    { units: "" },
    { units: SCRIPT },
    { units: "-5" },
    { units: "1 ".repeat(5000) },
    { key: "" },
    { product: "gone" },
  ]) {
    const { says, lost } = await answered(act, { ...right, ...forged });
    expect([says.startsWith("goes on"), lost.filter((name) => !(name in forged) && name !== "key")]).toEqual([
      false,
      [],
    ]);
    expect(says).not.toMatch(UNSAID);
  }
  expect(await books()).toStrictEqual(before);
  await stands(act, right);
});

test("[BUY-10] [BUY-17] [BUY-18] what is asked of a purchase is told where it makes no sense, and then counts as not asked", async () => {
  const { workshop } = await books();
  const open = readFrame({}, workshop);
  expect(open.faults).toEqual({ days: null, by: null, cap: null, left: null });
  const none = { days: null, by: null, cap: null, left: null };
  for (const [field, nonsense] of [
    ["days", [...NONSENSE, "", "0", "9999"]],
    ["by", [...NONSENSE, "2026-02-30", "3/4/2026"]],
    ["cap", NONSENSE],
    ["left", [...NONSENSE, "101"]],
  ] as const)
    for (const each of nonsense) {
      const typed = { cover: field === "days" ? "days" : "as set", [field]: each };
      const { asked, faults, frame } = readFrame(typed, workshop);
      expect({ ...faults, [field]: null }, each.slice(0, 20)).toEqual(none);
      expect(faults[field], each.slice(0, 20)).toMatch(/./);
      expect(faults[field]).not.toMatch(UNSAID);
      expect(frame).toEqual(open.frame);
      // What was typed stands in its field again, unless it is too long for any figure.
      expect(asked[field]).toBe(each.slice(0, 200));
    }
  const forged = { cover: SCRIPT, arrival: HUGE, out: [SCRIPT], only: ["gone"], pin: ["?"], keep: "perhaps" };
  expect(readFrame(forged, workshop).frame).toEqual(open.frame);
  const right = { cover: "days", days: "14", by: "2026-11-30", cap: "25.50", left: "50", keep: "yes" };
  expect(readFrame(right, workshop)).toMatchObject({
    frame: { cover: { kind: "days", days: 14 }, cap: 25_500_000n, leftOvers: 500_000n, mustKeep: true },
    faults: none,
  });
  expect(g("1")).toBe(1_000_000n);
});
