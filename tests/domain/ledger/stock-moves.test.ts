/** Cases worked by hand from the rules. */
import { describe, expect, test } from "vitest";
import { countShelf, movedByCountsAfter } from "@/lib/domain/ledger/count-shelf";
import { balanced, finishedLot, materialLot, moving, NO_VALUE, type Posting } from "@/lib/domain/ledger/posting";
import { receiveDelivery } from "@/lib/domain/ledger/receive-delivery";
import { hold, release, sellUnits, type StockMove, takeBack, writeOff } from "@/lib/domain/ledger/stock-moves";
import { quantity } from "@/lib/domain/quantity";
import { COIN, deliveryOf, ledgerBench, lotNamed, TODAY, withExpiry } from "@/tests/helpers/ledger-bench";
import { day, g, inGrams, money } from "@/tests/helpers/notation";

const move = (lot: string, amount: bigint, given: Partial<StockMove> = {}): StockMove => ({
  key: `move ${lot} ${String(amount)}`,
  day: TODAY,
  today: TODAY,
  reason: null,
  lines: [{ lot: lotNamed(lot), quantity: amount }],
  ...given,
});
const count = (lot: string, expected: string, counted: string, on = TODAY) => ({
  key: `count ${lot}`,
  day: on,
  today: TODAY,
  reason: "monthly count",
  lines: [{ lot: lotNamed(lot), expected: g(expected), counted: g(counted) }],
});

describe("a posting", () => {
  const entry = (lot: string, moved: bigint, materials: bigint, labour = 0n) => ({
    place: { kind: "shelf" } as const,
    lot: materialLot(lot),
    quantity: quantity<never>(moved),
    value: { ...NO_VALUE, materials: quantity<never>(materials), labour: quantity<never>(labour) },
  });
  const posting = (...entries: Posting["entries"]) => balanced({ entries });
  test.each([
    { says: "what leaves arrives", so: posting(entry("a", -5n, -9n), entry("a", 5n, 9n)), is: true },
    { says: "one lot does not make up for another", so: posting(entry("a", -5n, 0n), entry("b", 5n, 0n)), is: false },
    { says: "value that is left over", so: posting(entry("a", -5n, -9n), entry("a", 5n, 8n)), is: false },
    { says: "labour is not materials", so: posting(entry("a", 0n, -9n), entry("a", 0n, 0n, 9n)), is: false },
    { says: "nothing at all", so: posting(), is: false },
  ])("[LEDGER-1] $says: balanced $is", ({ so, is }) => {
    expect(so).toBe(is);
  });
});

describe("receiving", () => {
  test("[LEDGER-9] [LEDGER-6] delivery by value and duty by weight are shared to the last cent", () => {
    const bench = ledgerBench();
    bench.receive(
      "2026-11-02",
      { A1: ["1000", "10.00"], B1: ["500", "20.00"], C1: ["500", "30.00"] },
      {
        extras: [
          { what: "delivery", amount: money("10.00"), by: "value" },
          { what: "duty", amount: money("1.01"), by: "weight" },
        ],
      },
    );
    // 10.00 over 10 : 20 : 30 is 1.666…, 3.333…, 5.00: the cent that is left goes to the first. 1.01 over 2 : 1 : 1
    // is 0.505, 0.2525, 0.2525: the cent that is left goes to the first.
    expect([bench.stands("A1", "shelf"), bench.stands("B1", "shelf"), bench.stands("C1", "shelf")]).toEqual([
      "1000 for 12.18",
      "500 for 23.58",
      "500 for 35.25",
    ]);
    expect(bench.stands("A1", "supplier")).toBe("-1000 for -12.18");
  });

  test("[LEDGER-9] by quantity counts packs", () => {
    const delivery = deliveryOf("2026-11-02", { A1: ["1000", "10.00"], B1: ["5", "20.00"] });
    const [a, b] = delivery.lines;
    if (!a || !b) throw new Error("two lines");
    const result = receiveDelivery(
      {
        ...delivery,
        lines: [{ ...a, packs: quantity(3n) }, b],
        extras: [{ what: "delivery", amount: money("4.00"), by: "quantity" }],
      },
      () => null,
      COIN,
    );
    expect(result.kind === "posted" && result.lots.map(({ cost }) => inGrams(cost))).toEqual(["13", "21"]);
  });

  test("[LEDGER-9] by weight needs no weight of a line alone, and shares by what several weigh", () => {
    const extra = { what: "delivery", amount: money("4.00"), by: "weight" } as const;
    const jars = deliveryOf("2026-11-02", { A1: ["0.00002", "10.00"] });
    const alone = { ...jars, lines: jars.lines.map((line) => ({ ...line, weight: null })), extras: [extra] };
    const oneLine = receiveDelivery(alone, () => null, COIN);
    expect(oneLine.kind === "posted" && oneLine.lots.map(({ cost }) => inGrams(cost))).toEqual(["14"]);
    const both = deliveryOf("2026-11-02", { A1: ["0.00002", "10.00"], B1: ["1000", "10.00"] }, { extras: [extra] });
    const lines = both.lines.map((line, at) => (at === 0 ? { ...line, weight: g("3000") } : line));
    const shared = receiveDelivery({ ...both, lines }, () => null, COIN);
    expect(shared.kind === "posted" && shared.lots.map(({ cost }) => inGrams(cost))).toEqual(["13", "11"]);
  });

  const bench = ledgerBench();
  bench.receive("2026-11-02", { A1: ["1000", "10.00"] });
  const asked = deliveryOf("2026-11-03", { B1: ["1000", "0"] });
  const two = deliveryOf("2026-11-03", { B1: ["1000", "0"], C1: ["3000", "0"] });
  const free = { what: "delivery", amount: money("1"), by: "value" } as const;
  test.each([
    { says: "a day to come", delivery: { ...asked, day: day("2026-11-26") }, kind: "future day" },
    { says: "no lines", delivery: { ...asked, lines: [] }, kind: "nothing to post" },
    { says: "a lot that is there", delivery: deliveryOf("2026-11-03", { A1: ["1", "1"] }), kind: "lot exists" },
    { says: "a lot twice", delivery: { ...asked, lines: [...asked.lines, ...asked.lines] }, kind: "asked twice" },
    { says: "nothing of it", delivery: deliveryOf("2026-11-03", { B1: ["0", "1"] }), kind: "nothing to post" },
    { says: "out of date already", delivery: withExpiry(asked, day("2026-11-02")), kind: "arrived out of date" },
    { says: "nothing paid to share by", delivery: { ...two, extras: [free] }, kind: "nothing to share by" },
    {
      says: "a line nobody weighed",
      delivery: {
        ...two,
        lines: two.lines.map((line, at) => ({ ...line, weight: at === 0 ? line.weight : null })),
        extras: [{ ...free, by: "weight" as const }],
      },
      kind: "no weight",
    },
    {
      says: "more than a figure may be",
      delivery: deliveryOf("2026-11-03", { B1: ["9007199255", "1"] }),
      kind: "out of range",
    },
  ])("[LEDGER-8] [LEDGER-4] $says is refused: $kind", ({ delivery, kind }) => {
    expect(receiveDelivery(delivery, bench.records, COIN).kind).toBe(kind);
  });
});

describe("holding, writing off", () => {
  test("[LEDGER-14] [LEDGER-7] what is held leaves the shelf with its part of the value, and all of it with all of it", () => {
    const bench = ledgerBench();
    bench.receive("2026-11-02", { A1: ["3", "0.000010"] });
    bench.post(hold(move("A1", g("1")), bench.standing(), bench.records));
    expect([bench.stands("A1", "shelf"), bench.stands("A1", "hold")]).toEqual(["2 for 0.000007", "1 for 0.000003"]);
    bench.post(hold(move("A1", g("2"), { key: "rest" }), bench.standing(), bench.records));
    expect([bench.stands("A1", "shelf"), bench.stands("A1", "hold")]).toEqual(["0 for 0", "3 for 0.00001"]);
    bench.post(release(move("A1", g("1.5"), { key: "back" }), bench.standing(), bench.records));
    expect(bench.stands("A1", "shelf")).toBe("1.5 for 0.000005");
    const off = { ...move("A1", g("1.5"), { key: "off" }), as: "expired", from: "hold" } as const;
    bench.post(writeOff(off, bench.standing(), bench.records));
    expect([bench.stands("A1", "hold"), bench.stands("A1", "expired")]).toEqual(["0 for 0", "1.5 for 0.000005"]);
  });

  test("[LEDGER-8] more than is on the shelf is refused with what is there and what is on hold", () => {
    const bench = ledgerBench();
    bench.receive("2026-11-02", { A1: ["100", "1"] });
    bench.post(hold(move("A1", g("60")), bench.standing(), bench.records));
    const off = { ...move("A1", g("41"), { key: "off" }), as: "lost", from: "stock" } as const;
    expect(writeOff(off, bench.standing(), bench.records)).toMatchObject({
      kind: "not there",
      place: { kind: "shelf" },
      asked: g("41"),
      there: g("40"),
      held: g("60"),
      on: TODAY,
    });
  });

  test.each([
    { says: "an unknown lot", asked: move("B1", 1n), kind: "no such lot" },
    { says: "nothing", asked: move("A1", 0n), kind: "nothing to post" },
    { says: "less than nothing", asked: move("A1", -1n), kind: "nothing to post" },
    { says: "no lots", asked: move("A1", 1n, { lines: [] }), kind: "nothing to post" },
    { says: "a day to come", asked: move("A1", 1n, { day: day("2026-11-26") }), kind: "future day" },
    { says: "a day before the lot", asked: move("A1", 1n, { day: day("2026-11-01") }), kind: "before the lot" },
    {
      says: "a lot twice",
      asked: move("A1", 1n, { lines: [...move("A1", 1n).lines, ...move("A1", 1n).lines] }),
      kind: "asked twice",
    },
  ])("[LEDGER-8] $says is refused: $kind", ({ asked, kind }) => {
    const bench = ledgerBench();
    bench.receive("2026-11-02", { A1: ["100", "1"] });
    expect(hold(asked, bench.standing(), bench.records).kind).toBe(kind);
  });
});

describe("dating back", () => {
  const bench = ledgerBench();
  bench.receive("2026-11-02", { A1: ["100", "10"] });
  const off = (grams: string, on: string) =>
    ({ ...move("A1", g(grams), { key: `off ${grams} ${on}`, day: day(on) }), as: "lost", from: "stock" }) as const;
  bench.post(writeOff(off("70", "2026-11-10"), bench.standing(), bench.records));

  test("[LEDGER-4] is allowed where every later balance stays", () => {
    const own = ledgerBench();
    own.receive("2026-11-02", { A1: ["100", "10"] });
    own.post(writeOff(off("70", "2026-11-10"), own.standing(), own.records));
    own.post(writeOff(off("30", "2026-11-05"), own.standing(), own.records));
    expect([own.stands("A1", "shelf", "2026-11-05"), own.stands("A1", "shelf")]).toEqual(["70 for 7", "0 for 0"]);
  });

  test("[LEDGER-4] is refused where a later one would not, and names the day", () => {
    expect(writeOff(off("31", "2026-11-05"), bench.standing(), bench.records)).toMatchObject({
      kind: "not there",
      on: day("2026-11-10"),
      onTheDay: g("100"),
      there: g("30"),
    });
  });

  test("[LEDGER-7] its value is that of the day on which least is left", () => {
    const own = ledgerBench();
    own.receive("2026-11-02", { A1: ["100", "10.000001"] });
    own.post(hold(move("A1", g("50"), { day: day("2026-11-05") }), own.standing(), own.records));
    own.post(release(move("A1", g("50"), { key: "back", day: day("2026-11-08") }), own.standing(), own.records));
    own.post(writeOff(off("50", "2026-11-06"), own.standing(), own.records));
    expect(own.stands("A1", "shelf", "2026-11-06")).toBe("0 for 0");
    expect(own.stands("A1", "shelf")).toBe("50 for 5");
  });
});

describe("counting", () => {
  test("[LEDGER-13] what is missing takes its part of the value, and is found again for the same", () => {
    const bench = ledgerBench();
    bench.receive("2026-11-02", { A1: ["100", "10"] });
    const missing = countShelf(count("A1", "100", "85"), bench.standing(), bench.records);
    expect(missing).toMatchObject({ differences: [{ quantity: -g("15"), value: { materials: -money("1.5") } }] });
    bench.post(missing);
    expect([bench.stands("A1", "shelf"), bench.stands("A1", "counted")]).toEqual(["85 for 8.5", "15 for 1.5"]);
    bench.post({ ...countShelf({ ...count("A1", "85", "100"), key: "again" }, bench.standing(), bench.records) });
    expect([bench.stands("A1", "shelf"), bench.stands("A1", "counted")]).toEqual(["100 for 10", "0 for 0"]);
  });

  test("[LEDGER-13] what is found of a lot that was used up comes in at what the lot cost", () => {
    const bench = ledgerBench();
    bench.receive("2026-11-02", { A1: ["100", "10"] });
    bench.post(countShelf(count("A1", "100", "0"), bench.standing(), bench.records));
    bench.post(countShelf({ ...count("A1", "0", "20"), key: "found" }, bench.standing(), bench.records));
    expect(bench.stands("A1", "shelf")).toBe("20 for 2");
  });

  test("[LEDGER-13] a figure that changed since is refused, and one that agrees is posted as counted", () => {
    const bench = ledgerBench();
    bench.receive("2026-11-02", { A1: ["100", "10"] });
    expect(countShelf(count("A1", "90", "80"), bench.standing(), bench.records)).toMatchObject({
      kind: "stale count",
      expected: g("90"),
      now: g("100"),
    });
    bench.post(countShelf(count("A1", "100", "100"), bench.standing(), bench.records));
    expect(bench.stands("A1", "shelf")).toBe("100 for 10");
  });

  test("[LEDGER-4] a count of a past day is refused where less was drawn than it leaves", () => {
    const bench = ledgerBench();
    bench.receive("2026-11-02", { A1: ["100", "10"] });
    bench.post(hold(move("A1", g("60"), { day: day("2026-11-10") }), bench.standing(), bench.records));
    const back = countShelf(count("A1", "100", "50", day("2026-11-05")), bench.standing(), bench.records);
    expect(back).toMatchObject({ kind: "not there", on: day("2026-11-10") });
  });

  test("[LEDGER-26] a count of a past day changes what stood from then on, at what it was worth", () => {
    const bench = ledgerBench();
    bench.receive("2026-11-02", { A1: ["100", "10"] });
    bench.post(hold(move("A1", g("60"), { day: day("2026-11-10") }), bench.standing(), bench.records));
    bench.post(countShelf(count("A1", "100", "90", day("2026-11-05")), bench.standing(), bench.records));
    expect([bench.stands("A1", "shelf", "2026-11-05"), bench.stands("A1", "shelf")]).toEqual(["90 for 9", "30 for 3"]);
  });

  test("[LEDGER-26] a count before a later one of the lot is refused, naming its day, until that is taken back", () => {
    const bench = ledgerBench();
    bench.receive("2026-11-02", { A1: ["100", "10"], B1: ["50", "5"] });
    const early = count("A1", "100", "90", day("2026-11-05"));
    bench.post(countShelf(count("B1", "50", "40", day("2026-11-10")), bench.standing(), bench.records));
    const beforeAny = countShelf(early, bench.standing(), bench.records, bench.posted);
    expect(beforeAny).toMatchObject({ kind: "posted" });
    // Even one that found all as it was written down: what was counted then would not stand any more.
    bench.post(countShelf(count("A1", "100", "100", day("2026-11-12")), bench.standing(), bench.records));
    expect(movedByCountsAfter(bench.standing(), [materialLot("A1")], day("2026-11-05"))).toEqual([materialLot("A1")]);
    expect(movedByCountsAfter(bench.standing(), [materialLot("A1")], day("2026-11-12"))).toEqual([]);
    expect(countShelf(early, bench.standing(), bench.records, bench.posted)).toMatchObject({
      kind: "counted since",
      lot: materialLot("A1"),
      on: day("2026-11-12"),
    });
    const [later] = bench.posted.filter(({ id }) => id === "count A1");
    if (!later) throw new Error("the count is not there");
    const taken = { ...later, id: "back", kind: "reversal", reverses: later.id, entries: later.entries } as const;
    expect(
      countShelf(early, bench.standing(), bench.records, [...bench.posted, { ...taken, sequence: 9 }]),
    ).toMatchObject({
      kind: "posted",
    });
  });

  test("[LEDGER-26] finished units are counted with what they cost, materials, labour and overhead apart", () => {
    const bench = ledgerBench();
    const lot = finishedLot("F1");
    bench.know(lot, { since: day("2026-11-02"), expires: null, item: "p" });
    const cost = { materials: money("20"), labour: money("5"), overhead: money("2.5") };
    const entries = moving(lot, 10n, cost, { kind: "supplier" }, { kind: "finished" });
    const opening = { id: "opening", kind: "opening", day: day("2026-11-02"), reason: null, reverses: null, entries };
    bench.post({ kind: "posted", posting: opening });
    const counted = { ...count("A1", "0", "0"), lines: [{ lot, expected: 10n, counted: 8n }] };
    expect(countShelf(counted, bench.standing(), bench.records)).toMatchObject({
      kind: "posted",
      differences: [{ quantity: -2n, value: { materials: -money("4"), labour: -money("1"), overhead: -money("0.5") } }],
    });
  });
});

describe("selling", () => {
  const bench = ledgerBench();
  const lot = finishedLot("F1");
  bench.know(lot, { since: day("2026-11-02"), expires: day("2026-11-20"), item: "p" });
  const value = { materials: money("20"), labour: money("5"), overhead: money("2.5") };
  bench.post({
    kind: "posted",
    posting: {
      id: "opening",
      kind: "opening",
      day: day("2026-11-02"),
      reason: null,
      reverses: null,
      entries: moving(lot, 10n, value, { kind: "supplier" }, { kind: "finished" }),
    },
  });

  test("[LEDGER-15] units go with what they cost and come back for their part of what was sold", () => {
    const sale = { ...move("F1", 4n, { day: day("2026-11-20") }), outOfDate: "refuse" } as const;
    bench.post(sellUnits(sale, bench.standing(), bench.records));
    expect([bench.stands("F1", "finished"), bench.stands("F1", "sold")]).toEqual(["6 for 16.5", "4 for 11"]);
    bench.post(takeBack(move("F1", 1n, { key: "back" }), bench.standing(), bench.records));
    expect([bench.stands("F1", "finished"), bench.stands("F1", "sold")]).toEqual(["7 for 19.25", "3 for 8.25"]);
    expect(takeBack(move("F1", 4n, { key: "more" }), bench.standing(), bench.records)).toMatchObject({
      kind: "not there",
      place: { kind: "sold" },
      there: 3n,
    });
  });

  test("[LEDGER-8] out of date it is refused, unless the maker says so; a material is not sold", () => {
    const sale = { ...move("F1", 1n, { key: "late" }), outOfDate: "refuse" } as const;
    expect(sellUnits(sale, bench.standing(), bench.records)).toMatchObject({
      kind: "out of date",
      expires: day("2026-11-20"),
    });
    expect(sellUnits({ ...sale, outOfDate: "sell" }, bench.standing(), bench.records).kind).toBe("posted");
    const other = { ...move("A1", 1n), outOfDate: "refuse" } as const;
    expect(sellUnits(other, bench.standing(), bench.records).kind).toBe("not finished");
  });
});
