import { describe, expect, test } from "vitest";
import { type Day, isoDate } from "@/lib/domain/calendar";
import { plan } from "@/lib/domain/plan";
import type { MaterialOutlook, ShelfEvent } from "@/lib/domain/plan-figures";
import { type Parts, workshopOf } from "@/tests/helpers/bench";
import {
  day,
  formula,
  g,
  grams,
  inGrams,
  lot,
  material,
  money,
  offer,
  order,
  product,
  run,
  supplier,
} from "@/tests/helpers/notation";

/** One material A in a product of 10 g a unit: a run of n units draws n × 10 g. */
const made = (parts: Parts) =>
  workshopOf({
    materials: [material("A")],
    formulas: [formula("f", { A: "100" })],
    products: [product("p", "f", { fill: grams("10") })],
    ...parts,
  });

const outlook = (parts: Parts): MaterialOutlook => {
  const [first] = plan(made(parts), day("2026-11-25")).materials;
  if (!first) throw new Error("no material");
  return first;
};

const told = (event: ShelfEvent): string => {
  const what = event.kind === "drawn" ? event.run.id : event.kind === "settled" ? "" : event.lot;
  const size = event.kind === "drawn" ? event.need : event.quantity;
  const stands = event.owed > 0n ? `-${inGrams(event.owed)}` : inGrams(event.shelf);
  return `${isoDate(event.day).slice(5)} ${event.kind} ${what} ${inGrams(size)} -> ${stands}`.replace("  ", " ");
};

const line = (quantity: string, expires: string | null = null) => ({
  material: "A",
  quantity: g(quantity),
  cost: money("1"),
  expires: expires === null ? null : day(expires),
});

describe("[PLAN-1] a day: write off, come in and settle, draw", () => {
  test.each([
    {
      rule: "PLAN-1",
      says: "a lot is written off the day after its last day, and what is owed is settled by the next arrival",
      parts: {
        lots: [lot("L1", "A", "200", "2", { expires: day("2026-11-27") }), lot("L2", "A", "100", "1")],
        orders: [order("po", "2026-12-01", [line("60")])],
        runs: [run("r1", "p", "2026-11-26", 15), run("r2", "p", "2026-11-28", 10), run("r3", "p", "2026-11-30", 10)],
      },
      events: [
        "11-26 drawn r1 150 -> 150",
        "11-28 written off L1 50 -> 100",
        "11-28 drawn r2 100 -> 0",
        "11-30 drawn r3 100 -> -100",
        "12-01 arrived po/1 60 -> -100",
        "12-01 settled 60 -> -40",
      ],
    },
    {
      rule: "PLAN-3",
      says: "a line that arrives out of date is written off at once and settles nothing",
      parts: {
        lots: [],
        orders: [order("po", "2026-11-20", [line("9", "2026-11-23"), line("30")])],
        runs: [run("r1", "p", "2026-11-25", 2)],
      },
      events: [
        "11-25 drawn r1 20 -> -20",
        "11-26 arrived po/1 9 -> -20",
        "11-26 arrived po/2 30 -> -20",
        "11-26 written off po/1 9 -> -20",
        "11-26 settled 20 -> 10",
      ],
    },
    {
      rule: "PLAN-4",
      says: "a run of the past draws today, before today's; within a day by sequence, then id",
      parts: {
        lots: [lot("L", "A", "100", "1")],
        runs: [
          run("b", "p", "2026-11-25", 1),
          run("a", "p", "2026-11-25", 2),
          run("early", "p", "2026-11-25", 3, { sequence: -1 }),
          run("past", "p", "2026-11-20", 4, { sequence: 5 }),
        ],
      },
      events: [
        "11-25 drawn past 40 -> 60",
        "11-25 drawn early 30 -> 30",
        "11-25 drawn a 20 -> 10",
        "11-25 drawn b 10 -> 0",
      ],
    },
  ])("[$rule] $says", ({ parts, events }) => {
    expect(outlook(parts).events.map(told)).toEqual(events);
  });
});

describe("[PLAN-5] [PLAN-8] short, below safety, how much to buy", () => {
  const shown = (parts: Parts) => {
    const { shortOn, belowSafetyOn, shortBy, toBuy, orderBy, daysLate } = outlook(parts);
    const iso = (at: Day | null) => (at === null ? null : isoDate(at).slice(5));
    return {
      shortOn: iso(shortOn),
      belowSafetyOn: iso(belowSafetyOn),
      shortBy: inGrams(shortBy),
      toBuy: inGrams(toBuy),
      orderBy: iso(orderBy),
      daysLate,
    };
  };

  test("[PLAN-6] below the safety stock first, short later; order by the last working day in time", () => {
    expect(
      shown({
        materials: [material("A", { safetyStock: grams("20"), safetyDays: 1 })],
        lots: [lot("L", "A", "100", "1")],
        offers: [offer("o", "A", "50", "1")],
        runs: [run("r1", "p", "2026-12-01", 9), run("r2", "p", "2026-12-07", 9)],
      }),
    ).toEqual({
      shortOn: "12-07",
      belowSafetyOn: "12-01",
      shortBy: "100",
      toBuy: "100",
      orderBy: "11-27",
      daysLate: 0,
    });
  });

  test("[PLAN-8] a dip that no purchase can reach is not bought, and only the days of cover count", () => {
    expect(
      shown({
        settings: { coverDays: 5 },
        suppliers: [supplier("s", { leadDays: 10, leadCounts: "calendar" })],
        offers: [offer("o", "A", "50", "1")],
        orders: [order("po", "2026-11-27", [line("50")])],
        runs: [run("r1", "p", "2026-11-26", 4), run("r2", "p", "2026-12-08", 3), run("r3", "p", "2026-12-20", 9)],
      }),
    ).toEqual({ shortOn: "11-26", belowSafetyOn: "11-26", shortBy: "110", toBuy: "20", orderBy: "11-16", daysLate: 9 });
  });

  test("[PLAN-7] [PLAN-8] without an offer the window opens today; an arrival after the horizon counts its last day", () => {
    const runs = [run("r1", "p", "2026-11-26", 4), run("r2", "p", "2026-12-01", 3)];
    expect(shown({ settings: { horizonDays: 7 }, runs })).toEqual({
      shortOn: "11-26",
      belowSafetyOn: "11-26",
      shortBy: "70",
      toBuy: "70",
      orderBy: null,
      daysLate: null,
    });
    const slow = { suppliers: [supplier("s", { leadDays: 40, leadCounts: "calendar" as const })] };
    expect(
      shown({ settings: { horizonDays: 7, coverDays: 0 }, offers: [offer("o", "A", "1", "1")], runs, ...slow }).toBuy,
    ).toBe("70");
  });

  test("[PLAN-7] where an offer is preferred, only its supplier's offers count", () => {
    const parts: Parts = {
      suppliers: [supplier("s", { leadDays: 9, leadCounts: "calendar" }), supplier("quick")],
      offers: [
        offer("o1", "A", "50", "9", { preferred: true }),
        offer("o2", "A", "50", "1", { supplier: "quick" }),
        offer("o3", "A", "500", "1"),
      ],
    };
    const seen = outlook(parts);
    expect(seen.offersConsidered.map(({ id }) => id)).toEqual(["o1", "o3"]);
    expect(isoDate(seen.firstArrival)).toBe("2026-12-04");
  });

  test("[PLAN-9] what is written off within the horizon, those out of date today included, on the day after", () => {
    const { expiring, onHand } = outlook({
      settings: { horizonDays: 10 },
      lots: [
        lot("Z", "A", "5", "1", { expires: day("2026-11-20") }),
        lot("empty", "A", "0", "0", { expires: day("2026-11-20") }),
        lot("B", "A", "6", "1", { expires: day("2026-12-04") }),
        lot("after", "A", "7", "1", { expires: day("2026-12-05") }),
      ],
    });
    expect(expiring.map(({ lot: id, on, quantity }) => `${id} ${isoDate(on)} ${inGrams(quantity)}`)).toEqual([
      "B 2026-12-05 6",
      "Z 2026-11-21 5",
    ]);
    expect(inGrams(onHand)).toBe("13");
  });
});
