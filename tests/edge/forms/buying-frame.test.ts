import { expect, test } from "vitest";
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

test("an address carries the frame and reads as it again", () => {
  const { asked } = reading({ cover: "days", days: "twelve & more", out: ["b & c"], arrival: "in time", keep: "yes" });
  const address = new URL(buyingAddress(asked, { why: "o=1" }, "why-o"), "http://localhost");
  const query = address.searchParams;
  const again = reading(Object.fromEntries([...query.keys()].map((name) => [name, query.getAll(name)])));
  expect([again.asked, query.get("why"), address.hash]).toEqual([asked, "o=1", "#why-o"]);
  expect(frameFields(reading({}).asked)).toEqual([]);
});
