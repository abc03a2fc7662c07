import { beforeEach, describe, expect, test } from "vitest";
import { wholeValue } from "@/lib/domain/ledger/posting";
import { lookAtCount, postCount } from "@/lib/operations/count-shelf";
import { outstanding, progressOf } from "@/lib/domain/orders";
import { holdLot } from "@/lib/operations/hold-lot";
import { postLateCost } from "@/lib/operations/late-cost";
import { makePlannedRun } from "@/lib/operations/make-run";
import { receive } from "@/lib/operations/receive-delivery";
import { releaseLot } from "@/lib/operations/release-lot";
import { reversePosting } from "@/lib/operations/reverse-posting";
import { sell } from "@/lib/operations/sell-units";
import { takeUnitsBack } from "@/lib/operations/take-back";
import { writeOffStock } from "@/lib/operations/write-off";
import {
  books,
  counting,
  delivery,
  finished,
  lots,
  making,
  moving,
  named,
  shop,
  TODAY,
  units,
} from "../helpers/ledger-shop";
import { day, g, inGrams, money, stock } from "../helpers/notation";
import { auditAfterEachTest } from "../helpers/store-audit";
import { keepBooks, openBooks } from "../helpers/store-desk";
import { storeForEachTest } from "../helpers/store-folder";
import { bytesOf } from "../helpers/store-soundness";

const { file } = storeForEachTest();
auditAfterEachTest(file);
beforeEach(() => openBooks(shop()));

const reversal = (reverses: string, given: object = {}) => ({
  key: `not ${reverses}`,
  day: TODAY,
  realToday: TODAY,
  reverses,
  reason: "entered by mistake",
  ...given,
});

describe("a delivery", () => {
  test("[LEDGER-9] becomes lots at what they cost in the end, and is counted on its order", async () => {
    const lines = [
      { order: { id: "po", line: 0 } },
      { material: "jar", quantity: stock(24n), paid: money("12"), order: { id: "po", line: 1 } },
    ];
    const extras = [{ what: "delivery", amount: money("8"), by: "value" }] as const;
    const result = await receive(delivery(lines, { extras }));
    expect(result).toMatchObject({ kind: "posted", lots: [{ cost: money("25") }, { cost: money("15") }] });
    expect(result).not.toHaveProperty("books");
    expect(await lots()).toBe("late 900 for 18, soon 600 for 6, jars 48 for 24, D1 1000 for 25, D2 24 for 15");
    expect((await books()).workshop.orders.map(progressOf)).toEqual(["received"]);
  });

  test("[LEDGER-9] of one line of two leaves the other on order", async () => {
    await receive(delivery([{ material: "jar", quantity: stock(24n), order: { id: "po", line: 1 } }]));
    const [order] = (await books()).workshop.orders;
    expect(order && progressOf(order)).toBe("partly received");
    expect(order?.lines.map((line) => outstanding(line))).toEqual([g("1000"), 0n]);
  });

  test.each([
    { says: "an unknown material", asked: delivery([{ material: "gold" }]), kind: "no such material" },
    {
      says: "a line on order of something else",
      asked: delivery([{ order: { id: "po", line: 1 } }]),
      kind: "no such line on order",
    },
    { says: "the id of a line on order", asked: delivery([{ lot: "po/1" }]), kind: "id of a line on order" },
    { says: "a lot that is there", asked: delivery([{ lot: "soon" }]), kind: "lot exists" },
    { says: "a day to come", asked: delivery([{}], { day: day("2026-11-26") }), kind: "future day" },
  ])("[LEDGER-8] with $says is refused, and no byte is changed", async ({ asked, kind }) => {
    const before = bytesOf(file());
    expect(await receive(asked)).toMatchObject({ kind });
    expect(bytesOf(file())).toEqual(before);
  });

  test("[LEDGER-3] the same form posted five times is one posting", async () => {
    const results = await Promise.all(Array.from({ length: 5 }, () => receive(delivery([{}]))));
    const kinds = results.map(({ kind }) => kind).sort();
    expect(kinds).toEqual([...Array.from({ length: 4 }, () => "already posted"), "posted"]);
    expect((await books()).workshop.lots).toHaveLength(4);
    expect(await receive(delivery([{ lot: "other" }]))).toMatchObject({
      kind: "already posted",
      posting: { id: "delivery" },
    });
  });
});

describe("a run", () => {
  test("[LEDGER-11] [LEDGER-12] [CLOSE-1] draws first expired first, and its units stand with their true cost", async () => {
    const result = await makePlannedRun(making("r"));
    // 600 g for 6 and 400 of 900 g for 8, 10 of 48 jars for 5; half an hour at 12 and 6.
    expect(result).toMatchObject({
      kind: "posted",
      drawn: { materials: money("19") },
      finished: { materials: money("19"), labour: money("6"), overhead: money("3") },
    });
    expect(await lots()).toBe("late 500 for 10, soon 0 for 0, jars 38 for 19");
    expect(await finished()).toBe("F-r 10");
    const { desk, workshop } = await books();
    expect(workshop.runs.map(({ id }) => id)).toEqual(["s"]);
    expect(desk.closedRuns).toMatchObject([{ run: { id: "r" }, madeOn: TODAY, unitsMade: 10n }]);
  });

  test("[LEDGER-11] draws the lots that the maker chose, on the day that the maker says", async () => {
    const draws = [
      { lot: "late", quantity: g("900"), spilt: 0n },
      { lot: "soon", quantity: g("100"), spilt: g("10") },
      { lot: "jars", quantity: 10n, spilt: 2n },
    ];
    const result = await makePlannedRun(making("r", { draws, day: day("2026-11-20"), unitsMade: units(9) }));
    // 18 and 1 of oil, 5 of jars and 9 of time are 33, of which the missing unit takes a tenth; 0.1 and 1 were spilt.
    expect(result.kind === "posted" && inGrams(wholeValue(result.lost))).toBe("4.4");
    expect(await lots()).toBe("late 0 for 0, soon 490 for 4.9, jars 36 for 18");
  });

  test("[LEDGER-12] [CLOSE-4] a batch that failed is lost whole, its lot is on no list, and its id stays given", async () => {
    const result = await makePlannedRun(making("r", { unitsMade: units(0) }));
    expect(result.kind === "posted" && inGrams(wholeValue(result.lost))).toBe("28");
    expect(await finished()).toBe("");
    const again = making("s", { finishedLot: { id: "F-r", bestBefore: null } });
    expect(await makePlannedRun(again)).toMatchObject({ kind: "finished lot exists" });
  });

  test("[CLOSE-1] in two tabs it is made once, and the second is told what happened", async () => {
    const results = await Promise.all([
      makePlannedRun(making("r", { key: "tab 1" })),
      makePlannedRun(making("r", { key: "tab 2", unitsMade: units(3) })),
    ]);
    expect(results).toMatchObject([{ kind: "posted" }, { kind: "already made", closed: { unitsMade: 10n } }]);
  });

  test("[LEDGER-4] what is not there is refused with what is there, and no byte is changed", async () => {
    const before = bytesOf(file());
    const draws = [{ lot: "soon", quantity: g("601"), spilt: 0n }];
    expect(await makePlannedRun(making("r", { draws }))).toMatchObject({
      kind: "not there",
      there: g("600"),
      asked: g("601"),
    });
    const stale = { ...making("r").run, units: units(11) };
    expect(await makePlannedRun(making("r", { run: stale }))).toMatchObject({ kind: "stale" });
    expect(bytesOf(file())).toEqual(before);
  });

  test("[LEDGER-16] whose making is taken back is planned again, and can be made again", async () => {
    await makePlannedRun(making("r"));
    expect(await reversePosting(reversal("made r"))).toMatchObject({ kind: "posted" });
    expect(await lots()).toBe("late 900 for 18, soon 600 for 6, jars 48 for 24");
    const { workshop, desk } = await books();
    expect([workshop.runs.map(({ id }) => id), desk.closedRuns]).toEqual([["s", "r"], []]);
    expect(await reversePosting(reversal("made r", { key: "twice" }))).toMatchObject({ kind: "already reversed" });
    const again = making("r", { key: "made again", finishedLot: { id: "F-2", bestBefore: null } });
    expect(await makePlannedRun(again)).toMatchObject({ kind: "posted" });
    expect(await finished()).toBe("F-r 0, F-2 10");
  });

  test("[CLOSE-1] [LEDGER-8] twenty presses of one form at once make it once", async () => {
    const told = await Promise.all(Array.from({ length: 20 }, () => makePlannedRun(making("r"))));
    const kinds = told.map(({ kind }) => kind).toSorted();
    expect(kinds).toEqual([...Array<string>(19).fill("already posted"), "posted"]);
    expect(await lots()).toBe("late 500 for 10, soon 0 for 0, jars 38 for 19");
  });
});

describe("stock", () => {
  test("[LEDGER-14] on hold is out of planning until it is released", async () => {
    expect(await holdLot(moving({ soon: g("600"), jars: 40n }))).toMatchObject({ kind: "posted" });
    expect(await lots()).toBe("late 900 for 18, soon 0 for 0, jars 8 for 4");
    const draws = [{ lot: "soon", quantity: g("1"), spilt: 0n }];
    expect(await makePlannedRun(making("r", { draws }))).toMatchObject({ kind: "not there", there: 0n });
    expect(await releaseLot(moving({ soon: g("500") }, { key: "released" }))).toMatchObject({ kind: "posted" });
    const off = {
      ...moving({ soon: g("100") }, { key: "off" }),
      reason: "recalled",
      as: "lost",
      from: "hold",
    } as const;
    expect(await writeOffStock(off)).toMatchObject({ kind: "posted", value: { materials: money("1") } });
    expect(await lots()).toBe("late 900 for 18, soon 500 for 5, jars 8 for 4");
  });

  test("[LEDGER-13] is counted in one posting; a count drawn before somebody else's is refused", async () => {
    expect(await postCount(counting({ late: ["900", "890"], soon: ["600", "606"] }))).toMatchObject({
      kind: "posted",
      differences: [{ value: { materials: money("-0.2") } }, { value: { materials: money("0.06") } }],
    });
    expect(await lots()).toBe("late 890 for 17.8, soon 606 for 6.06, jars 48 for 24");
    expect(await postCount(counting({ late: ["900", "880"] }, { key: "second" }))).toMatchObject({
      kind: "stale count",
      now: g("890"),
    });
  });

  test("[LEDGER-26] is counted for a past day, materials and finished units in one posting", async () => {
    await makePlannedRun(making("r", { day: day("2026-11-20") }));
    const lines = [
      { lot: named("late"), expected: g("500"), counted: g("495") },
      { lot: named("F-r"), expected: 10n, counted: 9n },
    ];
    const count = counting({}, { key: "both", day: day("2026-11-22"), lines });
    expect(await lookAtCount(count)).toMatchObject({ kind: "would post" });
    expect(await postCount(count)).toMatchObject({ kind: "posted", posting: { day: day("2026-11-22") } });
    expect(await lots()).toBe("late 495 for 9.9, soon 0 for 0, jars 38 for 19");
    expect(await finished()).toBe("F-r 9");
    const before = counting({ late: ["500", "490"] }, { key: "before", day: day("2026-11-21") });
    expect(await postCount(before)).toMatchObject({ kind: "counted since", on: day("2026-11-22") });
    expect(await reversePosting(reversal("both"))).toMatchObject({ kind: "posted" });
    expect([await lots(), await finished()]).toEqual(["late 500 for 10, soon 0 for 0, jars 38 for 19", "F-r 10"]);
    expect(await postCount(before)).toMatchObject({ kind: "posted" });
  });

  test("[LEDGER-15] is sold by lot and taken back, and the list of sales follows", async () => {
    await makePlannedRun(making("r"));
    const sale = { ...moving({ "F-r": 6n }, { key: "sale" }), outOfDate: "refuse" } as const;
    expect(await sell(sale)).toMatchObject({
      kind: "posted",
      value: { materials: money("11.4"), labour: money("3.6") },
    });
    expect(await takeUnitsBack(moving({ "F-r": 2n }, { key: "back" }))).toMatchObject({ kind: "posted" });
    expect(await finished()).toBe("F-r 6");
    expect((await books()).workshop.sales).toEqual([{ product: "p", date: TODAY, units: 4n }]);
    expect(await reversePosting(reversal("sale"))).toMatchObject({
      kind: "drawn since",
      since: [{ posting: { id: "back" } }],
    });
    await reversePosting(reversal("back"));
    expect(await reversePosting(reversal("sale"))).toMatchObject({ kind: "posted" });
    expect(await finished()).toBe("F-r 10");
    expect((await books()).workshop.sales).toEqual([]);
  });

  test("[LEDGER-10] [LEDGER-21] takes a late cost wherever it has gone", async () => {
    await makePlannedRun(making("r"));
    await sell({ ...moving({ "F-r": 5n }, { key: "sale" }), outOfDate: "refuse" });
    const lines = [{ lot: named("late"), amount: money("9") }];
    const cost = { key: "bill", day: TODAY, realToday: TODAY, reason: "freight", lines };
    expect(await postLateCost(cost)).toMatchObject({ kind: "posted" });
    // 400 of 900 g went into the run, half of which is sold.
    expect(await lots()).toBe("late 500 for 15, soon 0 for 0, jars 38 for 19");
    const back = await takeUnitsBack(moving({ "F-r": 5n }, { key: "back" }));
    expect(back).toMatchObject({ kind: "posted", value: { materials: money("11.5") } });
  });
});

test("[LEDGER-4] of eight clients that make overlapping runs at once, none oversells a lot", async () => {
  const each = Array.from({ length: 8 }, (_, client) =>
    makePlannedRun(
      making(client % 2 === 0 ? "r" : "s", {
        key: `client ${String(client)}`,
        finishedLot: { id: `F-${String(client)}`, bestBefore: null },
        draws: [
          { lot: "late", quantity: g("500"), spilt: 0n },
          { lot: "soon", quantity: g("100"), spilt: 0n },
        ],
      }),
    ),
  );
  const kinds = (await Promise.all(each)).map(({ kind }) => kind).sort();
  expect(kinds).toEqual([
    "already made",
    "already made",
    "already made",
    "not there",
    "not there",
    "not there",
    "not there",
    "posted",
  ]);
  expect(await lots()).toBe("late 400 for 8, soon 500 for 5, jars 48 for 24");
});

describe("a lot entered in the book", () => {
  test("[LEDGER-22] of which nothing has happened is taken back and opened anew", async () => {
    const before = await books();
    const changed = before.workshop.lots.map((lot) =>
      lot.id === "late" ? { ...lot, received: day("2026-11-01"), remaining: g("700"), value: money("7") } : lot,
    );
    await openedWith(changed.filter(({ id }) => id !== "soon"));
    expect(await lots()).toBe("late 700 for 7, jars 48 for 24");
    expect(await makePlannedRun(making("r", { day: day("2026-10-31") }))).toMatchObject({ kind: "before the lot" });
  });

  test("[LEDGER-22] that has moved is put right by the difference", async () => {
    await makePlannedRun(making("r"));
    const { workshop } = await books();
    await openedWith(
      workshop.lots.map((lot) => (lot.id === "late" ? { ...lot, remaining: g("490"), value: money("10") } : lot)),
    );
    expect(await lots()).toBe("late 490 for 10, soon 0 for 0, jars 38 for 19");
  });

  test("[LEDGER-22] stays of its material once it has moved", async () => {
    await makePlannedRun(making("r"));
    const { workshop } = await books();
    const otherwise = workshop.lots.map((lot) => (lot.id === "late" ? { ...lot, material: "jar" } : lot));
    await expect(openedWith(otherwise)).rejects.toThrow("lot late has moved");
  });

  async function openedWith(changed: Awaited<ReturnType<typeof books>>["workshop"]["lots"]): Promise<void> {
    const before = await books();
    await keepBooks({ ...before, workshop: { ...before.workshop, lots: changed } });
  }
});
