import { fc, test as property } from "@fast-check/vitest";
import { describe, expect, test } from "vitest";
import {
  type Day,
  dayOf,
  daysAfter,
  isoDate,
  latestStartForWorkingDays,
  mondayOf,
  weekday,
  workingCalendar,
  workingDayFrom,
  workingDaysAfter,
  workingDayUpTo,
} from "@/lib/domain/calendar";
import { day } from "@/tests/helpers/notation";

describe("[DAY-1] dates", () => {
  test.each([
    ["1970-01-01", 0],
    ["2000-02-29", 11016],
    ["1900-01-01", -25567],
    ["2999-12-31", 376199],
  ])("%s is day %i", (iso, number) => {
    expect(dayOf(iso)).toBe(number);
    expect(isoDate(number as Day)).toBe(iso);
  });
  test.each([
    "2026-02-29",
    "1900-02-29",
    "2026-13-01",
    "2026-00-10",
    "2026-04-31",
    "1899-12-31",
    "3000-01-01",
    "2026-1-1",
    "26-01-01",
    "2026-01-01T00:00",
    "",
  ])("%s is no day", (iso) => {
    expect(dayOf(iso)).toBeNull();
  });
});

describe("[DAY-4] weeks begin on Monday", () => {
  // ISO 8601 weekday numbers; 2026-11-25 is a Wednesday, 1900-01-01 was a Monday (recomputed from the Gregorian rule)
  test.each([
    ["2026-11-25", 3, "2026-11-23"],
    ["2026-11-29", 7, "2026-11-23"],
    ["1900-01-01", 1, "1900-01-01"],
    ["1970-01-01", 4, "1969-12-29"],
  ])("%s is weekday %i of the week from %s", (iso, number, monday) => {
    expect(weekday(day(iso))).toBe(number);
    expect(isoDate(mondayOf(day(iso)))).toBe(monday);
  });
});

test("[DAY-1] every day of 400 years is called as the language's own Date calls it (ECMA-262, Date.prototype.toISOString)", () => {
  const different: string[] = [];
  for (let at = Date.UTC(1890, 0, 1); at < Date.UTC(2290, 0, 1); at += 86_400_000) {
    const named = new Date(at).toISOString().slice(0, 10);
    if (isoDate((at / 86_400_000) as Day) !== named) different.push(named);
  }
  expect(different).toEqual([]);
});

/** The walk that the numbering replaces. */
const isWorking = (closed: readonly Day[], at: Day): boolean => weekday(at) <= 5 && !closed.includes(at);
const walk = (closed: readonly Day[], from: Day, step: 1 | -1, count: number): Day => {
  let at = from;
  for (let left = count; left > 0;) {
    at = daysAfter(at, step);
    if (isWorking(closed, at)) left -= 1;
  }
  return at;
};

describe("[DAY-2] working days are found without walking, and equal the walk", () => {
  const anyDay = fc.integer({ min: -400, max: 400 }).map((number) => number as Day);
  const closures = fc.array(anyDay, { maxLength: 120 });
  property.prop([closures, anyDay, fc.integer({ min: 0, max: 60 })])("forward and back", (closed, from, count) => {
    const calendar = workingCalendar(closed);
    expect(workingDayFrom(calendar, from)).toBe(isWorking(closed, from) ? from : walk(closed, from, 1, 1));
    expect(workingDayUpTo(calendar, from)).toBe(isWorking(closed, from) ? from : walk(closed, from, -1, 1));
    expect(workingDaysAfter(calendar, from, count)).toBe(walk(closed, from, 1, count));
    const start = latestStartForWorkingDays(calendar, from, count);
    expect(walk(closed, start, 1, count)).toBeLessThanOrEqual(from);
    expect(walk(closed, daysAfter(start, 1), 1, count)).toBeGreaterThan(from);
  });
});
