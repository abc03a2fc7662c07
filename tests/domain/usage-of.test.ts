import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { isoDate } from "@/lib/domain/calendar";
import { type Books, emptyDesk, RETIRABLE, type RetirableList } from "@/lib/domain/desk";
import { usageOf } from "@/lib/domain/usage-of";
import { quantity } from "@/lib/domain/quantity";
import { readWorkshopFile, writeWorkshopFile } from "@/lib/edge/workshop-file";
import { planned } from "@/tests/agreement/agreement";
import { workshopOf } from "@/tests/helpers/bench";
import {
  day,
  formula,
  g,
  lot,
  material,
  money,
  offer,
  order,
  percent,
  pieces,
  product,
  run,
  supplier,
} from "@/tests/helpers/notation";
import { richBatches } from "@/tests/helpers/store-batches";
import { workshops } from "@/tests/helpers/random-workshop";

const today = day("2026-11-25");

const books: Books = {
  workshop: workshopOf({
    suppliers: [supplier("s"), supplier("idle")],
    materials: [
      material("A"),
      material("B"),
      material("jar", { measure: "count" }),
      material("spare"),
      material("filter", { measure: "count" }),
    ],
    offers: [offer("o1", "A", "100", "1"), offer("o2", "A", "500", "4"), offer("o3", "B", "100", "1")],
    lots: [lot("L1", "A", "100", "1", { received: day("2026-10-02") })],
    orders: [
      order("po1", "2026-12-01", [
        { material: "A", quantity: g("10"), cost: money("1"), expires: null },
        { material: "A", quantity: g("20"), cost: money("1"), expires: null },
      ]),
    ],
    formulas: [
      formula("base", { A: "100" }),
      formula("cream", { "=base": "50", B: "50" }),
      formula("alone", { B: "100" }),
    ],
    products: [
      product("p", "cream", {
        packaging: [{ material: "jar", amount: pieces(1), spoilage: percent("0") }],
        perRun: ["jar", "filter"].map((of) => ({ material: of, amount: pieces(1) })),
      }),
      product("unsold", "cream"),
    ],
    runs: [run("r1", "p", "2026-11-30", 1)],
    finished: [{ id: "F1", product: "p", made: day("2026-10-05"), bestBefore: null, units: quantity(3n) }],
    sales: [{ product: "p", date: day("2026-11-03"), units: quantity(3n) }],
  }),
  desk: {
    ...emptyDesk,
    drafts: [formula("draft", { "=base": "20", A: "10" })],
    closedRuns: [
      { run: run("r0", "p", "2026-11-01", 2), madeOn: day("2026-11-02"), unitsMade: quantity(2n), versions: [] },
    ],
  },
};

const inShort = (list: RetirableList, id: string, of: Books = books): readonly string[] =>
  usageOf(of, list, id).map(
    (usage) =>
      `${usage.list}: ${usage.users
        .map((user) => [user.id ?? "-", user.name ?? "-", user.on === null ? "-" : isoDate(user.on)].join(" "))
        .join("; ")}`,
  );

describe("what a record is used by", () => {
  test.each<{ list: RetirableList; id: string; by: readonly string[] }>([
    {
      list: "suppliers",
      id: "s",
      by: ["offers: o1 Material A -; o2 Material A -; o3 Material B -", "orders: po1 - 2026-11-01"],
    },
    { list: "suppliers", id: "idle", by: [] },
    {
      list: "materials",
      id: "A",
      by: [
        "offers: o1 Supplier s -; o2 Supplier s -",
        "lots: L1 - 2026-10-02",
        "orders: po1 Supplier s 2026-11-01",
        "formulas: base Formula base -",
        "drafts: draft Formula draft -",
      ],
    },
    { list: "materials", id: "jar", by: ["products: p Product p -"] },
    { list: "materials", id: "filter", by: ["products: p Product p -"] },
    { list: "materials", id: "spare", by: [] },
    { list: "offers", id: "o1", by: [] },
    { list: "formulas", id: "base", by: ["formulas: cream Formula cream -", "drafts: draft Formula draft -"] },
    { list: "formulas", id: "cream", by: ["products: p Product p -; unsold Product unsold -"] },
    { list: "formulas", id: "alone", by: [] },
    {
      list: "products",
      id: "p",
      by: [
        "runs: r1 - 2026-11-30",
        "finished: F1 - 2026-10-05",
        "sales: - - 2026-11-03",
        "closedRuns: r0 - 2026-11-02",
      ],
    },
    { list: "products", id: "unsold", by: [] },
  ])("[BOOK-4] $list $id", ({ list, id, by }) => {
    expect(inShort(list, id)).toEqual(by);
  });

  test("[BOOK-4, BENCH-1] an open batch keeps the formulas and materials that it was frozen with", () => {
    const [open] = richBatches().slice(1);
    if (open === undefined) throw new Error("there is an open batch");
    const line = {
      key: "1",
      part: "alone",
      of: { kind: "material", id: "spare" } as const,
      called: "Spare",
      phase: null,
      target: g("1"),
      tolerance: g("1"),
    };
    const versions = [{ formula: "alone", number: 1, called: null }];
    const desk = { ...emptyDesk, batches: [{ ...open, versions, lines: [line] }] };
    expect(inShort("formulas", "alone", { ...books, desk })).toEqual(["batches: __proto__ - 2026-11-25"]);
    expect(inShort("materials", "spare", { ...books, desk })).toEqual(["batches: __proto__ - 2026-11-25"]);
  });

  test("[BOOK-4] a draft that names itself, or a material with the id of a formula, is no use of that formula", () => {
    const desk = { ...emptyDesk, drafts: [formula("x", { "=x": "10" }), formula("y", { x: "10" })] };
    expect(inShort("formulas", "x", { ...books, desk })).toEqual([]);
    expect(inShort("materials", "x", { ...books, desk })).toEqual(["drafts: y Formula y -"]);
  });

  test("[BOOK-4] without a record that nothing uses, a workshop can be written and read; without one in use it is refused", () => {
    let [unused, used] = [0, 0];
    fc.assert(
      fc.property(workshops("tiny"), (file) => {
        const { workshop } = planned(file);
        for (const list of RETIRABLE)
          for (const { id } of workshop[list]) {
            const without = { ...workshop, [list]: workshop[list].filter((each) => each.id !== id) };
            const text = new TextEncoder().encode(writeWorkshopFile(without));
            const isUsed = usageOf({ workshop, desk: emptyDesk }, list, id).length > 0;
            expect(readWorkshopFile(text, today).kind).toBe(isUsed ? "refused" : "read");
            if (isUsed) used += 1;
            else unused += 1;
          }
      }),
      { seed: 65, numRuns: 60 },
    );
    expect([unused > 40, used > 40]).toEqual([true, true]);
  });
});
