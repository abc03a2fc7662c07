/** Calendar weeks begin on Monday: ISO 8601. The titles are the project's own. */
import { expect, test } from "vitest";
import { counted, inARow, inWords, inWordsFirst } from "@/lib/edge/counted";
import { dayInWeek, weekTitle } from "@/lib/edge/week-title";
import { day } from "../helpers/notation";

test.each([
  { monday: "2026-10-05", says: "5 to 11 October" },
  { monday: "2026-09-28", says: "28 September to 4 October" },
  { monday: "2026-12-28", says: "28 December 2026 to 3 January 2027" },
  { monday: "2027-01-04", says: "4 to 10 January 2027" },
])("[DAY-4] the week of $monday is $says", ({ monday, says }) => {
  expect(weekTitle(day(monday), day("2026-11-25")).replaceAll("\u00a0", " ")).toBe(says);
});

test("a day within a week", () => {
  expect(dayInWeek(day("2026-10-05"))).toBe("Mon\u00a05");
});

test("small counts are said in words, larger ones in digits", () => {
  expect([inWords(0), inWords(1), inWords(10), inWords(11), inWords(1250)]).toEqual([
    "no",
    "one",
    "ten",
    "11",
    "1,250",
  ]);
  expect(inWordsFirst(3)).toBe("Three");
  expect([counted(1, "run", "runs"), counted(2, "run", "runs")]).toEqual(["one run", "two runs"]);
  expect([inARow([]), inARow(["a"]), inARow(["a", "b"]), inARow(["a", "b", "c"])]).toEqual([
    "",
    "a",
    "a and b",
    "a, b and c",
  ]);
});
