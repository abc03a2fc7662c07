/** Cases worked by hand from the rules; properties hold every suggestion to planning the changed workshop afresh. */
import { fc, test as law } from "@fast-check/vitest";
import { describe, expect, test } from "vitest";
import { type BenchMinutes, benchDays, minutesOfRun } from "@/lib/domain/bench-hours";
import { type Day, daysAfter, isoDate, weekday } from "@/lib/domain/calendar";
import { compare, minus, ZERO } from "@/lib/domain/fraction";
import { plan, preparedFor } from "@/lib/domain/plan";
import { quantity } from "@/lib/domain/quantity";
import { type SuggestedDays, suggestedDays } from "@/lib/domain/suggested-days";
import type { OrderLine, Run, Workshop } from "@/lib/domain/workshop";
import { type Parts, workshopOf } from "@/tests/helpers/bench";
import {
  day,
  decimal,
  formula,
  g,
  lot,
  material,
  money,
  order,
  orderLine,
  product,
  run,
} from "@/tests/helpers/notation";

/** A Wednesday. */
const today = day("2026-11-25");

const suggestedIn = (
  workshop: Workshop,
  id: string,
  benchMinutes: BenchMinutes | null,
  most: number,
): SuggestedDays => {
  const figures = plan(workshop, today);
  const short = figures.runs.find((outlook) => outlook.run.id === id);
  if (!short || short.makeable) throw new Error(`${id} is not short`);
  return suggestedDays(short, { workshop, prepared: preparedFor(workshop, today), plan: figures, benchMinutes }, most);
};

const inShort = ({ days, more }: SuggestedDays): string => {
  const each = days.map(({ day: on, dependsOn }) =>
    [isoDate(on).slice(5), ...dependsOn.map((awaited) => `${awaited.order} ${isoDate(awaited.day).slice(5)}`)].join(
      " if ",
    ),
  );
  return `${each.join(", ") || "none"}${more ? " and more" : ""}`;
};

const offered = (parts: Parts, id: string, most = 2, benchMinutes: BenchMinutes | null = null): string =>
  inShort(suggestedIn(workshopOf(parts), id, benchMinutes, most));

const line = (of: string, gramsComing: string, expires: Day | null = null): OrderLine =>
  orderLine({ material: of, quantity: g(gramsComing), cost: money("1"), expires });

/** One unit of a product is 100 g of its material, or 50 g of each. A unit takes six minutes. */
const bench: Parts = {
  materials: [material("A"), material("B")],
  formulas: [formula("a", { A: "100" }), formula("b", { B: "100" }), formula("ab", { A: "50", B: "50" })],
  products: ["a", "b", "ab"].map((of) => product(`p${of}`, of, { labourMinutesPerUnit: decimal("6") })),
};

describe("the days on which a run could be made", () => {
  test("[SUGGEST-1, SUGGEST-2] from the day on which what is short comes in, weekends left out", () => {
    // It comes on a Friday: Friday itself, then Monday.
    const orders = [order("po1", "2026-11-27", [line("A", "500")])];
    expect(offered({ ...bench, orders, runs: [run("r", "pa", "2026-11-25", 5)] }, "r")).toBe(
      "11-27 if po1 11-27, 11-30 if po1 11-27 and more",
    );
  });

  test("[SUGGEST-1] none where nothing is on its way, too little, too late for the horizon, or out of date by then", () => {
    const runs = [run("r", "pa", "2026-11-25", 5)];
    const lots = [lot("a", "A", "100", "1")];
    const on = (orders: Parts["orders"] & object) => offered({ ...bench, lots, runs, orders }, "r");
    expect([
      on([]),
      on([order("po1", "2026-11-27", [line("A", "399.999999")])]),
      on([order("po1", "2027-01-21", [line("A", "400")])]),
      on([order("po1", "2027-01-20", [line("A", "400")])]),
      on([order("po1", "2026-11-28", [line("A", "400", day("2026-11-29"))])]),
    ]).toEqual(["none", "none", "none", "01-20 if po1 01-20", "none"]);
  });

  test("[SUGGEST-1] a later run that can be made now is left what it needs; after it there is enough", () => {
    // 500 g come on the 27th, of which `keep` draws 300 on the 1st; 300 more come on the 3rd.
    const parts: Parts = {
      ...bench,
      orders: [order("po1", "2026-11-27", [line("A", "500")]), order("po2", "2026-12-03", [line("A", "300")])],
      runs: [run("r", "pa", "2026-11-25", 4), run("keep", "pa", "2026-12-01", 3)],
    };
    expect(offered(parts, "r", 1)).toBe("12-03 if po1 11-27 if po2 12-03 and more");
  });

  test("[SUGGEST-1] it comes last on its day, behind a run that needs the same", () => {
    const parts: Parts = {
      ...bench,
      orders: [order("po1", "2026-11-27", [line("A", "700")])],
      runs: [run("r", "pa", "2026-11-25", 4), run("keep", "pa", "2026-11-27", 3, { sequence: 7 })],
    };
    const { days } = suggestedIn(workshopOf(parts), "r", null, 1);
    expect(days.map(({ day: on, sequence }) => [isoDate(on), sequence])).toEqual([["2026-11-27", 8]]);
  });

  test("[SUGGEST-1] a day on which no later place is left is passed over", () => {
    const parts: Parts = {
      ...bench,
      orders: [order("po1", "2026-11-27", [line("A", "700")])],
      runs: [run("r", "pa", "2026-11-25", 4), run("keep", "pa", "2026-11-27", 3, { sequence: 1_000_000 })],
    };
    expect(offered(parts, "r", 1)).toBe("11-30 if po1 11-27 and more");
  });

  test("[SUGGEST-1] a run that could not be made anyway may stay so", () => {
    const parts: Parts = {
      ...bench,
      orders: [order("po1", "2026-11-27", [line("A", "500")])],
      runs: [run("r", "pa", "2026-11-25", 5), run("too many", "pa", "2026-11-30", 99)],
    };
    expect(offered(parts, "r", 1)).toBe("11-27 if po1 11-27 and more");
  });

  test("[SUGGEST-2] a material that is there now, but not any more when the other comes in", () => {
    // B is there until `other` draws it on the 26th; A comes on the 27th, B again on the 2nd.
    const parts: Parts = {
      ...bench,
      lots: [lot("b", "B", "500", "1")],
      orders: [order("po1", "2026-11-27", [line("A", "500")]), order("po2", "2026-12-02", [line("B", "500")])],
      runs: [run("r", "pab", "2026-11-25", 10), run("other", "pb", "2026-11-26", 5)],
    };
    expect(offered(parts, "r", 1)).toBe("12-02 if po1 11-27 if po2 12-02 and more");
  });

  test("[SUGGEST-2] closed days of the workshop are left out", () => {
    const parts: Parts = {
      ...bench,
      settings: { closedDays: [day("2026-11-30"), day("2026-12-01")] },
      // It comes in on a Saturday.
      orders: [order("po1", "2026-11-28", [line("A", "500")])],
      runs: [run("r", "pa", "2026-11-25", 5)],
    };
    expect(offered(parts, "r", 1)).toBe("12-02 if po1 11-28 and more");
  });

  test("[SUGGEST-2, BOOK-6] with the maker's hours, the days that have minutes enough left, Saturdays too", () => {
    // The run asks for 30 minutes; Friday has 60, of which `other` takes 36; Saturday has 30, Sunday and Monday none.
    const week: BenchMinutes = [0, 60, 60, 60, 60, 30, 0];
    const parts: Parts = {
      ...bench,
      lots: [lot("b", "B", "600", "1")],
      orders: [order("po1", "2026-11-27", [line("A", "500")])],
      runs: [run("r", "pa", "2026-11-25", 5), run("other", "pb", "2026-11-27", 6)],
    };
    expect(offered(parts, "r", 2, week)).toBe("11-28 if po1 11-27, 12-01 if po1 11-27 and more");
    expect(offered(parts, "r", 2, [0, 29, 29, 29, 29, 29, 0])).toBe("none");
  });

  test("[SUGGEST-2] a day without hours is no day even for a run that asks for no minutes", () => {
    const parts: Parts = {
      ...bench,
      settings: { closedDays: [day("2026-11-30")] },
      products: [product("pa", "a")],
      orders: [order("po1", "2026-11-28", [line("A", "500")])],
      runs: [run("r", "pa", "2026-11-25", 5)],
    };
    expect(offered(parts, "r", 1, [60, 60, 60, 60, 60, 0, 0])).toBe("12-01 if po1 11-28 and more");
  });

  test("[SUGGEST-2] a run dated before today draws today, and is offered days after today", () => {
    const parts: Parts = {
      ...bench,
      orders: [order("po1", "2026-11-20", [line("A", "500")])],
      runs: [run("r", "pa", "2026-11-10", 5)],
    };
    // Overdue, so it is expected on the next working day.
    expect(offered(parts, "r", 1)).toBe("11-26 if po1 11-26 and more");
  });

  test("[SUGGEST-3] an order that comes in but is not needed is not named, nor one of two that would each do", () => {
    const parts: Parts = {
      ...bench,
      lots: [lot("b", "B", "5000", "1")],
      orders: [
        order("late", "2026-12-02", [line("A", "500")]),
        order("early", "2026-11-30", [line("A", "500")]),
        order("more b", "2026-11-27", [line("B", "500")]),
      ],
      runs: [run("r", "pab", "2026-11-25", 10)],
    };
    const { days } = suggestedIn(workshopOf(parts), "r", null, 3);
    expect(days.map(({ day: on, dependsOn }) => [isoDate(on), dependsOn.map((awaited) => awaited.order)])).toEqual([
      ["2026-11-30", ["early"]],
      ["2026-12-01", ["early"]],
      ["2026-12-02", ["early"]],
    ]);
  });

  test("[SUGGEST-3] an order that feeds a run before it is needed too: without it that run would leave its share", () => {
    // 300 g are here; `taker` takes the 700 g that come on the 26th and 200 of them.
    const parts: Parts = {
      ...bench,
      lots: [lot("a", "A", "300", "1")],
      orders: [order("for taker", "2026-11-26", [line("A", "700")]), order("po", "2026-11-27", [line("A", "100")])],
      runs: [run("taker", "pa", "2026-11-26", 9), run("r", "pa", "2026-11-26", 2, { sequence: 1 })],
    };
    expect(offered(parts, "r", 1)).toBe("11-27 if for taker 11-26 if po 11-27 and more");
  });

  test("[SUGGEST-3] of many orders, the few that are needed", () => {
    // 40 orders of 100 g of A a day apart; 700 g are needed.
    const orders = Array.from({ length: 40 }, (_, at) => ({
      ...order(`po${String(at)}`, "2026-11-26", [line("A", "100")]),
      due: daysAfter(day("2026-11-26"), at),
    }));
    const { days } = suggestedIn(
      workshopOf({ ...bench, orders, runs: [run("r", "pa", "2026-11-25", 7)] }),
      "r",
      null,
      1,
    );
    expect(
      days.map(({ day: on, dependsOn }) => [isoDate(on), dependsOn.map((awaited) => awaited.order).join()]),
    ).toEqual([["2026-12-02", "po0,po1,po2,po3,po4,po5,po6"]]);
  });

  test("[SUGGEST-4] after twelve days without one, it says that there are more", () => {
    // Every day brings 100 g, and a run that can be made takes them; a run of 2 needs what is never left over.
    const every = Array.from({ length: 50 }, (_, at) => daysAfter(day("2026-11-26"), at));
    const parts: Parts = {
      ...bench,
      orders: every.map((due, at) => ({ ...order(`po${String(at)}`, "2026-11-26", [line("A", "100")]), due })),
      runs: [
        run("r", "pa", "2026-11-25", 2),
        ...every.map((date, at) => ({ ...run(`each${String(at)}`, "pa", "2026-11-26", 1), date })),
      ],
    };
    expect(offered(parts, "r", 1)).toBe("none and more");
  });

  test("[SUGGEST-4] where more orders are awaited than are tried out, all that are left count as needed", () => {
    const orders = Array.from({ length: 200 }, (_, at) => order(`po${String(at)}`, "2026-11-27", [line("A", "100")]));
    const parts: Parts = { ...bench, orders, runs: [run("r", "pa", "2026-11-25", 200)] };
    const { days } = suggestedIn(workshopOf(parts), "r", null, 1);
    expect(days.map(({ dependsOn }) => dependsOn.length)).toEqual([200]);
  });
});

const products = ["pa", "pb", "pab"] as const;
const anyRun = fc.record({
  of: fc.constantFrom(...products),
  units: fc.integer({ min: 1, max: 9 }),
  inDays: fc.integer({ min: -3, max: 12 }),
});
const anyLot = fc.record({
  of: fc.constantFrom("A", "B"),
  held: fc.integer({ min: 1, max: 12 }),
  lastsDays: fc.option(fc.integer({ min: 0, max: 15 })),
});
const anyOrder = fc.record({
  inDays: fc.integer({ min: 1, max: 14 }),
  of: fc.constantFrom("A", "B"),
  coming: fc.integer({ min: 1, max: 9 }),
  lastsDays: fc.option(fc.integer({ min: 0, max: 9 })),
});
const anyWeek = fc.option(
  fc.tuple(
    ...Array.from({ length: 7 }, () => fc.constantFrom(0, 30, 60, 120)),
  ) as unknown as fc.Arbitrary<BenchMinutes>,
);

const anyWorkshop = fc
  .tuple(
    fc.array(anyRun, { minLength: 2, maxLength: 8 }),
    fc.array(anyLot, { maxLength: 4 }),
    fc.array(anyOrder, { minLength: 1, maxLength: 5 }),
    fc.array(fc.integer({ min: 0, max: 15 }), { maxLength: 4 }),
  )
  .map(([runs, lots, orders, closedIn]) =>
    workshopOf({
      ...bench,
      settings: { horizonDays: 16, closedDays: closedIn.map((days) => daysAfter(today, days)) },
      lots: lots.map(({ of, held, lastsDays }, at) =>
        lot(`l${String(at)}`, of, String(held * 100), "1", {
          expires: lastsDays === null ? null : daysAfter(today, lastsDays),
        }),
      ),
      orders: orders.map(({ inDays, of, coming, lastsDays }, at) => {
        const due = daysAfter(today, inDays);
        const expires = lastsDays === null ? null : daysAfter(due, lastsDays);
        return { ...order(`po${String(at)}`, "2026-11-26", [line(of, String(coming * 100), expires)]), due };
      }),
      runs: runs.map(({ of, units, inDays }, at) => ({
        ...run(`r${String(at)}`, of, "2026-11-25", units),
        date: daysAfter(today, inDays),
      })),
    }),
  );

const movedTo = (workshop: Workshop, id: string, on: Day): Workshop => {
  const last = Math.max(-1, ...workshop.runs.filter(({ date }) => date === on).map(({ sequence }) => sequence));
  const move = (each: Run): Run => (each.id === id ? { ...each, date: on, sequence: last + 1 } : each);
  return { ...workshop, runs: workshop.runs.map(move) };
};
const makeableIn = (workshop: Workshop): ReadonlySet<string> =>
  new Set(plan(workshop, today).runs.flatMap(({ run: { id }, makeable }) => (makeable ? [id] : [])));

/** Whether the run fits on the day, by the day's own hours and runs. */
function hasRoom(workshop: Workshop, id: string, on: Day, week: BenchMinutes | null): boolean {
  if (workshop.settings.closedDays.includes(on)) return false;
  if (week === null) return weekday(on) <= 5;
  const [there] = benchDays(workshop, week, on, on);
  const asked = workshop.runs.find((each) => each.id === id);
  const of = workshop.products.find((each) => each.id === asked?.product);
  if (!there?.left || !asked || !of) throw new Error("a day or run that is not there");
  return (there.there ?? 0) > 0 && compare(minus(there.left, minutesOfRun(of, asked.units)), ZERO) >= 0;
}

/** Days after the one on which the run draws now on which the whole plan goes ahead with it, tried one by one. */
function daysByTrying(workshop: Workshop, id: string, from: Day, week: BenchMinutes | null): readonly Day[] {
  const before = makeableIn(workshop);
  const days = Array.from({ length: 16 }, (_, at) => daysAfter(today, at + 1)).filter((on) => on > from);
  return days.filter((on) => {
    if (!hasRoom(workshop, id, on, week)) return false;
    const after = makeableIn(movedTo(workshop, id, on));
    return after.has(id) && [...before].every((each) => after.has(each));
  });
}

law.prop([anyWorkshop, anyWeek], { numRuns: 200, seed: 66 })(
  "[SUGGEST-1, SUGGEST-2, SUGGEST-3, SUGGEST-4] trying every day finds the same first day, and every day that is offered; its orders alone are enough",
  (workshop, week) => {
    for (const { run: each, makeable, day: draws } of plan(workshop, today).runs) {
      if (makeable) continue;
      const { days, more } = suggestedIn(workshop, each.id, week, 3);
      const tried = daysByTrying(workshop, each.id, draws, week);
      if (days.length > 0 || !more) expect(days[0]?.day).toBe(tried[0]);
      for (const { day: on, sequence, dependsOn } of days) {
        expect(tried).toContain(on);
        const moved = movedTo(workshop, each.id, on);
        expect(moved.runs.find(({ id }) => id === each.id)?.sequence).toBe(sequence);
        const needed = new Set(dependsOn.map((awaited) => awaited.order));
        const brings = new Set(each.product === "pab" ? ["A", "B"] : [each.product === "pa" ? "A" : "B"]);
        const isLeft = ({ id, lines }: Workshop["orders"][number]) =>
          needed.has(id) || lines.every((of) => !brings.has(of.material));
        const orders = workshop.orders.filter(isLeft);
        const turns = preparedFor(moved, today).runs.map(({ run: { id } }) => id);
        const upToIt = turns.slice(0, turns.indexOf(each.id) + 1);
        const [withAll, withThese] = [makeableIn(moved), makeableIn({ ...moved, orders })];
        expect(upToIt.filter((id) => withAll.has(id) && !withThese.has(id))).toEqual([]);
        expect(dependsOn.length).toBeGreaterThan(0);
      }
    }
  },
);

law.prop([anyWorkshop, fc.integer({ min: 1, max: 12 })], { numRuns: 200, seed: 67 })(
  "[SUGGEST-3] a run by itself cannot be made on the day without any one of the orders that the day depends on",
  (given, count) => {
    const [of] = given.runs;
    if (!of) throw new Error("no run");
    const workshop = { ...given, runs: [{ ...of, units: quantity<Run["units"]>(BigInt(count)) }] };
    if (makeableIn(workshop).has(of.id)) return;
    for (const { day: on, dependsOn } of suggestedIn(workshop, of.id, null, 2).days) {
      const needed = new Set(dependsOn.map((awaited) => awaited.order));
      const moved = movedTo(workshop, of.id, on);
      for (const left of needed) {
        const orders = workshop.orders.filter(({ id }) => needed.has(id) && id !== left);
        expect(makeableIn({ ...moved, orders }).has(of.id)).toBe(false);
      }
    }
  },
);
