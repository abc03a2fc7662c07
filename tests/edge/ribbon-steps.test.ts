/**
 * A ribbon walked along: each change of the stock at its place and in words. Worked by hand on one material of which a
 * unit of the product takes 100 g; the place is the quarter day over all of them (14 days, 56 quarters), in percent.
 * No published source.
 */
import { describe, expect, test } from "vitest";
import { fc, test as law } from "@fast-check/vitest";
import { plan } from "@/lib/domain/plan";
import type { Workshop } from "@/lib/domain/workshop";
import { ribbonSteps } from "@/lib/edge/ribbon-steps";
import {
  day,
  formula,
  g,
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
import { bareWorkshop } from "../helpers/store-workshop";

const today = day("2026-11-25"); // a Wednesday

const walked = (given: Partial<Workshop>): readonly (readonly [string, string])[] => {
  const { materials, lastDay } = plan(
    bareWorkshop("Ribbon", {
      settings: settings({ today, horizonDays: 13 }),
      suppliers: [supplier("s")],
      materials: [material("M", { name: "Oat oil" })],
      formulas: [formula("f", { M: "100" })],
      products: [product("p", "f")],
      ...given,
    }),
    today,
  );
  const [outlook] = materials;
  if (!outlook) throw new Error("no material");
  return ribbonSteps(outlook, { today, lastDay, productName: () => "Balm" }).map(({ at, says }) => [
    at,
    says.replaceAll("\u00a0", " "),
  ]);
};

describe("a ribbon walked along", () => {
  test("tells today's stock, each run at mid-day and what is left after it", () => {
    expect(
      walked({
        lots: [lot("L", "M", "600", "6")],
        runs: [run("r1", "p", "2026-11-26", 2), run("r2", "p", "2026-11-28", 1)],
      }),
    ).toEqual([
      ["0%", "Today: 600 g on the shelf."],
      ["10.71%", "Thu 26 Nov: Balm draws 200 g; 400 g left."],
      ["25%", "Sat 28 Nov: Balm draws 100 g; 300 g left."],
    ]);
  });

  test("tells what comes in, what of it was owed, and what a run is short of", () => {
    const steps = walked({
      lots: [lot("L", "M", "150", "6")],
      runs: [run("r1", "p", "2026-11-26", 2)],
      orders: [order("O", "2026-11-30", [{ material: "M", quantity: g("1000"), cost: money("10"), expires: null }])],
    });
    expect(steps).toEqual([
      ["0%", "Today: 150 g on the shelf."],
      ["10.71%", "Thu 26 Nov: Balm draws 200 g; short by 50 g."],
      ["37.5%", "Mon 30 Nov: 1.00 kg comes in; short by 50 g."],
      ["37.5%", "Mon 30 Nov: 50 g of it goes to earlier runs; 950 g left."],
    ]);
  });

  test("tells what goes out of date on the last day on which it can be used", () => {
    expect(walked({ lots: [lot("L", "M", "150", "6", { expires: day("2026-11-29") })] })).toEqual([
      ["0%", "Today: 150 g on the shelf."],
      ["35.71%", "Sun 29 Nov: 150 g of lot L goes out of date; 0 g left."],
    ]);
  });

  test("tells what is out of date already, and what comes in out of date, on the day of that", () => {
    const gone = [lot("L", "M", "150", "6", { expires: day("2026-09-30") })];
    const late = [{ material: "M", quantity: g("80"), cost: money("1"), expires: day("2026-11-20") }];
    expect(walked({ lots: gone, orders: [order("O", "2026-11-30", late)] }).map(([, says]) => says)).toEqual([
      "Today: 0 g on the shelf.",
      "Today: 150 g of lot L is out of date since Wed 30 Sep; 0 g left.",
      "Mon 30 Nov: 80 g comes in; 80 g left.",
      "Mon 30 Nov: 80 g of order O is out of date since Fri 20 Nov; 0 g left.",
    ]);
  });

  test("tells the order day, to come and gone by", () => {
    const given = { lots: [lot("L", "M", "150", "6")], offers: [offer("o", "M", "1000", "10")] };
    const says = (on: string): readonly string[] =>
      walked({ ...given, runs: [run("r1", "p", on, 2)] }).map(([, words]) => words);
    expect(says("2026-12-07")).toContainEqual(expect.stringMatching(/^\w+ \d+ \w+: the last day to order\.$/));
    expect(says("2026-11-25")).toContainEqual(expect.stringMatching(/^The order day was /));
  });

  law.prop([fc.array(fc.tuple(fc.integer({ min: 0, max: 13 }), fc.integer({ min: 1, max: 9 })), { maxLength: 12 })])(
    "goes on to the right, from 0 to 100 %, a step for each run",
    (runs) => {
      const steps = walked({
        lots: [lot("L", "M", "2000", "6")],
        runs: runs.map(([days, units], at) =>
          run(
            `r${String(at)}`,
            "p",
            `2026-${days < 6 ? `11-${String(25 + days)}` : `12-${String(days - 5).padStart(2, "0")}`}`,
            units,
          ),
        ),
      });
      const places = steps.map(([at]) => Number.parseFloat(at));
      expect(places).toEqual([...places].sort((one, other) => one - other));
      expect(places.every((at) => at >= 0 && at <= 100)).toBe(true);
      expect(steps.filter(([, words]) => words.includes(" draws "))).toHaveLength(runs.length);
    },
  );
});
