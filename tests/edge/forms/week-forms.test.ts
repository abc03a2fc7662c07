/** What the forms of the week carry and what is typed into them. Spellings are common practice, no source. */
import { expect, test } from "vitest";
import {
  carriedHours,
  HOUR_FIELDS,
  type HourField,
  hoursCarried,
  hoursShownAsTyped,
  readDayTyped,
  readHoursTyped,
  readLastDayTyped,
  readUnitsMade,
  seenRunIn,
} from "@/lib/edge/forms/week-forms";
import { day } from "@/tests/helpers/notation";

const sent = (fields: Readonly<Record<string, string>>) => ({ get: (name: string) => fields[name] ?? null });
const typed = (fields: Partial<Record<HourField, string>>): Record<HourField, string> =>
  Object.fromEntries(HOUR_FIELDS.map((name) => [name, fields[name] ?? ""])) as Record<HourField, string>;

test("[DAY-1] a day is needed, and is read as it is typed or refused", () => {
  expect(readDayTyped("2026-11-28")).toEqual({ value: day("2026-11-28") });
  expect(readDayTyped("28.11.2026")).toEqual({ value: day("2026-11-28") });
  for (const [text, words] of [
    ["", /is needed/],
    ["2026-02-30", /no such day/],
    ["3/4/2026", /two ways/],
    ["2026-11", /must be a date/],
    ["9999-01-01", /out of range/],
  ] as const) {
    const outcome = readDayTyped(text);
    expect("fault" in outcome ? outcome.fault : outcome).toMatch(words);
  }
});

test("[DAY-1] a last day of use may be a month, which means its last day, or nothing", () => {
  expect(readLastDayTyped("")).toEqual({ value: null });
  expect(readLastDayTyped("02/2028")).toEqual({ value: day("2028-02-29") });
  expect(readLastDayTyped("tomorrow")).toHaveProperty("fault");
});

test("[CLOSE-4] none may have come out, and what is no count is refused", () => {
  expect(readUnitsMade("0")).toEqual({ value: 0n });
  for (const text of ["", "-1", "2.5", "nine", "9007199254740992"]) expect(readUnitsMade(text)).toHaveProperty("fault");
});

test("a run is carried as it was shown, and half of it is none", () => {
  const whole = { run: "r 1", product: "p", from: "2026-11-28", units: "24" };
  expect(seenRunIn(sent(whole))).toEqual({ id: "r 1", product: "p", date: day("2026-11-28"), units: 24n });
  for (const broken of [{ run: "" }, { product: "" }, { from: "soon" }, { units: "0" }, { units: "1e3" }])
    expect(seenRunIn(sent({ ...whole, ...broken }))).toBeNull();
});

test("[BOOK-6] hours of a week: each day at its field; all empty is not said", () => {
  expect(readHoursTyped(typed({ mon: "5", fri: "2:30" }))).toEqual({ minutes: [300, 0, 0, 0, 150, 0, 0] });
  expect(readHoursTyped(typed({}))).toEqual({ minutes: null });
  expect(readHoursTyped(typed({ mon: "0" }))).toEqual({ minutes: [0, 0, 0, 0, 0, 0, 0] });
  expect(readHoursTyped(typed({ mon: "5", tue: "x", sun: "25" }))).toMatchObject({
    faults: { tue: expect.stringMatching(/must be hours/) as string, sun: expect.stringMatching(/24 hours/) as string },
  });
});

test("[BOOK-6] hours are carried and shown as they are kept", () => {
  const minutes = [300, 0, 0, 0, 150, 0, 1440] as const;
  expect(carriedHours(hoursCarried(minutes))).toEqual(minutes);
  expect(carriedHours(hoursCarried(null))).toBeNull();
  for (const text of ["", "1 2 3", "0 0 0 0 0 0 1441", "a b c d e f g"]) expect(carriedHours(text)).toBeUndefined();
  expect(hoursShownAsTyped(minutes)).toEqual(["5", "0", "0", "0", "2:30", "0", "24"]);
  expect(hoursShownAsTyped(null)).toEqual(["", "", "", "", "", "", ""]);
});
