/** Cases worked by hand from the rules. */
import { describe, expect, test } from "vitest";
import { compositions } from "@/lib/domain/formula";
import { type LateCost, lateCost } from "@/lib/domain/ledger/late-cost";
import { makeRun, type RunMade } from "@/lib/domain/ledger/make-run";
import { plannedLosses, plannedMinutes, timeCost } from "@/lib/domain/ledger/planned-loss";
import { finishedLot, materialLot, wholeValue } from "@/lib/domain/ledger/posting";
import { type Reversal, reverse } from "@/lib/domain/ledger/reverse";
import { batchUses } from "@/lib/domain/ledger/standing-postings";
import { hold, sellUnits, type StockMove } from "@/lib/domain/ledger/stock-moves";
import { usesOf } from "@/lib/domain/needs";
import { quantity } from "@/lib/domain/quantity";
import { COIN, ledgerBench, type LedgerBench, lotNamed, TODAY } from "@/tests/helpers/ledger-bench";
import {
  day,
  decimal,
  formula,
  g,
  grams,
  inGrams,
  material,
  money,
  percent,
  product,
  settings,
} from "@/tests/helpers/notation";

/** 10 units of 90 g with 5 % process loss and a heel of 50 g: bulk (900 + 50) ÷ 0.95 = 1000 g, of it 900 g in units. */
const cream = product("p", "f", {
  fill: grams("90"),
  heel: grams("50"),
  processLoss: percent("5"),
  labourMinutesPerRun: decimal("30"),
  labourMinutesPerUnit: decimal("3"),
});
const composition = compositions([formula("f", { A: "80", B: "20" })])("f");
const uses = usesOf(cream, composition, (id) => material(id));
const losses = plannedLosses(cream, uses, composition, quantity(10n));

const bench = (): LedgerBench => {
  const own = ledgerBench();
  own.receive("2026-11-02", { A1: ["500", "5"], A2: ["600", "12"], B1: ["300", "30"] });
  return own;
};
/** Draws as `{ A1: "500" }` in grams. */
const made = (draws: Readonly<Record<string, string>>, given: Partial<RunMade> = {}): RunMade => ({
  key: "made r",
  run: "r",
  day: day("2026-11-10"),
  today: TODAY,
  note: null,
  unitsPlanned: quantity(10n),
  unitsMade: quantity(10n),
  finishedLot: "F1",
  ofMaterial: null,
  draws: Object.entries(draws).map(([lot, amount]) => ({ lot, quantity: g(amount), spilt: 0n })),
  outOfDate: "refuse",
  before: [],
  onHold: false,
  labour: money("0"),
  overhead: money("0"),
  ...given,
});
const NEED = { A1: "500", A2: "300", B1: "200" };
const make = (own: LedgerBench, given: RunMade) => {
  const result = makeRun(given, own.standing(), losses, own.records);
  own.post(result);
  own.know(finishedLot(given.finishedLot), { since: given.day, expires: null, item: "p" });
  return result;
};

describe("a run that was made", () => {
  test("[LEDGER-11] loss within plan leaves as quantity without value, the rest stays in the batch", () => {
    const own = bench();
    make(own, made(NEED));
    // 100 of 1000 g are lost within plan: of the 800 g of A 80, shared 5 : 3 over its lots, of the 200 g of B 20.
    expect(losses.map(({ need, ofNeed }) => [inGrams(need), inGrams(ofNeed)])).toEqual([
      ["800", "80"],
      ["200", "20"],
    ]);
    expect(["A1", "A2", "B1"].map((lot) => [own.stands(lot, "batch r"), own.stands(lot, "lost")])).toEqual([
      ["450 for 5", "50 for 0"],
      ["270 for 6", "30 for 0"],
      ["180 for 20", "20 for 0"],
    ]);
    expect([own.stands("A1", "shelf"), own.stands("A2", "shelf"), own.stands("F1", "finished")]).toEqual([
      "0 for 0",
      "300 for 6",
      "10 for 31",
    ]);
  });

  test("[LEDGER-12] labour and overhead go in and stay apart; the batch gives all its value away", () => {
    const own = bench();
    const time = timeCost(
      plannedMinutes(cream, quantity(10n)),
      settings({ labourPerHour: money("14"), overheadPerHour: money("3") }),
    );
    // 30 + 10 × 3 minutes are an hour.
    expect(time).toEqual({ labour: money("14"), overhead: money("3") });
    const result = make(own, made(NEED, time));
    expect(result).toMatchObject({
      drawn: { materials: money("31"), labour: 0n },
      finished: { materials: money("31"), labour: money("14"), overhead: money("3") },
      lost: { materials: 0n },
    });
    expect(own.stands("F1", "labour")).toBe("0 for -14");
    const [, posting] = own.posted;
    const inBatch = posting?.entries.filter(({ place }) => place.kind === "batch") ?? [];
    expect(inBatch.reduce((sum, { value }) => sum + wholeValue(value), 0n)).toBe(0n);
  });

  test("[LEDGER-12] units that are missing are lost with their part of the whole cost", () => {
    const own = bench();
    make(own, made(NEED, { unitsMade: quantity(8n), labour: money("14"), overhead: money("5") }));
    expect([own.stands("F1", "finished"), own.stands("F1", "lost")]).toEqual(["8 for 40", "2 for 10"]);
  });

  test("[LEDGER-12] more units than planned share the same cost; a batch that failed is lost whole", () => {
    const over = bench();
    make(over, made(NEED, { unitsMade: quantity(12n) }));
    expect([over.stands("F1", "finished"), over.stands("F1", "lost")]).toEqual(["12 for 31", "0 for 0"]);
    const failed = bench();
    make(failed, made(NEED, { unitsMade: quantity(0n) }));
    expect([failed.stands("F1", "finished"), failed.stands("F1", "lost")]).toEqual(["0 for 0", "10 for 31"]);
  });

  test("[LEDGER-12] what was spilt beside it is lost with its value; [LEDGER-11] more drawn loses more within plan", () => {
    const own = bench();
    const draws = [
      { lot: "A1", quantity: g("400"), spilt: g("100") },
      { lot: "A2", quantity: g("440"), spilt: 0n },
      { lot: "B1", quantity: g("200"), spilt: 0n },
    ];
    const result = make(own, made({}, { draws }));
    expect(result).toMatchObject({ drawn: { materials: money("32.8") }, lost: { materials: money("1") } });
    // 840 g of A where 800 are needed: 84 g within plan, shared 400 : 440.
    expect([own.stands("A1", "lost"), own.stands("A2", "lost")]).toEqual(["140 for 1", "44 for 0"]);
  });

  const own = bench();
  own.know(materialLot("A1"), { since: day("2026-11-02"), expires: day("2026-11-09"), item: "A" });
  test.each([
    { says: "more than is there", asked: made({ A2: "600.000001" }), kind: "not there" },
    { says: "a lot that there is not", asked: made({ C1: "1" }), kind: "no such lot" },
    { says: "a lot out of date", asked: made(NEED), kind: "out of date" },
    { says: "out of date on purpose", asked: made(NEED, { outOfDate: "draw" }), kind: "posted" },
    { says: "a day to come", asked: made(NEED, { day: day("2026-11-26") }), kind: "future day" },
    { says: "less than nothing", asked: made({ A2: "-1" }), kind: "nothing to post" },
    {
      says: "a lot twice",
      asked: made({}, { draws: [...made({ A2: "1" }).draws, ...made({ A2: "1" }).draws] }),
      kind: "asked twice",
    },
  ])("[LEDGER-8] $says: $kind", ({ asked, kind }) => {
    expect(makeRun(asked, own.standing(), losses, own.records).kind).toBe(kind);
  });

  test("[LEDGER-8] the id of a finished lot is given once", () => {
    const twice = bench();
    make(twice, made({ A1: "10" }));
    const again = made({ A1: "10" }, { key: "again", run: "r2" });
    expect(makeRun(again, twice.standing(), losses, twice.records)).toEqual({ kind: "finished lot exists", lot: "F1" });
  });
});

const move = (lot: string, amount: bigint, given: Partial<StockMove> = {}): StockMove => ({
  key: `move ${lot} ${String(amount)}`,
  day: TODAY,
  today: TODAY,
  reason: null,
  lines: [{ lot: lotNamed(lot), quantity: amount }],
  ...given,
});

describe("a late cost", () => {
  const late = (amount: string, given: Partial<LateCost> = {}): LateCost => ({
    key: `late ${amount}`,
    day: TODAY,
    today: TODAY,
    reason: "freight bill",
    lines: [{ lot: materialLot("A2"), amount: money(amount) }],
    ...given,
  });
  const post = (own: LedgerBench, asked: LateCost) => {
    const result = lateCost(asked, own.standing(), batchUses(own.posted), own.records, COIN);
    own.post(result);
  };

  test("[LEDGER-10] goes wherever the lot has gone, through the batch to stock, sales and loss", () => {
    const own = bench();
    make(own, made(NEED, { unitsMade: quantity(9n) }));
    own.post(hold(move("A2", g("100")), own.standing(), own.records));
    own.post(sellUnits({ ...move("F1", 4n), outOfDate: "refuse" }, own.standing(), own.records));
    // Of 600 g: 300 went into the batch (30 of them within plan), 100 are on hold, 200 on the shelf. Of 10 units 5 are
    // in stock, 4 sold, 1 missing.
    post(own, late("6.00"));
    expect([own.stands("A2", "shelf"), own.stands("A2", "hold"), own.stands("A2", "lost")]).toEqual([
      "200 for 6",
      "100 for 3",
      "30 for 0",
    ]);
    expect([own.stands("F1", "finished"), own.stands("F1", "sold"), own.stands("F1", "lost")]).toEqual([
      "5 for 17",
      "4 for 13.6",
      "1 for 3.4",
    ]);
    expect(own.stands("A2", "supplier")).toBe("-600 for -18");
  });

  test("[LEDGER-10] [LEDGER-6] is shared to the last cent, and a credit likewise", () => {
    const own = ledgerBench();
    own.receive("2026-11-02", { A2: ["3", "3"] });
    own.post(hold(move("A2", g("2")), own.standing(), own.records));
    post(own, late("0.10"));
    expect([own.stands("A2", "hold"), own.stands("A2", "shelf")]).toEqual(["2 for 2.07", "1 for 1.03"]);
    post(own, late("-0.10"));
    expect([own.stands("A2", "hold"), own.stands("A2", "shelf")]).toEqual(["2 for 2", "1 for 1"]);
  });

  test.each([
    { says: "of nothing", asked: late("0"), kind: "nothing to post" },
    {
      says: "of an unknown lot",
      asked: late("1", { lines: [{ lot: materialLot("Z"), amount: money("1") }] }),
      kind: "no such lot",
    },
    { says: "before the lot came", asked: late("1", { day: day("2026-11-01") }), kind: "before the lot" },
    { says: "that credits more than the lot cost", asked: late("-13"), kind: "cost came later" },
  ])("[LEDGER-8] $says is refused: $kind", ({ asked, kind }) => {
    const own = bench();
    expect(lateCost(asked, own.standing(), [], own.records, COIN).kind).toBe(kind);
  });
});

describe("a reversal", () => {
  const asked = (reverses: string, given: Partial<Reversal> = {}): Reversal => ({
    key: `not ${reverses}`,
    reverses,
    day: TODAY,
    today: TODAY,
    reason: "entered twice",
    ...given,
  });
  const back = (own: LedgerBench, given: Reversal) => {
    const posting = own.posted.find(({ id }) => id === given.reverses) ?? null;
    const reversedBy = own.posted.find(({ reverses }) => reverses === given.reverses) ?? null;
    return reverse(given, { posting, reversedBy }, own.standing(), () => own.posted);
  };

  test("[LEDGER-16] takes back what was posted, and both stay", () => {
    const own = bench();
    make(own, made(NEED));
    own.post(back(own, asked("made r")));
    expect(own.posted).toHaveLength(3);
    expect(own.posted.at(-1)).toMatchObject({ kind: "reversal", reverses: "made r", reason: "entered twice" });
    expect([own.stands("A1", "shelf"), own.stands("A1", "batch r"), own.stands("F1", "finished")]).toEqual([
      "500 for 5",
      "0 for 0",
      "0 for 0",
    ]);
    expect(back(own, asked("made r", { key: "again" })).kind).toBe("already reversed");
    expect(back(own, asked("not made r")).kind).toBe("is a reversal");
  });

  test("[LEDGER-16] where a balance would fall below zero, it names what was drawn since", () => {
    const own = bench();
    make(own, made(NEED));
    own.post(sellUnits({ ...move("F1", 4n), outOfDate: "refuse" }, own.standing(), own.records));
    expect(back(own, asked("made r"))).toMatchObject({
      kind: "drawn since",
      refusal: { lot: finishedLot("F1"), there: 6n, asked: 10n },
      since: [{ posting: { id: "move F1 4" }, quantity: 4n }],
    });
  });

  test("[LEDGER-5] a delivery with a late cost on it is taken back after that", () => {
    const own = ledgerBench();
    own.receive("2026-11-02", { A2: ["3", "3"] });
    const cost: LateCost = {
      key: "late",
      day: TODAY,
      today: TODAY,
      reason: "freight",
      lines: [{ lot: materialLot("A2"), amount: money("1") }],
    };
    own.post(lateCost(cost, own.standing(), [], own.records, COIN));
    expect(back(own, asked("delivery A2"))).toMatchObject({ kind: "cost came later", on: TODAY });
    own.post(back(own, asked("late")));
    expect(back(own, asked("delivery A2")).kind).toBe("posted");
  });

  test.each([
    { says: "of nothing", given: asked("gone"), kind: "no such posting" },
    { says: "before the posting", given: asked("made r", { day: day("2026-11-09") }), kind: "before the posting" },
    { says: "on a day to come", given: asked("made r", { day: day("2026-11-26") }), kind: "future day" },
  ])("[LEDGER-16] $says is refused: $kind", ({ given, kind }) => {
    const own = bench();
    make(own, made(NEED));
    expect(back(own, given).kind).toBe(kind);
  });
});
