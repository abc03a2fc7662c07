/** Figures worked by hand from the rules; spellings are common practice, no source. */
import { expect, test } from "vitest";
import { readTypedRunSize } from "@/lib/edge/forms/typed-run-size";

test.each([
  ["24", "units", 24n],
  [" 024 ", "units", 24n],
  ["24.0", "units", 24n],
  ["24 units", "units", 24n],
  ["24 pcs", "units", 24n],
  ["6 kg", "vessel", 6_000_000_000n],
  ["5000g", "vessel", 5_000_000_000n],
  ["1,5 kg", "vessel", 1_500_000_000n],
  // NIST SP 811: 1 lb is 453.59237 g
  ["1 lb", "vessel", 453_592_370n],
])("[QTY-2] [QTY-3] %s", (typed, kind, value) => {
  const outcome = readTypedRunSize(typed);
  const read = "value" in outcome ? outcome.value : null;
  expect(read && [read.kind, read.kind === "units" ? read.units : read.mass]).toEqual([kind, value]);
});

test.each([
  ["", /is needed; write units, as 24, or a weight, as 6 kg/],
  ["1,500", /write 1500 or 1\.5/],
  ["1 500", /write 1500/],
  ["2.5", /whole number/],
  ["2.5 units", /whole number/],
  ["0", /at least 1 unit/],
  ["0 g", /above zero/],
  ["-4", /below zero/],
  ["2 L", /is a volume/],
  ["4 barrels", /unknown unit/],
  ["9007199254740992", /out of range|too large/],
  ["99999999999 kg", /too large/],
  ["kg", /must be a number and a unit/],
  ["٢٤", /digits 0 to 9/],
  ["9".repeat(101), /too long/],
])("[QTY-3] [QTY-5] %s is refused in words", (typed, words) => {
  const outcome = readTypedRunSize(typed);
  expect("fault" in outcome ? outcome.fault : outcome).toMatch(words);
});
