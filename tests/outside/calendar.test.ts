/** Weeks against ISO 8601, working-day counts against published counts. */
import { describe, expect, test } from "vitest";
import {
  daysAfter,
  daysBetween,
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

/** A date's week by ISO 8601: week 1 is the week with 4 January, and a week belongs to the year of its Thursday. */
function isoWeekDate(date: string): string {
  const monday = mondayOf(day(date));
  const year = isoDate(daysAfter(monday, 3)).slice(0, 4);
  const week = daysBetween(mondayOf(day(`${year}-01-04`)), monday) / 7 + 1;
  return `${year}-W${String(week).padStart(2, "0")}-${String(weekday(day(date)))}`;
}

describe("[DAY-4] ISO 8601 week dates", () => {
  test.each([
    { date: "2003-12-29", week: "2004-W01-1", source: "Python library documentation, date.isocalendar (read)" },
    { date: "2004-01-04", week: "2004-W01-7", source: "Python library documentation, date.isocalendar (from memory)" },
    { date: "2005-01-01", week: "2004-W53-6", source: "recomputed" },
    { date: "2008-12-29", week: "2009-W01-1", source: "recomputed" },
    { date: "2020-12-31", week: "2020-W53-4", source: "recomputed" },
    { date: "2026-11-25", week: "2026-W48-3", source: "recomputed" },
    { date: "1981-04-05", week: "1981-W14-7", source: "ISO 8601 worked example (from memory)" },
    { date: "1900-01-01", week: "1900-W01-1", source: "recomputed" },
    { date: "2999-06-14", week: "2999-W24-5", source: "recomputed" },
  ])("$date is $week ($source)", ({ date, week }) => {
    expect(isoWeekDate(date)).toBe(week);
  });
});

/** Working days from the first to the last day, both counted, and the last one reached by counting them. */
const counts = [
  {
    source: "a spreadsheet handbook's working-day example (read)",
    from: "2014-01-15",
    to: "2014-06-30",
    closed: [],
    count: 119,
  },
  {
    source: "another handbook's, with six public holidays (read)",
    from: "2010-12-12",
    to: "2011-06-02",
    closed: ["2010-12-25", "2011-01-01", "2011-01-17", "2011-02-21", "2011-05-30", "2011-07-04"],
    count: 121,
  },
  { source: "a spreadsheet reference (from memory)", from: "2012-10-01", to: "2013-03-01", closed: [], count: 110 },
  {
    source: "the same with one holiday (from memory)",
    from: "2012-10-01",
    to: "2013-03-01",
    closed: ["2012-11-22"],
    count: 109,
  },
  {
    source: "the same with three (from memory)",
    from: "2012-10-01",
    to: "2013-03-01",
    closed: ["2012-11-22", "2012-12-04", "2013-01-21"],
    count: 107,
  },
] as const;

describe("[DAY-2] working days", () => {
  test.each(counts)("$from to $to are $count: $source", ({ from, to, closed, count }) => {
    const calendar = workingCalendar(closed.map(day));
    const last = workingDayUpTo(calendar, day(to));
    expect(isoDate(workingDaysAfter(calendar, daysAfter(day(from), -1), count))).toBe(isoDate(last));
  });

  test.each([
    { days: 151, from: "2008-10-01", closed: [], to: "2009-04-30" },
    { days: 151, from: "2008-10-01", closed: ["2008-11-26", "2008-12-04", "2009-01-21"], to: "2009-05-05" },
  ])("$days working days after $from are $to (a spreadsheet reference, from memory)", ({ days, from, closed, to }) => {
    const calendar = workingCalendar(closed.map(day));
    expect(isoDate(workingDaysAfter(calendar, day(from), days))).toBe(to);
    // And back: one day later is too late.
    const latest = latestStartForWorkingDays(calendar, day(to), days);
    expect(workingDaysAfter(calendar, latest, days)).toBeLessThanOrEqual(day(to));
    expect(workingDaysAfter(calendar, daysAfter(latest, 1), days)).toBeGreaterThan(day(to));
  });

  test("England has 253 working days in 2026 (bank holidays from memory; recomputed)", () => {
    const bankHolidays = [
      "2026-01-01",
      "2026-04-03",
      "2026-04-06",
      "2026-05-04",
      "2026-05-25",
      "2026-08-31",
      "2026-12-25",
      "2026-12-28",
    ].map(day);
    const calendar = workingCalendar(bankHolidays);
    expect(isoDate(workingDaysAfter(calendar, day("2025-12-31"), 253))).toBe("2026-12-31");
    expect(isoDate(workingDayFrom(calendar, day("2026-12-25")))).toBe("2026-12-29");
  });
});
