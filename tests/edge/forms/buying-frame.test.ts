import { expect, test } from "vitest";
import { isoDate } from "@/lib/domain/calendar";
import type { CurrencyCode } from "@/lib/domain/money";
import { OPEN_FRAME } from "@/lib/domain/buying/buying-frame";
import { buyingAddress, frameFields, readFrame } from "@/lib/edge/forms/buying-frame";

const by = {
  suppliers: [{ id: "a" }, { id: "b & c" }],
  offers: [
    { id: "o1", material: "m" },
    { id: "o2", material: "m" },
    { id: "o 3", material: "n" },
  ],
  settings: { horizonDays: 56, currency: "GBP" as CurrencyCode },
};
const reading = (parameters: Parameters<typeof readFrame>[0]) => readFrame(parameters, by);

test.each([
  ["as set", { kind: "workshop" }],
  ["week", { kind: "days", days: 7 }],
  ["four weeks", { kind: "days", days: 28 }],
  ["horizon", { kind: "horizon" }],
  ["anything else", { kind: "workshop" }],
])("[BUY-10] the cover %s is read", (cover, days) => {
  expect(reading({ cover }).frame.cover).toEqual(days);
});

test.each([
  ["1", { kind: "days", days: 1 }, null],
  [" 56 ", { kind: "days", days: 56 }, null],
  ["57", { kind: "workshop" }, /^is more than the 56.days that the plan looks ahead/],
  ["0", { kind: "workshop" }, /^must be at least one day/],
  ["2.5", { kind: "workshop" }, /^must be a whole number/],
  ["", { kind: "workshop" }, /^nothing is written here/],
])("[BUY-10] %j days to cover are read or told what is wrong", (days, cover, fault) => {
  const { frame, faults, asked } = reading({ cover: "days", days });
  expect([frame.cover, asked.days]).toEqual([cover, days]);
  if (fault === null) expect(faults.days).toBeNull();
  else expect(faults.days).toMatch(fault);
});

test("[BUY-10] who is left out and whether it must be in time; who is not there is not asked about", () => {
  const { frame } = reading({ out: ["b & c", "nobody", "a", "a"], arrival: "in time" });
  expect(frame).toEqual({ ...OPEN_FRAME, leftOut: new Set(["a", "b & c"]), arrival: "in time" });
  expect(reading({ out: "a", arrival: "soon" }).frame).toEqual({ ...OPEN_FRAME, leftOut: new Set(["a"]) });
});

test.each([
  ["2026-12-01", "2026-12-01", null],
  [" 1/12/2026 ", null, /./],
  ["25/12/2026", "2026-12-25", null],
  ["", null, null],
  ["   ", null, null],
  ["soon", null, /./],
  ["2026-02-30", null, /^there is no such day as "2026-02-30"$/],
  ["2026-12", null, /./],
])("[BUY-18] the day %j to order by is read or told what is wrong", (by, day, fault) => {
  const { frame, faults, asked } = reading({ by });
  expect([frame.orderBy && isoDate(frame.orderBy), asked.by]).toEqual([day, by]);
  if (fault === null) expect(faults.by).toBeNull();
  else expect(faults.by).toMatch(fault);
});

test.each([
  ["40", 40_000_000n, null],
  ["£42.50", 42_500_000n, null],
  ["0", 0n, null],
  ["0.000001", 1n, null],
  ["", null, null],
  ["0.0000001", null, /^has more than six decimals/],
  ["-1", null, /./],
  ["€7", null, /is not the workshop's currency/],
  ["1,500", null, /can be read two ways/],
  ["9007199254.740991", 9_007_199_254_740_991n, null],
  ["9007199254.740992", null, /^is more than any figure here can be$/],
  ["9".repeat(400), null, /./],
])("[BUY-11] the cap %j is read or told what is wrong", (cap, amount, fault) => {
  const { frame, faults } = reading({ cap });
  expect(frame.cap).toBe(amount);
  if (fault === null) expect(faults.cap).toBeNull();
  else expect(faults.cap).toMatch(fault);
});

test.each([
  ["50", 500_000n, null],
  ["12.5 %", 125_000n, null],
  ["0", 0n, null],
  ["100", 1_000_000n, null],
  ["0.0001", 1n, null],
  ["", 0n, null],
  ["0.00001", 0n, /^has more than four decimals$/],
  ["100.0001", 0n, /^must be from 0 to 100 %/],
  ["150", 0n, /leftovers are worth no more than they cost$/],
  ["-5", 0n, /./],
  ["half", 0n, /./],
])("[BUY-17] what leftovers count for, %j, is read or told what is wrong", (left, share, fault) => {
  const { frame, faults } = reading({ left });
  expect(frame.leftOvers).toBe(share);
  if (fault === null) expect(faults.left).toBeNull();
  else expect(faults.left).toMatch(fault);
});

test("[BUY-10] what is not understood counts as not typed, stays in its field, and is cut where it is no text a person types", () => {
  const { frame, asked } = reading({ cap: "lots", by: ["soon", "2026-12-01"], left: "x".repeat(500) });
  expect([frame.cap, frame.orderBy, frame.leftOvers]).toEqual([null, null, 0n]);
  expect([asked.cap, asked.by, asked.left.length]).toEqual(["lots", "soon", 200]);
});

test("[BUY-10] one offer alone for each material, and who is left out is not held to", () => {
  const { frame } = reading({ pin: ["o2", "o1", "o 3", "gone"], only: ["a", "b & c"], out: "a" });
  expect([...frame.chosen]).toEqual(["o1", "o 3"]);
  expect([...frame.heldTo]).toEqual(["b & c"]);
});

test("an address carries the frame and reads as it again", () => {
  const { asked } = reading({ cover: "days", days: "twelve & more", out: ["b & c"], arrival: "in time", keep: "yes" });
  const address = new URL(buyingAddress(asked, { why: "o=1" }, "why-o"), "http://localhost");
  const query = address.searchParams;
  const again = reading(Object.fromEntries([...query.keys()].map((name) => [name, query.getAll(name)])));
  expect([again.asked, query.get("why"), address.hash]).toEqual([asked, "o=1", "#why-o"]);
  expect(frameFields(reading({}).asked)).toEqual([]);
});
