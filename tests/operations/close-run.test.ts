import { beforeEach, expect, test } from "vitest";
import type { Books } from "@/lib/domain/desk";
import { type PartsPerMillion, quantity, type Units } from "@/lib/domain/quantity";
import { type CloseRun, closeRun } from "@/lib/operations/close-run";
import { planRun } from "@/lib/operations/plan-run";
import { setToday } from "@/lib/operations/set-today";
import { readBooks } from "@/lib/store/books";
import { day, formula, inGrams, lot, material, pieces, product, run } from "../helpers/notation";
import { auditAfterEachTest } from "../helpers/store-audit";
import { booksOf, openBooks } from "../helpers/store-desk";
import { storeForEachTest } from "../helpers/store-folder";
import { bytesOf } from "../helpers/store-soundness";
import { bareWorkshop } from "../helpers/store-workshop";

const { file } = storeForEachTest();
auditAfterEachTest(file);

const units = (count: number): Units => quantity(BigInt(count));

/** r needs 1000 g of oil and 10 jars, big 9000 g and 90. The oil: 600 g that expires first for 6.00, 900 g for 18.00. */
const shelf = (): Books =>
  booksOf(
    bareWorkshop("Shelf", {
      materials: [material("oil"), material("jar", { kind: "packaging", measure: "count" })],
      lots: [
        lot("late", "oil", "900", "18", { expires: day("2027-06-01") }),
        lot("soon", "oil", "600", "6", { expires: day("2026-12-01") }),
        lot("out", "oil", "500", "5", { expires: day("2026-11-24") }),
        lot("jars", "jar", "0", "24", { remaining: quantity(48n) }),
      ],
      formulas: [formula("f", { oil: "100" })],
      products: [
        product("p", "f", {
          packaging: [{ material: "jar", amount: pieces(1), spoilage: quantity<PartsPerMillion>(0n) }],
        }),
      ],
      runs: [run("r", "p", "2026-11-24", 10), run("big", "p", "2026-11-26", 90)],
    }),
  );

beforeEach(() => openBooks(shelf()));

const asked = (id: "r" | "big", given: Partial<CloseRun> = {}): CloseRun => ({
  run: { id, product: "p", date: day(id === "r" ? "2026-11-24" : "2026-11-26"), units: units(id === "r" ? 10 : 90) },
  realToday: day("2020-01-01"),
  unitsMade: units(9),
  finishedLot: { id: `F-${id}`, bestBefore: day("2027-11-25") },
  ifShort: "refuse",
  ...given,
});
const books = async (): Promise<Books> => (await readBooks()) ?? shelf();
const lots = async (): Promise<string> =>
  (await books()).workshop.lots
    .map((each) => `${each.id} ${inGrams(each.remaining)} for ${inGrams(each.value)}`)
    .join(", ");

test("[CLOSE-1] [CLOSE-2] [CLOSE-3] [CLOSE-4] a run that was made leaves the plan, draws, and stands finished", async () => {
  const result = await closeRun(asked("r"));
  expect(result).toMatchObject({ kind: "made", value: 6_000_000n + 8_000_000n + 5_000_000n });
  expect(result).not.toHaveProperty("books");
  // 600 g of the lot that expires first with all its value, 400 of 900 g of the other, 10 of 48 jars.
  expect(await lots()).toBe("late 500 for 10, soon 0 for 0, out 500 for 5, jars 0.000038 for 19");
  const { workshop, desk } = await books();
  expect(workshop.runs.map(({ id }) => id)).toEqual(["big"]);
  expect(workshop.finished).toStrictEqual([
    { id: "F-r", product: "p", made: day("2026-11-25"), bestBefore: day("2027-11-25"), units: 9n },
  ]);
  expect(desk.closedRuns).toStrictEqual([
    { run: run("r", "p", "2026-11-24", 10), madeOn: day("2026-11-25"), unitsMade: 9n },
  ]);
});

test("[CLOSE-1] a second time it says on which day it was made, and changes no byte", async () => {
  await closeRun(asked("r"));
  const before = bytesOf(file());
  for (const again of [asked("r"), asked("r", { unitsMade: units(3), finishedLot: { id: "F2", bestBefore: null } })]) {
    expect(await closeRun(again)).toMatchObject({
      kind: "already made",
      closed: { madeOn: day("2026-11-25"), unitsMade: 9n },
    });
  }
  expect(bytesOf(file())).toEqual(before);
});

test("[CLOSE-1] twenty presses at once close it once", async () => {
  const results = await Promise.all(Array.from({ length: 20 }, () => closeRun(asked("r"))));
  expect(results.map(({ kind }) => kind).sort()).toEqual([...Array.from({ length: 19 }, () => "already made"), "made"]);
  expect((await books()).workshop.finished).toHaveLength(1);
});

test("[CLOSE-1] what was made cannot be planned again under its id", async () => {
  await closeRun(asked("r"));
  expect(await planRun({ run: asked("r").run, before: null })).toMatchObject({ kind: "already made" });
});

test.each<{ rule: string; says: string; asked: CloseRun; kind: string }>([
  { rule: "CLOSE-5", says: "what is short is refused", asked: asked("big"), kind: "short" },
  {
    rule: "CLOSE-2",
    says: "a run that was resized meanwhile would draw something else",
    asked: asked("r", { run: { ...asked("r").run, units: units(11) } }),
    kind: "stale",
  },
  {
    rule: "CLOSE-4",
    says: "a finished lot of that id",
    asked: asked("big", { finishedLot: { id: "F-r", bestBefore: null } }),
    kind: "finished lot exists",
  },
  {
    rule: "CLOSE-1",
    says: "a run that was deleted",
    asked: asked("r", { run: { ...asked("r").run, id: "gone" } }),
    kind: "no such run",
  },
])("[$rule] $says, and no byte is changed", async ({ asked: given, kind }) => {
  if (kind === "finished lot exists") await closeRun(asked("r"));
  const before = bytesOf(file());
  expect(await closeRun(given)).toMatchObject({ kind });
  expect(bytesOf(file())).toEqual(before);
});

test("[CLOSE-5] what is short is told by material; closed all the same, what is there is drawn", async () => {
  expect(await closeRun(asked("big"))).toStrictEqual({
    kind: "short",
    short: [
      { material: shelf().workshop.materials[1], by: 42n },
      { material: shelf().workshop.materials[0], by: 7_500_000_000n },
    ],
  });
  expect(await closeRun(asked("big", { ifShort: "draw what is there" }))).toMatchObject({ kind: "made" });
  expect(await lots()).toBe("late 0 for 0, soon 0 for 0, out 500 for 5, jars 0 for 0");
});

test("[CLOSE-4] where nothing came out, nothing stands finished", async () => {
  await closeRun(asked("r", { unitsMade: units(0) }));
  const { workshop, desk } = await books();
  expect(workshop.finished).toEqual([]);
  expect(desk.closedRuns).toMatchObject([{ unitsMade: 0n }]);
});

test("[CLOSE-2] the day is the one that the workshop is set to, else the real one", async () => {
  await setToday({ from: day("2026-11-25"), to: null, realToday: day("2026-11-27") });
  await closeRun(asked("r", { realToday: day("2026-11-27") }));
  expect((await books()).desk.closedRuns).toMatchObject([{ madeOn: day("2026-11-27") }]);
});
