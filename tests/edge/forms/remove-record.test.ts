import { test as propertyTest } from "@fast-check/vitest";
import { describe, expect, test } from "vitest";
import { type Books, emptyDesk } from "@/lib/domain/desk";
import { RECORD_LISTS, type RecordList } from "@/lib/edge/forms/form-fields";
import { putDraft } from "@/lib/edge/forms/change-draft";
import { removeDraft, removeRecord } from "@/lib/edge/forms/remove-record";
import { readWorkshopFile, writeWorkshopFile } from "@/lib/edge/workshop-file";
import { workshops } from "../../helpers/random-workshop";
import { benchFile, TODAY, workshopOfFile } from "./workshop-of-file";

const books: Books = { workshop: workshopOfFile(benchFile), desk: emptyDesk };
const drafted = putDraft(books, null, { id: "d1", name: "Balm", lines: [{ material: "m-spare", percent: "5" }] });
if (drafted.kind === "refused") throw new Error("the draft was refused");

describe("what is in use stays, and the sentence says by what", () => {
  test.each([
    {
      list: "suppliers",
      id: "s1",
      by: [
        'the offer of "Castor oil" from "Osel Supplies"',
        'the offer of "Castor oil" from "Osel Supplies"',
        'the order from "Osel Supplies" due 2026-11-27',
      ],
    },
    {
      list: "materials",
      id: "m-water",
      by: ['the order from "Osel Supplies" due 2026-11-27', 'formula "Base"', 'formula "Hand cream"'],
    },
    { list: "materials", id: "m-jar", by: ['lot "L2" of "Jar"', 'product "Hand cream, 200 mL"'] },
    { list: "materials", id: "m-spare", by: ['draft "Balm"'] },
    { list: "formulas", id: "f-base", by: ['formula "Hand cream"'] },
    { list: "formulas", id: "f-cream", by: ['product "Hand cream, 200 mL"'] },
    { list: "products", id: "p1", by: ['the run of "Hand cream, 200 mL" on 2026-11-30', "the sale of 2026-11-03"] },
  ] as const)("$list $id", ({ list, id, by }) => {
    const removal = removeRecord(drafted.books, list, id);
    expect(removal.kind === "refused" && removal.breaks).toEqual(by);
  });

  test("of a long list the first ten are named", () => {
    const sales = Array.from({ length: 14 }, () => ({ product: "p1", date: "2026-11-03", units: 3 }));
    const busy = { ...books, workshop: workshopOfFile({ ...benchFile, sales }) };
    const removal = removeRecord(busy, "products", "p1");
    expect(removal.kind === "refused" && removal.breaks.at(-1)).toBe("and 4 more sales");
  });
});

describe("what nothing uses goes", () => {
  test("with its mark of being retired", () => {
    const desk = { ...emptyDesk, retired: { ...emptyDesk.retired, offers: ["o1", "o2"] } };
    const removal = removeRecord({ ...books, desk }, "offers", "o1");
    if (removal.kind === "refused") throw new Error("the offer was refused");
    expect(removal.books.workshop.offers.map(({ id }) => id)).toEqual(["o2"]);
    expect(removal.books.desk.retired.offers).toEqual(["o2"]);
  });

  test("a run, a lot, an order, a draft; and nothing twice", () => {
    for (const [list, id] of [
      ["runs", "r1"],
      ["lots", "L1"],
      ["orders", "po1"],
    ] as const) {
      const removal = removeRecord(books, list, id);
      if (removal.kind === "refused") throw new Error(`${id} was refused`);
      expect(removal.books.workshop[list].some((record) => record.id === id)).toBe(false);
      expect(removeRecord(removal.books, list, id).kind).toBe("refused");
    }
    const removal = removeDraft(drafted.books, "d1");
    expect(removal.kind === "removed" && removal.books.desk.drafts).toEqual([]);
    expect(removeDraft(books, "d1").kind).toBe("refused");
  });

  propertyTest.prop([workshops()], { numRuns: 60 })("what is left is a workshop, whatever goes", (file) => {
    const workshop = workshopOfFile(file);
    const isWhole = (left: Books): boolean =>
      readWorkshopFile(new TextEncoder().encode(writeWorkshopFile(left.workshop)), TODAY).kind === "read";
    const first = (list: RecordList) => workshop[list].slice(0, 2).map(({ id }) => ({ list, id }));
    for (const { list, id } of RECORD_LISTS.flatMap(first)) {
      const removal = removeRecord({ workshop, desk: emptyDesk }, list, id);
      if (removal.kind === "removed") expect(isWhole(removal.books)).toBe(true);
      else expect(removal.breaks.length).toBeGreaterThan(0);
    }
  });
});
