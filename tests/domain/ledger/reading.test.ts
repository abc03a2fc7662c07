/** Reading the ledger: values, histories and traces worked by hand. */
import { expect, test } from "vitest";
import { makeRun } from "@/lib/domain/ledger/make-run";
import { finishedLot, materialLot, wholeValue } from "@/lib/domain/ledger/posting";
import { history } from "@/lib/domain/ledger/history";
import { hold, sellUnits, takeBack } from "@/lib/domain/ledger/stock-moves";
import { traceBack, traceForward } from "@/lib/domain/ledger/trace";
import { costOfSalesBetween, isInHouse, stockValueOn } from "@/lib/domain/ledger/valuation";
import { quantity } from "@/lib/domain/quantity";
import { ledgerBench, TODAY } from "@/tests/helpers/ledger-bench";
import { day, g, inGrams, money } from "@/tests/helpers/notation";

/** 1000 g for 10 on the 2nd, 400 g into a run of 8 on the 10th with 4 of labour, 100 g held on the 12th, 2 sold on the 15th. */
const bench = ledgerBench();
bench.receive("2026-11-02", { A1: ["1000", "10"] });
const run = makeRun(
  {
    key: "made r",
    run: "r",
    day: day("2026-11-10"),
    today: TODAY,
    note: null,
    unitsPlanned: quantity(8n),
    unitsMade: quantity(7n),
    finishedLot: "F1",
    ofMaterial: null,
    draws: [{ lot: "A1", quantity: g("400"), spilt: 0n }],
    outOfDate: "refuse",
    before: [],
    onHold: false,
    labour: money("4"),
    overhead: money("0"),
  },
  bench.standing(),
  [{ material: "A", need: g("400"), ofNeed: g("20") }],
  bench.records,
);
bench.post(run);
bench.know(finishedLot("F1"), { since: day("2026-11-10"), expires: null, item: "p" });
const move = (key: string, on: string, lot: string, amount: bigint) => ({
  key,
  day: day(on),
  today: TODAY,
  reason: null,
  lines: [{ lot: lot === "F1" ? finishedLot(lot) : materialLot(lot), quantity: amount }],
});
bench.post(hold(move("held", "2026-11-12", "A1", g("100")), bench.standing(), bench.records));
bench.post(
  sellUnits({ ...move("sold", "2026-11-15", "F1", 3n), outOfDate: "refuse" }, bench.standing(), bench.records),
);
bench.post(takeBack(move("back", "2026-11-16", "F1", 1n), bench.standing(), bench.records));

test.each([
  { on: "2026-11-01", materials: "0", finished: "0 + 0", onHold: "0" },
  { on: "2026-11-02", materials: "10", finished: "0 + 0", onHold: "0" },
  { on: "2026-11-11", materials: "6", finished: "3.5 + 3.5", onHold: "0" },
  { on: "2026-11-14", materials: "6", finished: "3.5 + 3.5", onHold: "1" },
  { on: "2026-11-15", materials: "6", finished: "2 + 2", onHold: "1" },
  { on: "2026-11-25", materials: "6", finished: "2.5 + 2.5", onHold: "1" },
])("[LEDGER-17] the value of stock on $on", ({ on, materials, finished, onHold }) => {
  const value = stockValueOn(bench.posted, day(on));
  expect([
    inGrams(wholeValue(value.materials)),
    `${inGrams(value.finished.materials)} + ${inGrams(value.finished.labour)}`,
    inGrams(wholeValue(value.onHold)),
    inGrams(wholeValue(value.workInProgress)),
  ]).toEqual([materials, finished, onHold, "0"]);
});

test("[LEDGER-17] what was sold cost, between two days", () => {
  const between = (from: string, to: string) =>
    inGrams(wholeValue(costOfSalesBetween(bench.posted, day(from), day(to))));
  expect([
    between("2026-11-15", "2026-11-15"),
    between("2026-11-16", "2026-11-30"),
    between("2026-11-01", "2026-11-30"),
  ]).toEqual(["3", "-1", "2"]);
});

test("[LEDGER-19] the history of a lot is its running balance", () => {
  const lines = history(bench.posted, ({ lot, place }) => lot.id === "A1" && isInHouse(place.kind));
  expect(
    lines.map(({ posting, quantity: moved, balance }) => [
      posting.id,
      inGrams(moved),
      inGrams(balance.quantity),
      inGrams(wholeValue(balance.value)),
    ]),
  ).toEqual([
    ["delivery A1", "1000", "1000", "10"],
    ["made r", "-400", "600", "6"],
    ["held", "0", "600", "6"],
  ]);
});

test("[LEDGER-20] a lot is traced to the units that hold it, with nothing unaccounted for", () => {
  expect(traceForward(bench.posted, materialLot("A1"))).toEqual({
    came: g("1000"),
    places: [
      { place: "hold", quantity: g("100") },
      { place: "shelf", quantity: g("500") },
    ],
    batches: [
      {
        run: "r",
        taken: g("400"),
        lostWithinPlan: g("20"),
        through: null,
        finished: {
          lot: "F1",
          units: [
            { place: "finished", units: 5n, holding: g("237.5") },
            { place: "lost", units: 1n, holding: g("47.5") },
            { place: "sold", units: 2n, holding: g("95") },
          ],
        },
      },
    ],
    unaccounted: 0n,
  });
});

test("[LEDGER-20] and a finished lot back to its delivery", () => {
  expect(traceBack(bench.posted, "F1")).toMatchObject({
    runs: ["r"],
    from: [
      {
        run: "r",
        lot: materialLot("A1"),
        taken: g("400"),
        value: { materials: money("4") },
        cameWith: { id: "delivery A1" },
      },
    ],
    units: [
      { place: "finished", quantity: 5n },
      { place: "lost", quantity: 1n },
      { place: "sold", quantity: 2n },
    ],
  });
});
