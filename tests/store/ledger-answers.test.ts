import { beforeEach, expect, test } from "vitest";
import { finishedLot, wholeValue } from "@/lib/domain/ledger/posting";
import { type Balance, balanceAt, movesOf, standingAfter } from "@/lib/domain/ledger/standing";
import { traceBack, traceForward } from "@/lib/domain/ledger/trace";
import { costOfSalesBetween, stockValueOn } from "@/lib/domain/ledger/valuation";
import { type WorthPart, worthOf } from "@/lib/domain/ledger/worth-by-lot";
import { postCount } from "@/lib/operations/count-shelf";
import { holdLot } from "@/lib/operations/hold-lot";
import { makePlannedRun } from "@/lib/operations/make-run";
import { receive } from "@/lib/operations/receive-delivery";
import { reversePosting } from "@/lib/operations/reverse-posting";
import { sell } from "@/lib/operations/sell-units";
import {
  readCostOfSales,
  readHistoryOfDay,
  readHistoryOfLot,
  readHistoryOfMaterial,
  readHistoryOfRun,
  readLotsOfPart,
  readBatchUses,
  readPosting,
  readRecall,
  readStock,
  readStockOn,
  readStockValue,
  readTraceBack,
  readTraceForward,
} from "@/lib/store/ledger/ledger-answers";
import { allPostings } from "@/lib/store/ledger/ledger-reading";
import { openStore } from "@/lib/store/open-store";
import { counting, delivery, making, moving, named, shop, TODAY } from "../helpers/ledger-shop";
import { day, g, inGrams } from "../helpers/notation";
import { openBooks } from "../helpers/store-desk";
import { storeForEachTest } from "../helpers/store-folder";

const { file } = storeForEachTest();

beforeEach(async () => {
  await openBooks(shop());
  await makePlannedRun(making("r", { day: day("2026-11-20") }));
  await receive(delivery([{}], { day: day("2026-11-21") }));
  await sell({ ...moving({ "F-r": 4n }, { key: "sale", day: day("2026-11-22") }), outOfDate: "refuse" });
  await holdLot(moving({ D1: g("300") }, { day: day("2026-11-22") }));
  await postCount(counting({ late: ["500", "490"] }, { day: day("2026-11-23") }));
});

const withoutDay = ({ quantity, value }: Balance) => ({ quantity, value });
const money = (value: Parameters<typeof wholeValue>[0]) => inGrams(wholeValue(value));
const all = async () => (await openStore(file())).reader.alone(allPostings);

test("[LEDGER-19] the history of a material is that of its lots together", async () => {
  const lines = await readHistoryOfMaterial("oil");
  expect(lines.map(({ posting, balance }) => [posting.id, inGrams(balance.quantity), money(balance.value)])).toEqual([
    ["opening lot late", "900", "18"],
    ["opening lot soon", "1500", "24"],
    ["made r", "500", "10"],
    ["delivery", "1500", "30"],
    ["move D1", "1500", "30"],
    ["count", "1490", "29.8"],
  ]);
  expect((await readHistoryOfLot(named("D1"))).map(({ posting }) => posting.id)).toEqual(["delivery", "move D1"]);
  expect(await readHistoryOfMaterial("nothing")).toEqual([]);
});

test("[LEDGER-26] what stood on the shelf on a past day is what the entries until then come to", async () => {
  const standing = standingAfter(movesOf(await all()));
  for (const on of ["2026-11-19", "2026-11-20", "2026-11-21", "2026-11-22", "2026-11-23", "2026-11-25"]) {
    const stood = await readStockOn(day(on));
    for (const { lot, place, quantity, value } of stood) {
      expect([on, lot.id, place.kind, { quantity, value }]).toEqual([
        on,
        lot.id,
        place.kind,
        withoutDay(balanceAt(standing, lot, place, day(on))),
      ]);
    }
    expect(stood.length).toBeGreaterThan(4);
  }
});

test("[LEDGER-19] the history of a run ends without value, that of a day begins with the day before", async () => {
  const [line] = await readHistoryOfRun("r");
  expect([
    line?.posting.id,
    money(line?.balance.value ?? { materials: 1n as never, labour: 0n as never, overhead: 0n as never }),
  ]).toEqual(["made r", "0"]);
  const { before, lines } = await readHistoryOfDay(day("2026-11-22"));
  expect(money(before.total)).toBe("77");
  expect(lines.map(({ posting, balance }) => [posting.id, money(balance.value)])).toEqual([
    ["sale", "65.8"],
    ["move D1", "65.8"],
  ]);
});

test.each(["2026-10-01", "2026-11-20", "2026-11-21", "2026-11-22", "2026-11-23", "2026-11-25"])(
  "[LEDGER-17] the store and the domain say the same of the value of stock on %s",
  async (on) => {
    const value = await readStockValue(day(on));
    expect(value).toEqual(stockValueOn(await all(), day(on)));
    expect(wholeValue(value.total)).toBeGreaterThan(0n);
  },
);

test("[LEDGER-17] and of what was sold cost", async () => {
  const [from, to] = [day("2026-11-22"), day("2026-11-22")];
  expect(await readCostOfSales(from, to)).toEqual(costOfSalesBetween(await all(), from, to));
  expect(money(await readCostOfSales(from, to))).toBe("11.2");
  expect(money(await readCostOfSales(day("2026-11-23"), TODAY))).toBe("0");
});

test.each(["2026-10-01", "2026-11-20", "2026-11-21", "2026-11-22", "2026-11-23", "2026-11-25"])(
  "[LEDGER-17] the lots that each figure of the value of stock opens to come to that figure on %s",
  async (on) => {
    const stock = await readStockValue(day(on));
    const worth = async (part: WorthPart) =>
      worthOf(await readLotsOfPart(part, { from: day("2026-11-22"), to: day(on) }));
    expect(await worth("materials")).toEqual(stock.materials);
    expect(await worth("in progress")).toEqual(stock.workInProgress);
    expect(await worth("finished")).toEqual(stock.finished);
    expect(await worth("on hold")).toEqual(stock.onHold);
    expect(await worth("sold")).toEqual(await readCostOfSales(day("2026-11-22"), day(on)));
  },
);

test("[LEDGER-17] lot by lot: what stood where on that day, with what it cost", async () => {
  const lots = async (part: WorthPart, from: string, to: string) =>
    (await readLotsOfPart(part, { from: day(from), to: day(to) }))
      .map(({ lot, place, quantity, value }) => [lot.id, place.kind, inGrams(quantity), money(value)])
      .toSorted();
  expect(await lots("materials", "2026-11-22", "2026-11-22")).toEqual([
    ["D1", "hold", "300", "6"],
    ["D1", "shelf", "700", "14"],
    ["jars", "shelf", "0.000038", "19"],
    ["late", "shelf", "500", "10"],
  ]);
  expect(await lots("sold", "2026-11-22", "2026-11-23")).toEqual([["F-r", "sold", "0.000004", "11.2"]]);
  expect(await lots("sold", "2026-11-23", "2026-11-23")).toEqual([]);
});

test("[LEDGER-20] and of traces, forward and back", async () => {
  expect(await readTraceForward("late")).toEqual(traceForward(await all(), named("late")));
  expect(await readTraceForward("late")).toMatchObject({ unaccounted: 0n, batches: [{ run: "r", taken: g("400") }] });
  expect(await readTraceBack("F-r")).toEqual(traceBack(await all(), "F-r"));
  expect((await readTraceBack("F-r")).from.map(({ lot }) => lot.id)).toEqual(["jars", "late", "soon"]);
});

test("[RECALL-1] a recall of a lot says where all of it is, through its batch to what was sold", async () => {
  const { came, accounted, lines } = await readRecall(named("late"));
  expect([came, accounted]).toEqual([g("900"), g("900")]);
  expect(lines.map(({ into, place, units, holding }) => [into?.id ?? "", place, units, inGrams(holding)])).toEqual([
    ["", "counted", null, "10"],
    ["", "shelf", null, "490"],
    ["F-r", "finished", 6n, "240"],
    ["F-r", "sold", 4n, "160"],
  ]);
});

test("[RECALL-1] a recall of a finished lot says where its units are", async () => {
  const { came, lines, share } = await readRecall(finishedLot("F-r"));
  expect([came, share]).toEqual([10n, { over: 10n, under: 10n }]);
  expect(lines.map(({ place, units }) => [place, units])).toEqual([
    ["finished", 6n],
    ["sold", 4n],
  ]);
});

test("[YIELD-2] what a batch took, lot by lot, less what was taken back", async () => {
  const taken = async () => (await readBatchUses(["r"])).map((use) => [use.lot.id, use.taken]);
  expect((await taken()).toSorted()).toEqual([
    ["jars", 10n],
    ["late", g("400")],
    ["soon", g("600")],
  ]);
  expect(await readBatchUses(["s"])).toEqual([]);
});

test("[LEDGER-14] [LEDGER-16] stock tells what is on hold, and a posting what takes it back", async () => {
  const held = (await readStock()).filter(({ place }) => place.kind === "hold");
  expect(held).toMatchObject([{ lot: named("D1"), quantity: g("300"), value: { materials: 6_000_000n } }]);
  expect(await readPosting("count")).toMatchObject({ posting: { id: "count" }, reversedBy: null });
  await reversePosting({ key: "not", day: TODAY, realToday: TODAY, reverses: "count", reason: "the wrong scale" });
  expect(await readPosting("count")).toMatchObject({ reversedBy: { id: "not", reason: "the wrong scale" } });
  expect(await readPosting("nothing")).toBeNull();
});
