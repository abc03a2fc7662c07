/** Work in progress opens to what was weighed into it, on days on which its batch was open and on no others. */
import { expect, test } from "vitest";
import type { BenchNote, Instant } from "@/lib/domain/bench/batch";
import { inBatchesOf } from "@/lib/domain/bench/in-batches";
import { materialLot, wholeValue } from "@/lib/domain/ledger/posting";
import { worthOf } from "@/lib/domain/ledger/worth-by-lot";
import { needParts } from "@/lib/domain/need-parts";
import { preparedFor } from "@/lib/domain/plan";
import { quantity, type Stock } from "@/lib/domain/quantity";
import { postLateCost } from "@/lib/operations/late-cost";
import { startBatch } from "@/lib/operations/start-batch";
import type { Closing } from "@/lib/operations/close-batch";
import { writeDown } from "@/lib/operations/write-down";
import { readLotsOfPart, readStockValue } from "@/lib/store/ledger/ledger-answers";
import { books, shop, TODAY, units } from "../helpers/ledger-shop";
import { day, g, inGrams, money } from "../helpers/notation";
import { openBooks } from "../helpers/store-desk";
import { storeForEachTest } from "../helpers/store-folder";

storeForEachTest();

const written = { at: "2026-11-25T09:30:00Z" as Instant, who: "R. Weaver" };
const blank = { ...written, kind: "weighed", line: "1", gross: null, tare: null, why: null } as const;
const some: BenchNote = { ...blank, key: "w", lot: "soon", net: g("600"), more: true };
const rest: BenchNote = { ...blank, key: "w2", lot: "late", net: g("400"), more: false };
const closed: BenchNote = {
  ...written,
  key: "c",
  kind: "closed",
  units: units(10),
  leftOver: null,
  bestBefore: day("2027-11-25"),
  held: false,
  why: null,
  whyNotWeighed: null,
  whyMoreFilled: null,
  whyOutOfDate: null,
  whyNotChecked: null,
};

const write = (note: BenchNote, seen: readonly string[], today: string, closing: Closing | null = null) =>
  writeDown({ batch: "r", note, seen, closing, realToday: day(today) });

const inProgress = async (then: string) => {
  const lots = await readLotsOfPart("in progress", { from: day(then), to: day(then) });
  expect(worthOf(lots)).toEqual((await readStockValue(day(then))).workInProgress);
  return lots.map(({ lot, place, quantity: stood, value }) => [
    lot.id,
    place,
    inGrams(stood),
    inGrams(wholeValue(value)),
  ]);
};

/** What the run that is at the bench opens to. @rule BENCH-6 */
async function partsOfOil(): Promise<readonly string[]> {
  const { workshop, desk } = await books();
  const [toJudge] = preparedFor(workshop, TODAY, inBatchesOf(desk.batches)).runs;
  const oil = workshop.materials.find(({ id }) => id === "oil");
  if (toJudge === undefined || oil === undefined) throw new Error("the shop has a run that takes oil");
  return needParts(toJudge, () => quantity<Stock>(0n))
    .partsOf(oil)
    .map((part) =>
      part.kind === "still to weigh"
        ? `${part.kind} ${inGrams(part.quantity.over / part.quantity.under)}, weighed ${inGrams(part.weighed)}`
        : part.kind,
    );
}

test("[LEDGER-17] [BENCH-5] what was weighed stands in its batch until that is closed, also looked back upon", async () => {
  const { workshop, desk } = shop();
  await openBooks({ workshop: { ...workshop, settings: { ...workshop.settings, today: null } }, desk });
  const run = { id: "r", product: "p", date: day("2026-11-24"), units: units(10) };
  await startBatch({ ...written, run, code: "B-1", despite: null, realToday: TODAY });
  expect(await write(some, [], "2026-11-25")).toMatchObject({
    kind: "posted",
  });
  expect(await partsOfOil()).toEqual(["still to weigh 400, weighed 600"]);
  expect(await write(rest, ["w"], "2026-11-26")).toMatchObject({
    kind: "posted",
  });
  const batch = { kind: "batch", run: "r" };
  const onTheSecond = [
    ["late", batch, "400", "8"],
    ["soon", batch, "600", "6"],
  ];
  expect(await inProgress("2026-11-24")).toEqual([]);
  expect(await inProgress("2026-11-25")).toEqual([["soon", batch, "600", "6"]]);
  expect((await inProgress("2026-11-26")).toSorted()).toEqual(onTheSecond);

  const jars = { draws: [{ lot: "jars", quantity: 10n, spilt: 0n }], minutes: null };
  expect(await write(closed, [], "2026-11-27", jars)).toMatchObject({ kind: "posted" });
  expect((await inProgress("2026-11-26")).toSorted()).toEqual(onTheSecond);
  expect(await inProgress("2026-11-27")).toEqual([]);

  // A cost that comes later goes through the closed batch: nothing of it is in progress again.
  const later = day("2026-11-28");
  const lines = [{ lot: materialLot("late"), amount: money("9") }];
  expect(await postLateCost({ key: "k", day: later, realToday: later, lines, reason: "duty" })).toMatchObject({
    kind: "posted",
  });
  for (const then of ["2026-11-27", "2026-11-28"]) expect(await inProgress(then)).toEqual([]);
  expect((await inProgress("2026-11-26")).toSorted()).toEqual(onTheSecond);
});
