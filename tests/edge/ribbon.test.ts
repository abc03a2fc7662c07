/**
 * The ribbon's grammar, held on workshops of one material and one product that takes all of it (a 100 g unit).
 * The places and heights are worked by hand from the grammar: a day is 4 ticks, runs at mid-day (2), deliveries in
 * the morning (1), out of date at the day's end. No published source.
 */
import { describe, expect, test } from "vitest";
import { fc, test as law } from "@fast-check/vitest";
import { plan } from "@/lib/domain/plan";
import type { Day } from "@/lib/domain/calendar";
import type { Stock } from "@/lib/domain/quantity";
import type { Workshop } from "@/lib/domain/workshop";
import { type RibbonSize, ribbonOf } from "@/lib/edge/ribbon";
import { ribbonAxis } from "@/lib/edge/ribbon-axis";
import { percentAcross } from "@/lib/edge/ribbon-time";
import {
  day,
  formula,
  g,
  grams,
  lot,
  material,
  money,
  offer,
  order,
  product,
  run,
  settings,
  supplier,
} from "../helpers/notation";

const today = day("2026-11-25"); // a Wednesday
const plain = (text: string): string => text.replaceAll("\u00a0", " ");

const workshop = (given: Partial<Workshop>): Workshop => ({
  settings: settings({ today, horizonDays: 13 }),
  suppliers: [supplier("s")],
  materials: [material("M", { name: "Oat oil" })],
  offers: [],
  lots: [],
  orders: [],
  formulas: [formula("f", { M: "100" })],
  products: [product("p", "f")],
  runs: [],
  finished: [],
  sales: [],
  labels: [],
  papers: [],
  ...given,
});

const drawn = (given: Partial<Workshop>, size: RibbonSize = "row") => {
  const { materials, lastDay } = plan(workshop(given), today);
  const [outlook] = materials;
  if (!outlook) throw new Error("no material");
  const ribbon = ribbonOf(outlook, today, lastDay, size);
  return {
    ...ribbon,
    sentence: plain(ribbon.sentence),
    captions: ribbon.captions.map((each) => ({ ...each, text: plain(each.text) })),
  };
};

describe("the body", () => {
  test("falls in one step at mid-day of each run, and never slopes", () => {
    const { body, edge, span } = drawn({
      lots: [lot("L", "M", "600", "6")],
      runs: [run("r1", "p", "2026-11-26", 2), run("r2", "p", "2026-11-28", 1)],
    });
    // 14 days; the waterline of a row stands at 35 and 24 px hold 600 g: 400 g is 16 px, 300 g is 12 px
    expect(span).toBe(56);
    expect(edge).toBe("M0 35V11H6V19H14V23H56");
    expect(body).toBe("M0 35V11H6V19H14V23H56V35");
  });

  test("two runs on one day are one step", () => {
    const { edge } = drawn({
      lots: [lot("L", "M", "600", "6")],
      runs: [run("r1", "p", "2026-11-26", 1), run("r2", "p", "2026-11-26", 2)],
    });
    expect(edge).toBe("M0 35V11H6V23H56");
  });

  test("rises in the morning of a delivery, which comes before the day's run", () => {
    const { edge, arrivals } = drawn({
      lots: [lot("L", "M", "100", "1")],
      orders: [order("o", "2026-11-27", [{ material: "M", quantity: g("200"), cost: money("2"), expires: null }])],
      runs: [run("r", "p", "2026-11-27", 3)],
    });
    expect(arrivals).toEqual([9]);
    expect(edge).toBe("M0 35V27H9V11H10V35");
  });

  test("is not there where nothing is held", () => {
    expect(drawn({})).toMatchObject({ body: "", edge: "", lack: [], safety: null, order: null, captions: [] });
  });

  test("shows the least bit that is there", () => {
    const { edge } = drawn({
      lots: [lot("L", "M", "1000", "1")],
      products: [product("p", "f", { fill: grams("999.999999") })],
      runs: [run("r", "p", "2026-11-25", 1)],
    });
    expect(edge).toBe("M0 35V11H2V34H56");
  });
});

describe("the safety line", () => {
  const withSafety = (safety: string) =>
    drawn({ materials: [material("M", { safetyStock: grams(safety) })], lots: [lot("L", "M", "100", "1")] }).safety;

  test("stands at its height", () => expect(withSafety("50")).toBe(23));
  test("is left out below 6 % of the zone", () => expect(withSafety("5.9")).toBeNull());
  test("is drawn at 6 %", () => expect(withSafety("6")).toBe(33.56));
  test("is the zone's top where less is held", () => expect(withSafety("200")).toBe(11));
});

describe("the lack", () => {
  test("begins at the first run that cannot be met, is 45 % to 100 % deep, and ends when it is settled", () => {
    const { lack, edge, sentence } = drawn({
      lots: [lot("L", "M", "100", "1")],
      orders: [order("o", "2026-12-01", [{ material: "M", quantity: g("900"), cost: money("2"), expires: null }])],
      runs: [run("r1", "p", "2026-11-26", 3), run("r2", "p", "2026-11-28", 2)],
    });
    // 200 g, then 400 g of at most 400 g: 45 + 55/2 = 72 % (whole percents) and 100 % of 13 px
    expect(lack).toEqual([
      { from: 6, width: 8, reach: 9.36 },
      { from: 14, width: 11, reach: 13 },
    ]);
    expect(edge).toBe("M0 35V30.2H6V35M25 35V11H56");
    expect(sentence).toBe("Oat oil: 100 g on the shelf; 900 g due Tue 1 Dec; short by 200 g on Thu 26 Nov.");
  });

  test("is said on the waterline where it begins", () => {
    const { captions } = drawn({ runs: [run("r", "p", "2026-11-26", 3)] });
    expect(captions).toEqual([
      { row: "waterline", ink: "madder", text: "short 300 g, 26 Nov", at: 6, anchor: "start", off: 7 },
    ]);
  });

  test("is said at the strip's end where there is no room after its beginning", () => {
    const { captions } = drawn({ runs: [run("r", "p", "2026-12-07", 3)] });
    expect(captions).toMatchObject([{ text: "short 300 g, 7 Dec", at: 56, anchor: "end" }]);
  });

  test("is drawn without words on a slim ribbon", () => {
    const { captions, lack } = drawn({ runs: [run("r", "p", "2026-11-26", 3)] }, "slim");
    expect(captions).toEqual([]);
    expect(lack).toEqual([{ from: 6, width: 50, reach: 5 }]);
  });
});

describe("going out of date", () => {
  test("the band is as tall as what will not be used and ends at the day's end, where the body drops", () => {
    const { waste, losses, edge, sentence } = drawn({
      lots: [lot("L", "M", "400", "4", { expires: day("2026-11-28") })],
      runs: [run("r", "p", "2026-11-26", 1)],
    });
    expect(waste).toEqual([{ from: 0, width: 16, reach: 18 }]);
    expect(losses).toEqual([16]);
    expect(edge).toBe("M0 35V11H6V17H16V35");
    expect(sentence).toBe(
      "Oat oil: 400 g on the shelf; covers every planned run to 8 Dec; 300 g of lot L goes out of date Sat 28 Nov.",
    );
  });

  test("bands of several lots add up, and one that is on order begins when it comes", () => {
    const { waste, losses } = drawn({
      lots: [
        lot("L", "M", "100", "4", { expires: day("2026-11-28") }),
        lot("K", "M", "100", "4", { expires: day("2026-11-26") }),
      ],
      orders: [
        order("o", "2026-11-27", [{ material: "M", quantity: g("200"), cost: money("2"), expires: day("2026-11-30") }]),
      ],
    });
    // at most 300 g are held: 200 g is 16 px, 100 g is 8 px, 300 g is 24 px
    expect(waste).toEqual([
      { from: 0, width: 8, reach: 16 },
      { from: 8, width: 1, reach: 8 },
      { from: 9, width: 7, reach: 24 },
      { from: 16, width: 8, reach: 16 },
    ]);
    expect(losses).toEqual([8, 16, 24]);
  });

  test("what is out of date already is told, and not drawn: it is not on the shelf", () => {
    const ribbon = drawn({ lots: [lot("L", "M", "100", "4", { expires: day("2026-11-20") })] });
    expect(ribbon).toMatchObject({ waste: [], losses: [], body: "" });
    expect(ribbon.sentence).toBe(
      "Oat oil: 0 g on the shelf; no runs planned; 100 g of lot L out of date since Fri 20 Nov.",
    );
  });
});

describe("the order day", () => {
  // one supplier, one working day of lead: what is needed on a day is ordered the working day before
  const needed = (date: string, size: RibbonSize = "docket") =>
    drawn({ offers: [offer("o", "M", "500", "9")], runs: [run("r", "p", date, 1)] }, size);

  test.each([
    {
      date: "2026-11-30",
      says: "a notch on the last day, back to Friday from a weekend",
      kind: "notch",
      at: 8,
      words: "order by 27 Nov",
    },
    { date: "2026-11-26", says: "half a notch today", kind: "today", at: 0, words: "order today" },
    { date: "2026-11-25", says: "a pennant where it has gone", kind: "gone", at: 0, words: "order day was Tue 24 Nov" },
  ])("[PLAN-6] $says", ({ date, kind, at, words }) => {
    const { order: pin, captions } = needed(date);
    expect(pin).toEqual({ kind, at });
    expect(captions.find(({ row }) => row === "rail")?.text).toBe(words);
  });

  test("stands on a row without words", () => {
    expect(needed("2026-11-30", "row").captions.map(({ row }) => row)).toEqual(["waterline"]);
  });

  test("one that has gone is said with its days", () => {
    expect(needed("2026-11-25").sentence).toBe(
      "Oat oil: 0 g on the shelf; short by 100 g on Wed 25 Nov; order day was Tue 24 Nov, 1 day late.",
    );
  });

  test("its words keep clear of the words of a loss: the first has the place", () => {
    const { captions } = drawn(
      {
        offers: [offer("o", "M", "500", "9")],
        lots: [lot("L", "M", "150", "4", { expires: day("2026-12-04") })],
        runs: [run("r", "p", "2026-11-26", 1), run("r2", "p", "2026-12-07", 1)],
      },
      "docket",
    );
    // Right of the notch stands the hourglass, so that the words are left of it; there is no room for others.
    expect(captions.filter(({ row }) => row === "rail")).toMatchObject([
      { text: "order by 4 Dec", anchor: "end", at: 36 },
    ]);
  });
});

describe("captions keep clear of what is drawn", () => {
  const rail = (given: Partial<Workshop>) =>
    drawn({ offers: [offer("o", "M", "500", "9")], ...given }, "docket").captions.filter(({ row }) => row === "rail");

  test.each([
    // 340 px are 56 ticks: "order today" is 72.6 px and stands off 15, so that it ends at tick 14.4
    { lastUse: "2026-11-26", loss: 8, words: ["10 g lost, 26 Nov"], says: "the hourglass stands in its way" },
    { lastUse: "2026-11-29", loss: 20, words: ["order today", "10 g lost, 29 Nov"], says: "beyond its end" },
  ])("order today, and a lot out of date at tick $loss: $says", ({ lastUse, loss, words }) => {
    const given = {
      lots: [lot("L", "M", "50", "4", { expires: day(lastUse) }), lot("K", "M", "200", "4")],
      // 250 g fall to 210 g on the day after today, below the safety stock: one working day before is today.
      materials: [material("M", { safetyStock: grams("215") })],
      products: [product("p", "f", { fill: grams("40") })],
      runs: [run("r", "p", "2026-11-26", 1)],
      offers: [offer("o", "M", "500", "9")],
    };
    const { losses, order: pin } = drawn(given, "docket");
    expect(losses).toEqual([loss]);
    expect(pin?.kind).toBe("today");
    expect(rail(given).map(({ text }) => text)).toEqual(words);
  });

  // Of 600 g in 24 px: 25 g are one pixel, below the words' foot; 200 g are 8 px, which would cross them.
  test.each([
    { left: 25, at: 56, anchor: "end", lift: undefined, says: "under the words: they stand on the waterline" },
    { left: 200, at: 56, anchor: "end", lift: 6, says: "in their way: they stand above it" },
  ])("a late lack, over a body of $left g $says", ({ left, at, anchor, lift }) => {
    const { captions } = drawn({
      lots: [lot("L", "M", "600", "6")],
      products: [product("p", "f", { fill: grams(String(600 - left)) }), product("q", "f", { fill: grams("300") })],
      runs: [run("r1", "p", "2026-11-26", 1), run("r2", "q", "2026-12-07", 1)],
    });
    expect(captions).toMatchObject([{ row: "waterline", at, anchor }]);
    expect(captions[0]?.lift).toBe(lift);
  });

  test("the year is left off inside the strip", () => {
    const { captions } = drawn({
      settings: settings({ today, horizonDays: 60 }),
      runs: [run("r", "p", "2027-01-05", 1)],
    });
    expect(captions.map(({ text }) => text)).toEqual(["short 100 g, 5 Jan"]);
  });
});

describe("the axis", () => {
  const names = (from: string, days: number, width: "wide" | "narrow" = "wide") => {
    const axis = ribbonAxis(day(from), (day(from) + days) as Day);
    return [axis.today, ...axis[width].map(({ text }) => text)].map(plain).join(" | ");
  };

  test.each([
    { from: "2026-10-06", days: 56, width: "wide", says: "6 Oct | 12 | 19 | 26 | 2 Nov | 9 | 16 | 23" },
    { from: "2026-10-06", days: 56, width: "narrow", says: "6 Oct | 19 | 2 Nov | 16" },
    { from: "2026-11-25", days: 0, width: "wide", says: "25 Nov" },
    { from: "2026-11-25", days: 120, width: "wide", says: "25 Nov | 14 Dec | 4 Jan | 25 | 15 Feb | 8 Mar" },
    { from: "2026-11-25", days: 400, width: "wide", says: "25 Nov | Feb 2027 | May | Aug | Nov" },
    { from: "2026-11-25", days: 3660, width: "narrow", says: "25 Nov | 2030 | 2033" },
  ] as const)("[DAY-4] $from and $days days, $width: $says", ({ from, days, width, says }) => {
    expect(names(from, days, width)).toBe(says);
  });

  test("[DAY-4] a hairline on each Monday after today", () => {
    expect(ribbonAxis(today, day("2026-12-08")).lines).toEqual([20, 48]);
  });
});

describe("laws", () => {
  const oneEvent = fc.record({ inDays: fc.integer({ min: 0, max: 3660 }), units: fc.integer({ min: 1, max: 9 }) });

  law.prop([
    fc.array(oneEvent, { maxLength: 60 }),
    fc.integer({ min: 0, max: 3660 }),
    fc.integer({ min: 0, max: 400 }),
  ])(
    "no body below the waterline or above the rail, steps only, nothing outside the strip",
    (runs, horizonDays, units) => {
      const {
        body,
        lack,
        waste,
        span,
        waterline,
        captions,
        losses,
        order: pin,
      } = drawn(
        {
          settings: settings({ today, horizonDays }),
          offers: [offer("o", "M", "500", "9")],
          lots: units === 0 ? [] : [lot("L", "M", String(units), "4", { expires: (today + units) as Day })],
          runs: runs.map(({ inDays, units: made }, index) => ({
            ...run(`r${String(index)}`, "p", "2026-11-25", made),
            date: (today + inDays) as Day,
          })),
        },
        "docket",
      );
      expect(body).toMatch(/^(M\d+ \d+(\.\d+)?|[HV]\d+(\.\d+)?)*$/);
      for (const [, y] of body.matchAll(/V([\d.]+)/g)) {
        expect(Number(y)).toBeLessThanOrEqual(waterline);
        expect(Number(y)).toBeGreaterThanOrEqual(15);
      }
      for (const [, x] of body.matchAll(/H([\d.]+)/g)) expect(Number(x)).toBeLessThanOrEqual(span);
      for (const { from, width, reach } of lack) {
        expect(reach).toBeGreaterThanOrEqual(5.85);
        expect(reach).toBeLessThanOrEqual(13);
        expect(from + width).toBeLessThanOrEqual(span);
      }
      for (const { from, width, reach } of waste) {
        expect(from + width).toBeLessThanOrEqual(span);
        expect(reach).toBeLessThanOrEqual(34);
      }
      for (const at of [...losses, ...captions.map((caption) => caption.at), pin?.at ?? 0]) {
        expect(at).toBeLessThanOrEqual(span);
        expect(at).toBeGreaterThanOrEqual(0);
      }
    },
  );

  test("thousands of events become no more steps than a screen can show, and a short dip to nothing is kept", () => {
    const days = 3660;
    const runs = Array.from({ length: days }, (_, index) => ({
      ...run(`r${String(index)}`, "p", "2026-11-25", 1),
      date: (today + index) as Day,
    }));
    const lots = [lot("L", "M", String(days * 100), "4")];
    const { body } = drawn({ settings: settings({ today, horizonDays: days }), lots, runs });
    expect(body.split("H").length).toBeLessThanOrEqual(722);
    expect(body.split("H").length).toBeGreaterThan(200);

    const dip = [{ ...run("big", "p", "2026-11-25", days), date: (today + 1001) as Day }];
    const orders = [
      order("o", "2029-08-24", [{ material: "M", quantity: g(String(days * 100)), cost: money("1"), expires: null }]),
    ];
    const dipped = drawn({ settings: settings({ today, horizonDays: days }), lots, runs: dip, orders });
    expect(orders[0]?.due).toBe(today + 1003);
    expect(dipped.edge).toMatch(/V35V11|V35M\d+ 35V11/);
  });

  test("a figure as large as a file may hold is drawn by whole-number ratios", () => {
    const most = 2n ** 53n - 1n;
    const { edge } = drawn({ lots: [{ ...lot("L", "M", "1", "1"), remaining: most as Stock }] });
    expect(edge).toBe("M0 35V11H56");
  });

  test("a place in percent keeps two decimals", () => {
    expect([percentAcross(0, 56), percentAcross(1, 3), percentAcross(56, 56)]).toEqual(["0%", "33.33%", "100%"]);
  });
});
