/** Common practice, no source; the names of months are English, as the screens are. */
import { expect, test } from "vitest";
import { readTypedDay } from "@/lib/edge/forms/typed-day";
import { unchosen } from "@/lib/edge/forms/unchosen";

test.each([
  ["2026-10-03", "2026-10-03"],
  ["2026-10-3", "2026-10-03"],
  ["25.12.2026", "2026-12-25"],
  ["3 Oct 2026", "2026-10-03"],
  ["3\u00a0October\u00a02026", "2026-10-03"],
  ["Sat 3 Oct 2026", "2026-10-03"],
  ["Saturday, 3 oct. 2026", "2026-10-03"],
  ["1 Sept 2026", "2026-09-01"],
  // No such day, which the reader of days says.
  ["31 Feb 2026", "2026-02-31"],
])("[DAY-1] %j is %s", (typed, day) => {
  expect(readTypedDay(typed, "refused")).toEqual({ value: day });
});

test.each([
  ["Mar 2028", "2028-03-31"],
  ["February 2028", "2028-02-29"],
  ["02/2027", "2027-02-28"],
])("a month alone, %j, is its last day where it stands on a pack, and nothing elsewhere", (typed, last) => {
  expect(readTypedDay(typed, "its last day")).toEqual({ value: last });
  expect(readTypedDay(typed, "refused")).toHaveProperty("fault");
});

test.each([
  ["3 Oct", "must be a date as 2026-11-25 (year-month-day), not “3 Oct”"],
  ["3 Ocelot 2026", "must be a date as 2026-11-25 (year-month-day), not “3 Ocelot 2026”"],
  ["3/10/2026", "“3/10/2026” can be read two ways; write 2026-10-03 or 2026-03-10 (year-month-day)"],
  ["Oct 3 2026", "must be a date as 2026-11-25 (year-month-day), not “Oct 3 2026”"],
  ["", "must be a date as 2026-11-25 (year-month-day), not “”"],
])("%j is refused, never guessed at", (typed, fault) => {
  expect(readTypedDay(typed, "refused")).toEqual({ fault: fault.replace(/[“”]/g, '"') });
});

test("a date that is only half filled in is refused in words: the browser knows of it, and sends it marked", () => {
  expect(readTypedDay(unchosen("", null), "refused")).toEqual({
    fault: "is not a whole date; fill in its day, month and year",
  });
});
