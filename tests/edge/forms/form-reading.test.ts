import { test as propertyTest } from "@fast-check/vitest";
import { describe, expect, test } from "vitest";
import type { CurrencyCode } from "@/lib/domain/money";
import { putRecord } from "@/lib/edge/forms/change-record";
import type { FormField } from "@/lib/edge/forms/form-fields";
import { formFromRecord, readForm, recordFromForm, sentName, type TypedRecord } from "@/lib/edge/forms/form-reading";
import { type FormKind, RECORD_FORMS } from "@/lib/edge/forms/record-forms";
import { writtenRecords, writtenSettings } from "@/lib/edge/forms/written-record";
import { workshops } from "../../helpers/random-workshop";
import { benchFile, sent, TODAY, workshopOfFile } from "./workshop-of-file";

const KINDS = Object.keys(RECORD_FORMS) as readonly FormKind[];

/** What was typed, as the record and the sentences about it. */
const read = (kind: FormKind, values: Readonly<Record<string, string>>) => {
  const { record, faults } = readForm(kind, sent(values), "GBP" as CurrencyCode);
  return { record, faults: faults.map(({ field, message }) => `${field ?? "-"}: ${message}`) };
};

describe("what is typed becomes a record of the file", () => {
  test("a material, in the maker's own spelling", () => {
    expect(
      read("materials", {
        id: "m1",
        name: "  Glycerin ",
        kind: "ingredient",
        measure: "mass",
        density: "1,2613",
        safetyStock: "100G",
        safetyDays: "03",
        useMin: "",
        useMax: "5 %",
        addBelow: "",
      }),
    ).toEqual({
      record: {
        id: "m1",
        name: "Glycerin",
        kind: "ingredient",
        measure: "mass",
        density: "1.2613",
        safetyStock: "100 g",
        safetyDays: 3,
        useMax: "5",
      },
      faults: [],
    });
  });

  test("lines by their numbers, empty rows left out", () => {
    const values = {
      id: "f1",
      name: "Balm",
      "lines.10.material": "m3",
      "lines.10.percent": "q.s.",
      "lines.0.material": "m1",
      "lines.0.percent": "2,5 %",
      "lines.0.phase": "A",
      "lines.3.material": "",
      "lines.3.percent": " ",
      "lines.7.formula": "f2",
      "lines.7.percent": "40",
    };
    expect(read("formulas", values).record).toEqual({
      id: "f1",
      name: "Balm",
      lines: [
        { material: "m1", percent: "2.5", phase: "A" },
        { formula: "f2", percent: "40" },
        { material: "m3", percent: "qs" },
      ],
    });
  });

  test("a fault in a record's line finds the row that was sent", () => {
    const reading = readForm(
      "formulas",
      sent({ id: "f1", name: "B", "lines.2.percent": "5", "lines.5.material": "m1", "lines.5.percent": "1,500" }),
    );
    expect(reading.faults).toEqual([
      { field: "lines[1].percent", message: '"1,500" can be read two ways; write 1500 or 1.5' },
    ]);
    expect(reading.record.lines).toEqual([{ percent: "5" }, { material: "m1", percent: "1,500" }]);
    expect(sentName(reading, "lines[1].percent")).toBe("lines.5.percent");
    expect(sentName(reading, "name")).toBe("name");
  });

  test("closed days, however they are set apart, stay in one field", () => {
    const reading = readForm(
      "suppliers",
      sent({ closedDays: "2026-12-25\r\n 2026-12-26, 1/1/2027 2027-1-2;tomorrow" }),
    );
    expect(reading.record.closedDays).toEqual(["2026-12-25", "2026-12-26", "2027-01-01", "2027-01-02", "tomorrow"]);
    expect(sentName(reading, "closedDays[4]")).toBe("closedDays");
  });

  test("the last day of use may be a month", () => {
    const { record } = read("lots", { id: "L1", expires: "2028-02", received: "2026-02" });
    expect([record.expires, record.received]).toEqual(["2028-02-29", "2026-02"]);
  });

  test("a ticked box", () => {
    expect(recordFromForm("offers", sent({ preferred: "yes" })).preferred).toBe(true);
    expect(recordFromForm("offers", sent({})).preferred).toBe(undefined);
  });
});

describe("nothing that is typed is lost or lets the form fail", () => {
  test("what is needed and missing is said, and what cannot be understood stays as it was typed", () => {
    expect(read("runs", { id: "r1", product: "", date: "soon", units: "2,5" })).toEqual({
      record: { id: "r1", date: "soon", units: "2,5" },
      faults: [
        "product: is needed; choose one",
        'date: must be a date as 2026-11-25 (year-month-day), not "soon"',
        'units: must be a whole number, as 24, not "2,5"',
      ],
    });
  });

  test("money in another currency", () => {
    expect(read("suppliers", { shipping: "€4.95" }).faults).toContain(
      'shipping: "€" is not the workshop\'s currency; write the amount in GBP',
    );
  });

  test.each(KINDS)("%s: an empty form, a form of files and one of nonsense are read and refused", (kind) => {
    const files = new FormData();
    const nonsense = new FormData();
    for (const { name, control } of RECORD_FORMS[kind]) {
      files.append(name, new File(["x"], "x.txt"));
      nonsense.append(name, "<script>alert(1)</script>\u0000\ud800");
      if (control.kind !== "lines") continue;
      nonsense.append(`${name}.0.material`, "__proto__");
      nonsense.append(`${name}.999999999.percent`, "x".repeat(10_000));
      nonsense.append(`${name}.constructor.percent`, "1");
      nonsense.append(`__proto__.0.material`, "1");
    }
    const workshop = workshopOfFile(benchFile);
    for (const form of [new FormData(), files, nonsense]) {
      const { record, faults } = readForm(kind, form);
      expect(faults.length).toBeGreaterThan(0);
      if (kind === "settings") continue;
      expect(putRecord(workshop, kind, null, record, TODAY).kind).toBe("refused");
    }
  });
});

/** Spaces at the ends of a name or phase are no part of what a person means. */
const trimmed = (record: TypedRecord): TypedRecord =>
  JSON.parse(JSON.stringify(record), (key, value: unknown) =>
    (key === "name" || key === "phase") && typeof value === "string" ? value.trim() : value,
  ) as TypedRecord;

propertyTest.prop([workshops()], { numRuns: 60 })("a record goes into its form and comes back the same", (file) => {
  const workshop = workshopOfFile(file);
  for (const kind of KINDS) {
    const records = kind === "settings" ? [writtenSettings(workshop)] : writtenRecords(workshop, kind);
    for (const record of records) {
      const reading = readForm(kind, sent(formFromRecord(kind, record)), workshop.settings.currency);
      expect(reading.faults).toEqual([]);
      expect(reading.record).toEqual(trimmed(record));
    }
  }
});

test("every field of the file has its field in the form, and no other", () => {
  const workshop = workshopOfFile(benchFile);
  for (const kind of KINDS) {
    const records = kind === "settings" ? [writtenSettings(workshop)] : writtenRecords(workshop, kind);
    const names = RECORD_FORMS[kind].map(({ name }) => name);
    expect(names.filter((name, at) => names.indexOf(name) !== at)).toEqual([]);
    for (const record of records) expect(Object.keys(record).filter((key) => !names.includes(key))).toEqual([]);
  }
});

test("[MONEY-6] every field that takes money says which tax is in it or is not", () => {
  const fieldsOf = (fields: readonly FormField[]): readonly FormField[] =>
    fields.flatMap((field) => (field.control.kind === "lines" ? fieldsOf(field.control.fields) : [field]));
  const money = KINDS.flatMap((kind) => fieldsOf(RECORD_FORMS[kind])).filter(({ control }) => control.kind === "money");
  expect(money).toHaveLength(12);
  expect(
    money.filter(({ hint }) => !/\b(without|with) (the )?tax\b/i.test(hint ?? "")).map(({ name }) => name),
  ).toEqual([]);
});
