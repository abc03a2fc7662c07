/** Premixes made ahead in a file and in forms: what is refused, with the way round it. */
import { describe, expect, test } from "vitest";
import { putRecord, type RecordChange } from "@/lib/edge/forms/change-record";
import type { RecordList } from "@/lib/edge/forms/form-fields";
import type { TypedRecord } from "@/lib/edge/forms/form-reading";
import { writtenRecord } from "@/lib/edge/forms/written-record";
import { workshopDocument } from "@/lib/edge/workshop/writing";
import { changedFile, type Changes, faultsOf, workshopOf } from "../bad-files/bench-workshop";
import { benchFile, TODAY, workshopOfFile } from "./forms/workshop-of-file";

/** The bench, whose balm holds 30 % of the base, with the base made ahead into a material of its own. */
const ahead = (): Changes => ({
  version: 4,
  "materials[4]": { id: "stock", name: "Base stock", kind: "ingredient", measure: "mass" },
  "products[1]": { id: "base500", name: "Base 500", formula: "base", fill: "500 g", usualRun: 2, madeInto: "stock" },
});

describe("[AHEAD-1, AHEAD-2, FILE-2] in a file", () => {
  test("[FILE-4, FILE-5] it is read, and written in version 4", () => {
    const workshop = workshopOf(changedFile(ahead()));
    expect(workshop.products.map(({ madeInto }) => madeInto)).toEqual([null, "stock"]);
    const document = workshopDocument(workshop);
    expect(document.version).toBe(4);
    expect(workshopOf(JSON.stringify(document))).toEqual(workshop);
  });

  test.each([
    {
      says: "[FILE-5] a version that does not know it",
      changes: { version: 3 },
      is: [
        "products[1].madeInto: belongs to version 4 of the file, and this file says it is version 3; write 4 there or take the key out",
      ],
    },
    {
      says: "a material that there is not",
      changes: { "products[1].madeInto": "stok" },
      is: ['products[1].madeInto: no material "stok"; add it or correct the id'],
    },
    {
      says: "a material that is counted",
      changes: { "products[1].madeInto": "jar" },
      is: ['products[1].madeInto: material "jar" (Jar 60) is counted; what a formula makes is weighed'],
    },
    {
      says: "a material that another product makes, of a formula that is made ahead already",
      changes: { "products[2]": { id: "b", name: "B", formula: "base", fill: "1 kg", usualRun: 1, madeInto: "stock" } },
      is: [
        'products[2].madeInto: material "stock" (Base stock) is made by products[1] already; one product at most makes a material',
        "products[2].madeInto: products[1] makes a material of this formula already; one product at most may",
      ],
    },
    {
      says: "a premix that holds the material made of it",
      changes: { "formulas[1].lines[1].material": "stock" },
      is: [
        'products[1].madeInto: cycle: base > base, through material "stock" (Base stock), which is made ahead of one of them; take it out of that formula, or do not make it ahead',
      ],
    },
    {
      says: "a round of a premix and a material made of one",
      changes: {
        "formulas[1].lines[1]": { formula: "wash", percent: "25" },
        "formulas[2]": { id: "wash", name: "Wash", lines: [{ material: "stock", percent: "100" }] },
      },
      is: [
        'products[1].madeInto: cycle: base > wash > base, through material "stock" (Base stock), which is made ahead of one of them; take it out of that formula, or do not make it ahead',
      ],
    },
    {
      says: "[FORMULA-2] a cycle of premixes alone is told as such, once",
      changes: { "formulas[1].lines[1]": { formula: "balm", percent: "25" } },
      is: ["formulas[0]: cycle: balm > base > balm; take one of these premixes out"],
    },
  ])("$says", ({ changes, is }) => {
    expect(faultsOf(changedFile({ ...ahead(), ...changes }))).toEqual(is);
  });

  test("a chain of thousands of premixes made ahead is no round", () => {
    const count = 2_000;
    const each = Array.from({ length: count }, (_, at) => String(at));
    const changes = {
      version: 4,
      ...Object.fromEntries(
        each.flatMap((id, at): [string, unknown][] => [
          [`materials[${String(at + 4)}]`, { id: `m${id}`, name: id, kind: "ingredient", measure: "mass" }],
          [
            `formulas[${String(at + 2)}]`,
            {
              id: `f${id}`,
              name: id,
              lines: [{ material: at + 1 < count ? `m${String(at + 1)}` : "oil", percent: "100" }],
            },
          ],
          [
            `products[${String(at + 1)}]`,
            { id: `p${id}`, name: id, formula: `f${id}`, fill: "1 g", usualRun: 1, madeInto: `m${id}` },
          ],
        ]),
      ),
    };
    expect(faultsOf(changedFile(changes))).toEqual([]);
    const round = { ...changes, [`formulas[${String(count + 1)}].lines[0].material`]: "m0" };
    expect(faultsOf(changedFile(round))).toEqual([
      expect.stringMatching(/cycle: f0 > f1 > .* more … > .* > f0, through material "m\d+"/),
    ]);
  });
});

describe("[AHEAD-1, AHEAD-2] in forms", () => {
  const bench = workshopOfFile({
    ...benchFile,
    version: 4,
    products: [
      ...benchFile.products,
      { id: "p2", name: "Base stock", formula: "f-base", fill: "500 g", usualRun: 2, madeInto: "m-spare" },
    ],
  });
  const edited = (list: RecordList, id: string, changes: TypedRecord): RecordChange =>
    putRecord(bench, list, id, { ...writtenRecord(bench, list, id), ...changes }, TODAY);
  const inShort = (change: RecordChange): readonly string[] =>
    change.kind === "refused"
      ? [
          ...change.faults.map(({ field, message }) => `${field ?? "-"}: ${message}`),
          ...change.breaks.map((each) => `breaks ${each}`),
        ]
      : [change.kind];

  test.each([
    { says: "not made ahead any more", change: edited("products", "p2", { madeInto: null }), is: ["changed"] },
    {
      says: "made into what its own formula holds",
      change: edited("products", "p2", { madeInto: "m-oil" }),
      is: [
        'madeInto: cycle: Base > Base, through material "Castor oil", which is made ahead of one of them; take it out of that formula, or do not make it ahead',
      ],
    },
    {
      says: "another product of the same formula, into the same material",
      change: putRecord(
        bench,
        "products",
        null,
        { id: "p3", name: "Third", formula: "f-base", fill: "1 kg", usualRun: 1, madeInto: "m-spare" },
        TODAY,
      ),
      is: [
        'madeInto: material "Spare wax" is made by product "Base stock" already; one product at most makes a material',
        'madeInto: product "Base stock" makes a material of this formula already; one product at most may',
      ],
    },
    {
      says: "a formula that comes to hold what is made of it",
      change: edited("formulas", "f-base", { lines: [{ material: "m-spare", percent: "100" }] }),
      is: [
        'breaks product "Base stock", made into: cycle: Base > Base, through material "Spare wax", which is made ahead of one of them; take it out of that formula, or do not make it ahead',
      ],
    },
    {
      says: "a material made of a premix that is to be counted",
      change: edited("materials", "m-spare", { measure: "count" }),
      is: ['breaks product "Base stock", made into: material "Spare wax" is counted; what a formula makes is weighed'],
    },
  ])("$says", ({ change, is }) => {
    expect(inShort(change)).toEqual(is);
  });
});
