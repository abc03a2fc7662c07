import { describe, expect, test } from "vitest";
import { plan } from "@/lib/domain/plan";
import { BASES, type Basis } from "@/lib/domain/plan-figures";
import { type Report, reportJson, reportOf, reportTables } from "@/lib/edge/report";
import { type Changes, changedFile, dayCalled, workshopOf } from "../bad-files/bench-workshop";
import { leastBasketFor } from "../helpers/least-basket-for";

function outcomeOf(changes: Changes, basis: Basis = "replacement") {
  const workshop = workshopOf(changedFile(changes));
  const today = workshop.settings.today ?? dayCalled("2026-11-25");
  const figures = plan(workshop, today);
  return { workshop, outcome: reportOf(workshop, figures, leastBasketFor(workshop, figures), basis) };
}

function reportFor(changes: Changes, basis?: Basis): Report {
  const { outcome } = outcomeOf(changes, basis);
  if (outcome.kind !== "report") throw new Error(outcome.faults.join("\n"));
  return outcome.report;
}

function tablesFor(changes: Changes): string {
  return reportTables(reportFor(changes), outcomeOf(changes).workshop);
}

test("[REPORT-1] the JSON is the report, ends with a newline", () => {
  const report = reportFor({});
  expect(reportJson(report)).toMatch(/\}\n$/);
  expect(JSON.parse(reportJson(report))).toEqual(report);
  expect(Object.keys(report)).toEqual([
    "format",
    "version",
    "today",
    "currency",
    "costs",
    "runs",
    "materials",
    "basket",
  ]);
});

test.each(BASES)("[COST-3, COST-4, COST-5] costs on the %s basis say so", (basis) => {
  expect(reportFor({}, basis).costs.map((cost) => cost.basis)).toEqual([basis]);
});

describe("[MONEY-4, REPORT-1] a figure is the exact one, rounded once", () => {
  const OILS = {
    "formulas[2]": { id: "oils", name: "Oils", lines: [{ material: "oil", percent: "100" }] },
    "products[0].formula": "oils",
    "products[0].fill": "1 g",
    "products[0].packaging": [],
    "products[0].perRun": [],
    "products[0].heel": null,
  };

  // One pack is too few for the break price: 1 g of oil costs 8.40 / 910 = 0.0092307692…
  test.each([
    ["GBP", "0.0092"],
    ["JPY", "0.01"],
    ["KWD", "0.00923"],
    ["UYW", "0.009231"],
    ["ZZZ", "0.0092"],
  ])("%s: two decimals more than the currency", (currency, cost) => {
    const { costs } = reportFor({ "workshop.currency": currency, ...OILS });
    expect(costs[0]?.lines[0]).toEqual({ material: "oil", quantity: "1 g", cost });
  });

  test("half a cent's hundredth goes away from zero, half a microgram to the even one", () => {
    const { costs } = reportFor({
      ...OILS,
      "products[0].fill": "0.000001 g",
      "products[0].overfill": "0.000002 g",
      "products[0].usualRun": 2,
      "products[0].heel": "0.000001 g",
      // (2 × 3 + 1) / 2 = 3.5 µg for one unit; 70,000 µg cost 1, so that 3.5 cost 0.00005.
      "offers[0]": { id: "o1", material: "oil", supplier: "s1", pack: "0.07 g", price: "1" },
    });
    expect(costs[0]?.lines[0]).toEqual({ material: "oil", quantity: "0.000004 g", cost: "0.0001" });
  });

  test("pieces for one unit have up to six decimals", () => {
    const { costs } = reportFor({});
    // 4 gloves for 24 units; a jar with 2 % spoilage.
    expect(costs[0]?.lines.map(({ material, quantity }) => [material, quantity])).toEqual([
      ["glove", "0.166667 each"],
      ["jar", "1.020408 each"],
      ["oil", expect.stringMatching(/ g$/)],
      ["wax", expect.stringMatching(/ g$/)],
    ]);
  });
});

test("[COST-6] the error names each material without a price, by id and name", () => {
  const [cost] = reportFor({ "offers[1].material": "oil" }).costs;
  expect(cost?.error).toBe('no offer and no usable lot prices the materials "glove" (Gloves), "wax" (Osel wax)');
  expect([cost?.perUnit, cost?.ingredients, cost?.packaging]).toEqual([null, null, null]);
  expect(cost?.lines.filter((line) => line.cost === null).map((line) => line.material)).toEqual(["glove", "wax"]);
});

describe("[LOT-2] lists go by id, by code point", () => {
  const materials = ["🌿", "～", "Z", "a"].map((id) => ({ id, name: id, kind: "consumable", measure: "mass" }));
  const lots = ["🌿", "～", "b"].map((id) => ({
    id,
    material: "a",
    received: "2026-11-01",
    expires: "2026-11-26",
    remaining: "1 g",
    value: "1",
  }));
  const perRun = materials.map(({ id }) => ({ material: id, amount: "5 g" }));
  const added = Object.fromEntries(materials.map((material, at) => [`materials[${String(at + 4)}]`, material]));
  const report = reportFor({ ...added, lots, "products[0].perRun": perRun });

  test("cost lines", () => {
    expect(report.costs[0]?.lines.map((line) => line.material)).toEqual(["Z", "a", "jar", "oil", "wax", "～", "🌿"]);
  });

  test("what a run lacks", () => {
    expect(report.runs[0]?.short.map((line) => line.material)).toEqual(["Z", "a", "jar", "oil", "～", "🌿"]);
  });

  test("lots that go out of date", () => {
    expect(report.materials.find(({ material }) => material === "a")?.expiring).toEqual([
      { lot: "b", on: "2026-11-27", quantity: "1 g" },
      { lot: "～", on: "2026-11-27", quantity: "1 g" },
      { lot: "🌿", on: "2026-11-27", quantity: "1 g" },
    ]);
  });
});

describe("[QTY-6] a figure above 2^53 − 1 is told, and nothing is printed", () => {
  const faultsFor = (changes: Changes) => {
    const { outcome } = outcomeOf(changes);
    return outcome.kind === "report" ? [] : outcome.faults;
  };
  const most = "9007199254.740991 g";

  test.each([
    ["cost of labour", { "products[0].labourMinutesPerUnit": "9".repeat(40) }, 'products[0]: "balm60" (Balm 60): '],
    [
      "what is short",
      { "products[0].fill": most, "runs[0].units": 2, "products[0].heel": null },
      'materials[0]: "oil" (Quill oil): what is short is out of range (above 2^53-1 µg)',
    ],
    [
      "what a run lacks",
      { "products[0].fill": most, "runs[0].units": 4, "products[0].heel": null },
      'runs[0]: "r1": what it lacks of "Quill oil" is out of range (above 2^53-1 µg)',
    ],
    [
      "what is on hand",
      {
        "lots[0].remaining": most,
        "lots[1]": { id: "L2", material: "oil", received: "2026-11-01", remaining: "1 g", value: "0" },
      },
      'materials[0]: "oil" (Quill oil): what is on hand is out of range (above 2^53-1 µg)',
    ],
  ])("%s", (_, changes, line) => {
    const faults = faultsFor(changes);
    expect(faults.filter((fault) => fault.startsWith(line))).toHaveLength(1);
  });

  test("one line for each record, however many of its figures are too large", () => {
    const paths = faultsFor({ "products[0].fill": most, "runs[0].units": 4 }).map((line) => line.split(":")[0]);
    expect(new Set(paths).size).toBe(paths.length);
  });

  test("2^53 − 1 itself is printed", () => {
    const { materials } = reportFor({ "lots[0].remaining": most });
    expect(materials[0]?.onHand).toBe(most);
  });
});

describe("[REPORT-1] the tables", () => {
  test("say what the JSON says, with names", () => {
    expect(tablesFor({ "lots[0].expires": "2026-11-27", "offers[1].material": "oil" })).toMatchInlineSnapshot(`
      "Bench: report of 2026-11-25
      ===========================

      What one unit costs, GBP, materials at replacement
      --------------------------------------------------
      Product   Per unit  Ingredients  Packaging  Labour  Overhead
      -------  ---------  -----------  ---------  ------  --------
      Balm 60  not known    not known  not known  0.0000    0.0000

      What has no price
      -----------------
      Product  Material that no offer and no usable lot prices
      -------  -----------------------------------------------
      Balm 60  Gloves
      Balm 60  Osel wax

      What goes into one unit
      -----------------------
      Product  Material        Quantity       Cost
      -------  ---------  -------------  ---------
      Balm 60  Gloves     0.166667 each  not known
               Jar 60     1.020408 each     0.4592
               Quill oil      40.8175 g     0.3768
               Osel wax       15.4825 g  not known

      Planned runs
      ------------
      Run  Date        Product  Units  Can be made  Most  Limited by
      ---  ----------  -------  -----  -----------  ----  ----------
      r1   2026-11-30  Balm 60     24  no              0  Gloves

      What runs lack
      --------------
      Run  Material    Lacking
      ---  ---------  --------
      r1   Gloves       4 each
      r1   Jar 60      24 each
      r1   Quill oil  979.62 g

      Materials, if every run goes ahead
      ----------------------------------
      Material   On the shelf  Short from  Below safety from   Short by     To buy    Order by  Days late
      ---------  ------------  ----------  -----------------  ---------  ---------  ----------  ---------
      Quill oil         640 g  2026-11-30         2026-11-28  1070.62 g  1070.62 g  2026-11-24          1
      Osel wax            0 g           -                  -        0 g        0 g           -          -
      Jar 60           0 each  2026-11-30         2026-11-30    25 each    25 each  2026-11-25          0
      Gloves           0 each  2026-11-30         2026-11-30     4 each     4 each           -          -

      What goes out of date
      ---------------------
      Material   Lot  Out of date on  Quantity left
      ---------  ---  --------------  -------------
      Quill oil  L1   2026-11-28              640 g

      What to buy, GBP
      ----------------
      Supplier   Offer  Material                    Packs   Cost  Comes
      ---------  -----  --------------------------  -----  -----  ----------
      Tarn Mill  o1     Quill oil                       1   8.40  2026-11-30
                 o2     Quill oil                       1   6.10  2026-11-30
                 o3     Jar 60                          3  16.20  2026-11-30
                        goods 30.70, delivery 4.95         35.65

      Total 35.65 (no basket costs less).

      What nobody offers
      ------------------
      Material
      --------
      Gloves
      "
    `);
  });

  test("hold every figure of the JSON", () => {
    const text = tablesFor({ "lots[0].expires": "2026-11-27" });
    const figures = JSON.stringify(reportFor({ "lots[0].expires": "2026-11-27" })).match(/"[\d.]+( g| each)?"/g) ?? [];
    expect(figures.length).toBeGreaterThan(20);
    for (const figure of figures) expect(text).toContain(figure.slice(1, -1));
  });

  test("are no wider than a terminal, whatever the names", () => {
    const wide = {
      "materials[0].name": "oil ".repeat(50),
      "products[0].name": "界".repeat(200),
      "runs[0].id": "r".repeat(200),
    };
    for (const line of tablesFor(wide).split("\n")) expect([...line].length).toBeLessThanOrEqual(120);
  });

  test("tell two records of one name apart by their ids", () => {
    expect(tablesFor({ "materials[1].name": "Quill oil" })).toContain("wax: Quill oil");
  });

  test("of a workshop with nothing in it", () => {
    const lists = "suppliers materials offers lots orders formulas products runs finished sales".split(" ");
    const text = tablesFor(Object.fromEntries(lists.map((list) => [list, []])));
    expect(text).toContain("No products.");
    expect(text).toContain("No runs are planned.");
    expect(text).toContain("No materials.");
  });

  test("let no character out that a terminal would act on", () => {
    expect(tablesFor({ "products[0].name": "a\u202eb\u2028c" })).toContain("a\\u202eb\\u2028c");
  });
});
