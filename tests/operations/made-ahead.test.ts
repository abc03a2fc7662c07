/** A premix made ahead through the ledger: made, drawn, costed late, traced, taken back, written and read. */
import path from "node:path";
import { beforeEach, expect, test } from "vitest";
import type { Books } from "@/lib/domain/desk";
import { makingIn } from "@/lib/domain/ledger/making";
import { materialLot, type Value } from "@/lib/domain/ledger/posting";
import type { IntoBatch } from "@/lib/domain/ledger/trace";
import { readWorkshopFile, writeWorkshopFile } from "@/lib/edge/workshop-file";
import { standingVersion } from "@/lib/domain/formula-book/versions";
import { beginVersion } from "@/lib/operations/begin-version";
import { postLateCost } from "@/lib/operations/late-cost";
import { type MakeRun, makePlannedRun } from "@/lib/operations/make-run";
import { reversePosting } from "@/lib/operations/reverse-posting";
import type { Lot } from "@/lib/domain/workshop";
import { changeBooks } from "@/lib/store/change-books";
import { checkLedger } from "@/lib/store/ledger/check-ledger";
import { readPosting, readStock, readTraceForward } from "@/lib/store/ledger/ledger-answers";
import { readBooksWithPast } from "@/lib/store/ledger/past";
import { closeStore } from "@/lib/store/open-store";
import { replaceWorkshop } from "@/lib/store/replace-workshop";
import { books, finished, lots, TODAY, units } from "../helpers/ledger-shop";
import {
  day,
  decimal,
  formula,
  g,
  grams,
  inGrams,
  lot,
  material,
  money,
  product,
  run,
  supplier,
} from "../helpers/notation";
import { booksOf, openBooks } from "../helpers/store-desk";
import { storeForEachTest } from "../helpers/store-folder";
import { bareWorkshop } from "../helpers/store-workshop";

/** Five bottles of 100 g take 400 g of oil and 100 g of herb; four jars of 100 g take 200 g of what is in them. */
const shop = (): Books =>
  booksOf(
    bareWorkshop("Shop", {
      settings: { ...bareWorkshop("").settings, name: "Shop", labourPerHour: money("12"), overheadPerHour: money("6") },
      suppliers: [supplier("s")],
      materials: ["oil", "herb", "inf", "water"].map((id) => material(id)),
      lots: [lot("O", "oil", "1000", "10"), lot("H", "herb", "400", "4"), lot("W", "water", "5000", "0")],
      formulas: [formula("infused", { oil: "80", herb: "20" }), formula("salve", { "=infused": "50", water: "qs" })],
      products: [
        product("stock", "infused", { madeInto: "inf", labourMinutesPerRun: decimal("30") }),
        product("jar", "salve", { heel: grams("40") }),
      ],
      runs: [run("a", "stock", "2026-11-24", 5), run("b", "jar", "2026-11-25", 4)],
    }),
  );

const { folder } = storeForEachTest();
beforeEach(() => openBooks(shop()));

const asked = { day: TODAY, realToday: TODAY };
const making = (id: "a" | "b", given: Partial<MakeRun> = {}): MakeRun => ({
  ...asked,
  key: `made ${id}`,
  run:
    id === "a"
      ? { id, product: "stock", date: day("2026-11-24"), units: units(5) }
      : { id, product: "jar", date: day("2026-11-25"), units: units(4) },
  unitsMade: id === "a" ? units(5) : units(4),
  finishedLot: { id: id === "a" ? "I" : "F", bestBefore: day("2027-05-25") },
  draws: null,
  outOfDate: "refuse",
  minutes: null,
  note: null,
  ...given,
});
const back = (id: "a" | "b") =>
  reversePosting({ ...asked, key: `back ${id}`, reverses: `made ${id}`, reason: "a slip" });
const inShort = ({ materials, labour, overhead }: Value): string =>
  [materials, labour, overhead].map(inGrams).join(" + ");

const valueOf = async (id: string): Promise<string> => {
  const found = (await readStock()).find((each) => each.lot.id === id && each.quantity > 0n);
  return found
    ? `${found.lot.of === "finished" ? found.quantity.toString() : inGrams(found.quantity)} worth ${inShort(found.value)}`
    : "none";
};

test("[AHEAD-7] a run that makes a material leaves a lot of it, with what it cost, and no finished lot", async () => {
  expect(await makePlannedRun(making("a"))).toMatchObject({ kind: "posted" });
  expect(await lots()).toBe("O 600 for 6, H 300 for 3, W 5000 for 0, I 500 for 5");
  expect(await finished()).toBe("");
  expect(await valueOf("I")).toBe("500 worth 5 + 6 + 3");
  const { workshop } = await books();
  expect(workshop.lots.at(-1)).toMatchObject({ material: "inf", received: TODAY, expires: day("2027-05-25") });
  const posting = await readPosting("made a");
  const made = posting && makingIn(posting.posting);
  expect(made && [made.lot, made.units, made.missing, made.draws.map((each) => each.lot)]).toEqual([
    materialLot("I"),
    g("500"),
    0n,
    ["H", "O"],
  ]);
});

test("[AHEAD-7] units missing from the plan are lost as so much of the lot, a batch that failed whole", async () => {
  await makePlannedRun(making("a", { unitsMade: units(4) }));
  expect(await valueOf("I")).toBe("400 worth 4 + 4.8 + 2.4");
  await back("a");
  expect(await makePlannedRun(making("a", { key: "again", finishedLot: { id: "I", bestBefore: null } }))).toMatchObject(
    {
      kind: "finished lot exists",
    },
  );
  const failed = await makePlannedRun(
    making("a", { key: "failed", unitsMade: units(0), finishedLot: { id: "I2", bestBefore: null } }),
  );
  expect(failed.kind === "posted" && inShort(failed.lost)).toBe("5 + 6 + 3");
  expect(await lots()).toBe("O 600 for 6, H 300 for 3, W 5000 for 0, I 0 for 0");
});

test("[AHEAD-4, LEDGER-11] closing a run draws the lot instead of the premix, and loses of it what the heel keeps", async () => {
  await makePlannedRun(making("a"));
  await makePlannedRun(making("b"));
  // The heel makes a batch of 440 g: 220 g of each, of which 20 g stay in the vessel.
  expect(await lots()).toBe("O 600 for 6, H 300 for 3, W 4780 for 0, I 280 for 2.8");
  expect(await valueOf("F")).toBe("4 worth 2.2 + 2.64 + 1.32");
  const trace = await readTraceForward("I");
  expect(trace).toMatchObject({ unaccounted: 0n, batches: [{ run: "b", taken: g("220"), lostWithinPlan: g("20") }] });
});

const versionsOf = async (id: string): Promise<readonly string[] | undefined> =>
  (await books()).desk.closedRuns
    .find((closed) => closed.run.id === id)
    ?.versions.map(({ formula: of, number }) => `${of} ${String(number)}`);

/** Another version of the infused oil, once one was made. */
const begunAnew = async () => {
  const told = await beginVersion({
    formula: "infused",
    why: "less herb",
    realToday: TODAY,
    change: ({ workshop }) => ({
      kind: "changed" as const,
      workshop: {
        ...workshop,
        formulas: workshop.formulas.map((each) =>
          each.id === "infused" ? formula("infused", { oil: "90", herb: "10" }) : each,
        ),
      },
    }),
  });
  expect(told.kind).toBe("begun");
};

test("[VERSION-6] a run that draws a pot is made by the version that the pot was made by, and not by the one that stands", async () => {
  await makePlannedRun(making("a"));
  await begunAnew();
  await makePlannedRun(making("b"));
  expect(await versionsOf("a")).toEqual(["infused 1"]);
  expect(await versionsOf("b")).toEqual(["salve 1", "infused 1"]);
});

test("[VERSION-6] one that draws what is left of a pot and opens the rest is made by both versions", async () => {
  await makePlannedRun(making("a", { unitsMade: units(1) }));
  await begunAnew();
  await makePlannedRun(making("b"));
  // 100 g of 220 g stand ready; 120 g are opened into 108 g of oil and 12 g of herb.
  expect(await lots()).toBe("O 492 for 4.92, H 288 for 2.88, W 4780 for 0, I 0 for 0");
  expect(await versionsOf("b")).toEqual(["salve 1", "infused 2", "infused 1"]);
  const { workshop, desk } = await books();
  const infused = workshop.formulas.find(({ id }) => id === "infused");
  expect(infused && standingVersion(desk, infused).usedBy).toEqual(["b"]);
});

test("[VERSION-6] a pot that no run made notes none, and draws that the maker put right are what counts", async () => {
  const bought = lot("X", "inf", "500", "5", { received: day("2026-11-01") });
  const { workshop, desk } = shop();
  await openBooks({ workshop: { ...workshop, lots: [...workshop.lots, bought] }, desk });
  const given = (id: string, weight: string) => ({ lot: id, quantity: g(weight), spilt: 0n });
  await makePlannedRun(making("b", { draws: [given("X", "220"), given("W", "220")] }));
  expect(await versionsOf("b")).toEqual(["salve 1"]);
  await back("b");
  await makePlannedRun(
    making("b", {
      key: "again",
      finishedLot: { id: "G", bestBefore: null },
      draws: [given("O", "176"), given("H", "44"), given("W", "220")],
    }),
  );
  expect(await versionsOf("b"), "the pot was left alone").toEqual(["salve 1", "infused 1"]);
});

test("[AHEAD-8] a trace goes through the lot to the jars that hold it", async () => {
  await makePlannedRun(making("a"));
  await makePlannedRun(making("b"));
  const { places, batches, unaccounted } = await readTraceForward("O");
  expect([places.map(({ place, quantity }) => `${place} ${inGrams(quantity)}`), unaccounted]).toEqual([
    ["shelf 600"],
    0n,
  ]);
  const said = ({ run: of, taken, lostWithinPlan, finished: jars, through }: IntoBatch): unknown => [
    `${of} ${inGrams(taken)} less ${inGrams(lostWithinPlan)}`,
    jars?.units.map((each) => `${each.units.toString()} ${each.place} ${inGrams(each.holding)}`),
    through?.places.map(({ place, quantity, holding }) => `${inGrams(quantity)} ${place} ${inGrams(holding)}`),
    through?.batches.map(said),
  ];
  // Of 400 g of oil 224 g are in the 280 g left and 176 g in the 220 g that went on, 16 g of them in the heel.
  expect(batches.map(said)).toEqual([
    ["a 400 less 0", undefined, ["280 shelf 224"], [["b 176 less 16", ["4 finished 160"], undefined, undefined]]],
  ]);
});

test("[AHEAD-8] a late cost of what went into it goes on to where it is", async () => {
  await makePlannedRun(making("a"));
  await makePlannedRun(making("b"));
  const lines = [{ lot: materialLot("O"), amount: money("10") }];
  expect(await postLateCost({ ...asked, key: "freight", reason: "freight", lines })).toMatchObject({ kind: "posted" });
  // 6.00 stay on the shelf; of 4.00 in the batch 280 of 500 go to the lot, 220 of 500 on to the jars.
  expect([await valueOf("O"), await valueOf("I"), await valueOf("F")]).toEqual([
    "600 worth 12 + 0 + 0",
    "280 worth 5.04 + 3.36 + 1.68",
    "4 worth 3.96 + 2.64 + 1.32",
  ]);
});

test("[LEDGER-16] it is taken back once nothing has drawn on it", async () => {
  await makePlannedRun(making("a"));
  await makePlannedRun(making("b"));
  expect(await back("a")).toMatchObject({ kind: "drawn since", refusal: { lot: materialLot("I") } });
  expect(await back("b")).toMatchObject({ kind: "posted" });
  expect(await back("a")).toMatchObject({ kind: "posted" });
  expect(await lots()).toBe("O 1000 for 10, H 400 for 4, W 5000 for 0, I 0 for 0");
  expect((await books()).workshop.runs.map(({ id }) => id)).toEqual(["b", "a"]);
});

test("[LEDGER-22] corrected in the Book it keeps the labour and overhead that stand", async () => {
  await makePlannedRun(making("a"));
  const less = (each: Lot): Lot => (each.id === "I" ? { ...each, remaining: g("400"), value: money("4") } : each);
  await changeBooks(({ workshop, desk }) => ({
    kind: "keep",
    books: { workshop: { ...workshop, lots: workshop.lots.map(less) }, desk },
    result: null,
  }));
  expect(await valueOf("I")).toBe("400 worth 4 + 6 + 3");
});

test("[LEDGER-24] [FILE-5] its past is written and read, a failed batch with it", async () => {
  await makePlannedRun(making("a", { unitsMade: units(0), finishedLot: { id: "lost", bestBefore: null } }));
  await back("a");
  await makePlannedRun(making("a", { key: "again" }));
  const stored = await readBooksWithPast();
  const text = stored ? writeWorkshopFile(stored.workshop, stored.past) : "";
  const reading = readWorkshopFile(new TextEncoder().encode(text), TODAY);
  if (reading.kind === "refused") throw new Error(reading.faults.join("\n"));
  expect(writeWorkshopFile(reading.workshop, reading.past)).toBe(text);
  const other = path.join(folder(), "other.db");
  await replaceWorkshop(other, reading.workshop, "anything", reading.past);
  expect(await checkLedger(other)).toMatchObject({ disagreements: [] });
  await closeStore(other);
});
