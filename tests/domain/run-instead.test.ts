/** Materials that are made here instead of bought, worked by hand from the rules. Everything here is invented. */
import { describe, expect, test } from "vitest";
import { isoDate } from "@/lib/domain/calendar";
import { plan, preparedFor } from "@/lib/domain/plan";
import { quantity } from "@/lib/domain/quantity";
import { runsInstead } from "@/lib/domain/run-instead";
import { suggestedDays } from "@/lib/domain/suggested-days";
import type { Workshop } from "@/lib/domain/workshop";
import { planInsteadAddress, plannedInsteadWords, runInsteadWords } from "@/lib/edge/run-instead-words";
import { type Parts, workshopOf } from "@/tests/helpers/bench";
import { day, formula, grams, lot, material, order, orderLine, product, run, g, money } from "@/tests/helpers/notation";

/** A Wednesday. */
const today = day("2026-11-25");

/** An oil jar is 100 g of infused oil as it is; a run of `stock` makes it, 150 g a unit. */
const bench: Parts = {
  settings: { closedDays: [day("2026-12-03")] },
  materials: ["herb", "inf", "oil"].map((id) => material(id)),
  formulas: [formula("infused", { oil: "80", herb: "20" }), formula("plain", { inf: "100" })],
  products: [product("stock", "infused", { madeInto: "inf", fill: grams("150") }), product("oil jar", "plain")],
  lots: [lot("O", "oil", "9000", "90"), lot("H", "herb", "9000", "90")],
};

const insteadIn = (workshop: Workshop) => {
  const figures = plan(workshop, today);
  return [...runsInstead(workshop, figures.materials, today)].map(
    ([
      id,
      {
        product: { id: of },
        units,
        day: on,
        planned,
      },
    ]) => `${id}: ${units.toString()} × ${of} on ${isoDate(on)}, ${String(planned.length)} planned`,
  );
};

describe("a material that is made here", () => {
  test.each([
    {
      says: "the fewest units whose fill is enough, on the last day on which it is in time",
      // 10 jars of 100 g: 1000 g ÷ 150 g = 6.67.
      runs: [run("r", "oil jar", "2026-12-01", 10)],
      is: ["inf: 7 × stock on 2026-12-01, 0 planned"],
    },
    {
      says: "not on a closed day, nor on a weekend",
      runs: [run("r", "oil jar", "2026-12-03", 3), run("s", "oil jar", "2026-12-06", 3)],
      is: ["inf: 4 × stock on 2026-12-02, 0 planned"],
    },
    {
      says: "today where the day has passed",
      runs: [run("r", "oil jar", "2026-11-20", 1)],
      is: ["inf: 1 × stock on 2026-11-25, 0 planned"],
    },
    {
      says: "less what its planned runs make, and none where they make enough",
      runs: [run("r", "oil jar", "2026-12-01", 10), run("m", "stock", "2026-11-26", 4)],
      is: ["inf: 3 × stock on 2026-12-01, 1 planned"],
    },
    {
      says: "none where they make enough",
      runs: [run("r", "oil jar", "2026-12-01", 10), run("m", "stock", "2026-11-26", 7)],
      is: ["inf: 0 × stock on 2026-12-01, 1 planned"],
    },
    { says: "nothing where nothing is to be bought", runs: [], is: [] },
  ])("[AHEAD-9] $says", ({ runs, is }) => {
    expect(insteadIn(workshopOf({ ...bench, runs }))).toEqual(is);
  });

  test("[AHEAD-9] the safety days of the material come before the day, and its safety stock is made too", () => {
    const inf = material("inf", { safetyDays: 4, safetyStock: grams("300") });
    const workshop = workshopOf({
      ...bench,
      materials: [material("herb"), inf, material("oil")],
      lots: [...(bench.lots ?? []), lot("I", "inf", "500", "5")],
      runs: [run("r", "oil jar", "2026-12-08", 4)],
    });
    // 500 − 400 − 300 g: 200 g are lacking on 8 Dec, wanted by Friday 4 Dec.
    expect(insteadIn(workshop)).toEqual(["inf: 2 × stock on 2026-12-04, 0 planned"]);
  });

  test("[AHEAD-9] what is only bought has no run", () => {
    const workshop = workshopOf({ ...bench, lots: [], runs: [run("m", "stock", "2026-11-26", 4)] });
    const lacking = plan(workshop, today).materials.filter(({ toBuy }) => toBuy > 0n);
    expect(lacking.map(({ material: { id } }) => id)).toEqual(["herb", "oil"]);
    expect(insteadIn(workshop)).toEqual([]);
  });

  test("[AHEAD-9] is said with its units and day, and leads to the week's form with them in it", () => {
    const workshop = workshopOf({
      ...bench,
      runs: [run("r", "oil jar", "2026-12-01", 10), run("m", "stock", "2026-11-26", 4)],
    });
    const instead = runsInstead(workshop, plan(workshop, today).materials, today).get("inf");
    if (instead === undefined) throw new Error("it is made");
    const plain = (words: string | null) => words?.replaceAll("\u00a0", " ");
    expect(plain(runInsteadWords(instead, today))).toBe("a run of Product stock of 3 units, by Tue 1 Dec");
    expect(plain(plannedInsteadWords(instead, today))).toBe("one run of Product stock is planned, on Thu 26 Nov");
    expect(planInsteadAddress(instead)).toBe("/week?of=2026-11-30&plan=2026-12-01&product=stock&size=3#plan-a-run");
    expect(runInsteadWords({ ...instead, units: quantity(0n) }, today)).toBeNull();
  });
});

describe("a run that lacks what a premix made ahead holds", () => {
  const lines = (...of: readonly (readonly [string, string])[]) =>
    of.map(([id, weight]) => orderLine({ material: id, quantity: g(weight), cost: money("1"), expires: null }));
  const suggested = (parts: Parts): string => {
    const workshop = workshopOf(parts);
    const figures = plan(workshop, today);
    const [short] = figures.runs;
    if (short === undefined || short.makeable) throw new Error("it is short");
    const planned = { workshop, prepared: preparedFor(workshop, today), plan: figures, benchMinutes: null };
    return suggestedDays(short, planned, 1)
      .days.map(({ day: on, dependsOn }) => [isoDate(on), ...dependsOn.map((awaited) => awaited.order)].join(" if "))
      .join(", ");
  };
  /** Ten jars take 500 g of the infused oil: 400 g of oil and 100 g of herb. There is oil for half, and all the herb. */
  const half: Parts = {
    materials: ["herb", "inf", "oil", "water"].map((id) => material(id)),
    formulas: [formula("infused", { oil: "80", herb: "20" }), formula("salve", { "=infused": "50", water: "qs" })],
    products: [product("stock", "infused", { madeInto: "inf" }), product("jar", "salve")],
    lots: [lot("O", "oil", "200", "2"), lot("H", "herb", "100", "2"), lot("W", "water", "9000", "0")],
    runs: [run("r", "jar", "2026-11-25", 10)],
  };

  test("[SUGGEST-2] can be made once enough of the premix comes in, though nothing comes of what it holds", () => {
    expect(suggested({ ...half, orders: [order("po", "2026-11-27", lines(["inf", "250"]))] })).toBe("2026-11-27 if po");
    expect(suggested({ ...half, orders: [order("po", "2026-11-27", lines(["inf", "249"]))] })).toBe("");
  });

  test("[SUGGEST-2] on the second arrival where the first is too little, or with oil beside it", () => {
    const first = order("a", "2026-11-27", lines(["inf", "100"]));
    expect(suggested({ ...half, orders: [first, order("b", "2026-12-02", lines(["inf", "150"]))] })).toBe(
      "2026-12-02 if a if b",
    );
    expect(suggested({ ...half, orders: [first, order("b", "2026-12-02", lines(["oil", "120"]))] })).toBe(
      "2026-12-02 if a if b",
    );
  });

  test("[SUGGEST-2] of a premix within a premix, either of them", () => {
    const nested: Parts = {
      ...half,
      materials: ["base", "herb", "inf", "oil", "water"].map((id) => material(id)),
      formulas: [
        formula("infused", { oil: "80", herb: "20" }),
        formula("mixed", { "=infused": "50", water: "50" }),
        formula("salve", { "=mixed": "100" }),
      ],
      products: [
        product("stock", "infused", { madeInto: "inf" }),
        product("base", "mixed", { madeInto: "base" }),
        product("jar", "salve"),
      ],
    };
    for (const [id, weight] of [
      ["inf", "250"],
      ["base", "500"],
    ] as const)
      expect(suggested({ ...nested, orders: [order("po", "2026-11-27", lines([id, weight]))] }), id).toBe(
        "2026-11-27 if po",
      );
  });
});
