import { test as propertyTest } from "@fast-check/vitest";
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import type { Workshop } from "@/lib/domain/workshop";
import { putRecord, putSettings, type RecordChange } from "@/lib/edge/forms/change-record";
import { RECORD_LISTS, type RecordList } from "@/lib/edge/forms/form-fields";
import type { TypedRecord } from "@/lib/edge/forms/form-reading";
import { plainTree } from "@/lib/edge/forms/plain-tree";
import { writtenRecord, writtenRecords, writtenSettings } from "@/lib/edge/forms/written-record";
import { faultList } from "@/lib/edge/fault-list";
import type { Json } from "@/lib/edge/json-tree";
import { readTree } from "@/lib/edge/workshop/reading";
import { workshopDocument } from "@/lib/edge/workshop/writing";
import { day } from "../../helpers/notation";
import { workshops } from "../../helpers/random-workshop";
import { benchFile, TODAY, without, workshopOfFile } from "./workshop-of-file";

const bench = workshopOfFile(benchFile);

const record = (list: RecordList, id: string): TypedRecord => {
  const written = writtenRecord(bench, list, id);
  if (written === null) throw new Error(`the bench has no ${id}`);
  return written;
};
const edited = (list: RecordList, id: string, changes: TypedRecord): RecordChange =>
  putRecord(bench, list, id, { ...record(list, id), ...changes }, TODAY);
const added = (list: RecordList, typed: TypedRecord): RecordChange => putRecord(bench, list, null, typed, TODAY);

/** `changed`, or what is wrong: `field: message`, then `breaks …`. */
const inShort = (change: RecordChange): readonly string[] =>
  change.kind === "refused"
    ? [
        ...change.faults.map(({ field, message }) => `${field ?? "-"}: ${message}`),
        ...change.breaks.map((sentence) => `breaks ${sentence}`),
      ]
    : [change.kind];

describe("[FILE-2] what is wrong with a record stands at its field", () => {
  test.each([
    {
      says: "a percent that cannot be read",
      change: edited("formulas", "f-base", { lines: [{ material: "m-oil", percent: "abc" }] }),
      is: [
        'lines[0].percent: must be a plain decimal, as 12.5 (no sign, exponent, separators or leading zero), not "abc"',
      ],
    },
    {
      says: "percents that do not add up",
      change: edited("formulas", "f-base", { lines: [{ material: "m-oil", percent: "97.5" }] }),
      is: ['-: formula "Base": the percents add up to 97.5 %; without a qs line they must add up to 100 %'],
    },
    {
      says: "a material that is gone",
      change: edited("offers", "o1", { material: "m-gone" }),
      is: ["material: there is no such material in the workshop any more; choose another"],
    },
    {
      says: "a volume where the product's formula has no density",
      change: edited("products", "p1", { formula: "f-base" }),
      is: [
        'fill: 200 mL is a volume, but formula "Base" has no density; write the amount by weight or enter the density',
      ],
    },
    {
      says: "the same packaging twice",
      change: edited("products", "p1", {
        packaging: [
          { material: "m-jar", amount: "1 each" },
          { material: "m-jar", amount: "1 each" },
        ],
      }),
      is: ['packaging[1].material: material "Jar" occurs twice in this list; line 1 has it already'],
    },
    {
      says: "a second preferred offer, though the other stands later in the list",
      change: edited("offers", "o2", { preferred: true }),
      is: [
        "preferred: another offer of this material is preferred already, and one at most may be; take the mark off that one first",
      ],
    },
    {
      says: "an offer for nothing, in a pack larger than any figure",
      change: edited("offers", "o2", { price: "0", pack: "9007199254.740992 g" }),
      is: ["price: must be above zero", 'pack: "9007199254.740992 g" is out of range (above 9,007,199,254 g)'],
    },
    {
      says: "a lot received after today",
      change: added("lots", { id: "L9", material: "m-oil", received: "2026-11-26", remaining: "1 kg", value: "1" }),
      is: ["received: 2026-11-26 is after today (2026-11-25); what has not come yet is an order"],
    },
    {
      says: "a lot with the id of a line on order",
      change: added("lots", { id: "po1/1", material: "m-oil", received: "2026-11-01", remaining: "1 kg", value: "1" }),
      is: ['id: repeated id "po1/1": the order from "Osel Supplies" due 2026-11-27, line 1 comes in under it'],
    },
    {
      says: "a premix that leads back",
      change: edited("formulas", "f-base", { lines: [{ formula: "f-cream", percent: "100" }] }),
      is: ["lines: cycle: Hand cream > Base > Hand cream; take one of these premixes out"],
    },
    {
      says: "several at once",
      change: added("runs", { id: "r2", product: "p9", date: "2026-02-30", units: 0 }),
      is: [
        'date: no such day "2026-02-30"',
        "units: must be above zero",
        "product: there is no such product in the workshop any more; choose another",
      ],
    },
    {
      says: "a record that is not one of its kind at all",
      change: added("runs", { id: "r2", "": 1, __proto__x: [], product: null }),
      is: [
        "product: must be the id of a product in double quotes, not null",
        'date: missing; it must be a date in double quotes, as "2026-11-25"',
        "units: missing; it must be a whole number from 1 to 9,007,199,254,740,991, without a point or quotes",
        '[""]: unknown key; take it out',
        "__proto__x: unknown key; take it out",
      ],
    },
  ])("$says", ({ change, is }) => {
    expect(inShort(change)).toEqual(is);
  });
});

describe("[FILE-2] what a change would break elsewhere is named as a person knows it", () => {
  test.each([
    {
      says: "a density taken away",
      change: putRecord(bench, "materials", "m-oil", without(record("materials", "m-oil"), "density"), TODAY),
      is: [
        'breaks the offer of "Castor oil" from "Osel Supplies", pack: 1 L is a volume, but material "Castor oil" has no density; write the amount by weight or enter the density',
      ],
    },
    {
      says: "a material that is to be counted",
      change: edited("materials", "m-water", { measure: "count" }),
      is: [
        'breaks the order from "Osel Supplies" due 2026-11-27, line 1, quantity: 1000 g is a mass, but material "Water" is counted; write whole pieces, as 12 each',
        'breaks formula "Base", line 2, material: material "Water" is counted and cannot be a percent by weight',
        'breaks formula "Hand cream", line 2, material: material "Water" is counted and cannot be a percent by weight',
      ],
    },
    {
      says: "a formula's density taken away",
      change: putRecord(bench, "formulas", "f-cream", without(record("formulas", "f-cream"), "density"), TODAY),
      is: [
        'breaks product "Hand cream, 200 mL", fill: 200 mL is a volume, but formula "Hand cream" has no density; write the amount by weight or enter the density',
      ],
    },
    {
      says: "a day before the lots came",
      change: putSettings(bench, { ...writtenSettings(bench), today: "2026-09-01" }, TODAY),
      is: [
        'breaks lot "L1" of "Castor oil", received: 2026-10-01 is after today (2026-09-01); what has not come yet is an order',
        'breaks lot "L2" of "Jar", received: 2026-10-01 is after today (2026-09-01); what has not come yet is an order',
      ],
    },
  ])("$says", ({ change, is }) => {
    expect(inShort(change)).toEqual(is);
  });
});

describe("a record is put in its place", () => {
  test("a new one at the end, with what it comes to", () => {
    const change = added("offers", { id: "o3", material: "m-spare", supplier: "s1", pack: "1 lb", price: "4" });
    if (change.kind !== "changed") throw new Error(inShort(change).join("\n"));
    expect(change.workshop.offers.map(({ id }) => id)).toEqual(["o1", "o2", "o3"]);
    expect(change.workshop.offers[2]?.pack.quantity).toBe(453_592_370n);
    expect(change.record).toEqual({ id: "o3", material: "m-spare", supplier: "s1", pack: "1 lb", price: "4.00" });
  });

  test("[QTY-1] a changed density reads again what was typed as a volume, and leaves stock on the shelf as it is", () => {
    const change = edited("materials", "m-oil", { density: "0.95" });
    if (change.kind !== "changed") throw new Error(inShort(change).join("\n"));
    expect(change.workshop.offers[0]?.pack.quantity).toBe(950_000_000n);
    expect(change.workshop.lots).toEqual(bench.lots);
  });

  test("sent twice, the second is told that it is kept already; with something else in it, it is refused", () => {
    const typed = { id: "r2", product: "p1", date: "2026-12-01", units: 12 };
    const first = added("runs", typed);
    if (first.kind !== "changed") throw new Error(inShort(first).join("\n"));
    const again = putRecord(first.workshop, "runs", null, { ...typed, sequence: 0 }, TODAY);
    expect(again).toEqual({ kind: "already kept", workshop: first.workshop, record: first.record });
    expect(inShort(putRecord(first.workshop, "runs", null, { ...typed, units: 13 }, TODAY))).toEqual([
      "-: this run was kept before, with something else in it; open it to change it",
    ]);
  });

  test("one that was removed meanwhile is not made again", () => {
    expect(inShort(putRecord(bench, "runs", "r9", record("runs", "r1"), TODAY))).toEqual([
      "-: this run is no longer in the workshop; it was removed meanwhile",
    ]);
  });

  test("a record keeps its id", () => {
    const change = edited("runs", "r1", { id: "r7" });
    expect(change.kind === "changed" && change.workshop.runs.map(({ id }) => id)).toEqual(["r1"]);
  });

  test("a form's own sentence is told in place of the reader's, and nothing is kept", () => {
    const typed = { ...record("runs", "r1"), units: "1,500" };
    const sentence = { field: "units", message: '"1,500" can be read two ways; write 1500 or 1.5' };
    expect(putRecord(bench, "runs", "r1", typed, TODAY, [sentence])).toEqual({
      kind: "refused",
      faults: [sentence],
      breaks: [],
    });
  });

  test("a clock that was set back does not stop the work: what is on the shelf stays there", () => {
    const monthsBefore = day("2026-03-01");
    expect(putRecord(bench, "runs", "r1", record("runs", "r1"), monthsBefore).kind).toBe("changed");
    expect(putRecord(bench, "lots", "L1", record("lots", "L1"), monthsBefore).kind).toBe("changed");
  });
});

test("[FILE-5, OFFER-1, OFFER-2] a form may say what the file so far has no need of a later version for", () => {
  const change = edited("offers", "o2", { shelfLifeDays: 365, confirmedOn: "2026-11-20" });
  if (change.kind !== "changed") throw new Error(change.kind);
  expect(change.workshop.offers[1]).toMatchObject({ shelfLifeDays: 365, confirmedOn: day("2026-11-20") });
  expect(change.record).toMatchObject({ shelfLifeDays: 365, confirmedOn: "2026-11-20" });
  expect(inShort(edited("offers", "o2", { shelfLifeDays: 3661 }))).toEqual([
    "shelfLifeDays: 3661 is out of range 0 to 3660",
  ]);
});

/** What a full reading of the whole document says of a change: the workshop, or null where it is refused. */
function readWhole(workshop: Workshop, list: RecordList, id: string, typed: TypedRecord): Workshop | null {
  const document = plainTree(workshopDocument(workshop)) as Map<string, Json>;
  const records = document.get(list) as readonly ReadonlyMap<string, Json>[];
  document.set(
    list,
    records.map((kept) => (kept.get("id") === id ? plainTree(typed) : kept)),
  );
  return readTree(document, TODAY, faultList()) ?? null;
}

const changes = fc.record({ list: fc.constantFrom(...RECORD_LISTS), at: fc.nat(), from: fc.nat(), dice: fc.nat() });

describe("laws of changing a record", () => {
  propertyTest.prop([workshops()], { numRuns: 30 })("an unchanged record changes nothing", (file) => {
    const workshop = workshopOfFile(file);
    for (const list of RECORD_LISTS) {
      for (const written of writtenRecords(workshop, list)) {
        const change = putRecord(workshop, list, String(written.id), written, TODAY);
        expect(change).toEqual({ kind: "changed", workshop, record: written });
      }
    }
    expect(putSettings(workshop, writtenSettings(workshop), TODAY)).toMatchObject({ kind: "changed", workshop });
  });

  propertyTest.prop([workshops(), fc.array(changes, { minLength: 5, maxLength: 20 })], { numRuns: 60 })(
    "the part of the workshop that is read judges as the whole would, and gives the same workshop",
    (file, tries) => {
      const workshop = workshopOfFile(file);
      for (const { list, at, from, dice } of tries) {
        const records = writtenRecords(workshop, list);
        const [kept, other] = [records[at % Math.max(1, records.length)], records[from % Math.max(1, records.length)]];
        if (kept === undefined || other === undefined) continue;
        // Some fields of another record of the list, some taken away: half of what comes out is wrong somewhere.
        const keys = [...new Set([...Object.keys(kept), ...Object.keys(other)])].filter((key) => key !== "id");
        const taken = keys.filter((_, key) => (dice >> (key % 30)) & 1);
        const typed: TypedRecord = {
          ...kept,
          ...Object.fromEntries(taken.map((key) => [key, other[key] ?? undefined])),
          ...(list === "materials" && dice % 5 === 0 ? { measure: "count" } : {}),
        };
        const id = String(kept.id);
        const change = putRecord(workshop, list, id, typed, TODAY);
        expect(change.kind === "changed" ? change.workshop : null).toEqual(readWhole(workshop, list, id, typed));
      }
    },
  );
});
