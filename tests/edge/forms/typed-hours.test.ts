/** Spellings of hours: common practice, no source. */
import { expect, test } from "vitest";
import { hoursAsTyped, readTypedHours } from "@/lib/edge/forms/typed-hours";

test.each([
  ["", 0],
  ["0", 0],
  ["5", 300],
  ["7.5", 450],
  ["7,5", 450],
  ["5:30", 330],
  ["5h", 300],
  ["5 h 30 min", 330],
  ["5h30", 330],
  ["45 min", 45],
  ["7.5 hours", 450],
  ["0.25", 15],
  ["24", 1440],
  ["24:00", 1440],
])("[BOOK-6] %s is so many minutes", (typed, minutes) => {
  expect(readTypedHours(typed)).toEqual({ value: minutes });
});

test.each([
  ["24:01", /a day has 24 hours/],
  ["25", /a day has 24 hours/],
  ["1441 min", /a day has 24 hours/],
  ["99999999999999999999", /a day has 24 hours/],
  ["5.33", /no whole number of minutes/],
  ["-1", /must be hours/],
  ["five", /must be hours/],
  ["5:75", /must be hours/],
  ["1,500", /must be hours/],
  ["9".repeat(101), /too long/],
])("[BOOK-6] %s is refused in words", (typed, words) => {
  const outcome = readTypedHours(typed);
  expect("fault" in outcome ? outcome.fault : outcome).toMatch(words);
});

test("[BOOK-6] what a form shows is read as the same minutes", () => {
  for (let minutes = 0; minutes <= 1440; minutes += 1)
    expect(readTypedHours(hoursAsTyped(minutes))).toEqual({ value: minutes });
});
