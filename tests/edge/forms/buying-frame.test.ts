import { expect, test } from "vitest";
import { buyingAddress, frameFields, readFrame } from "@/lib/edge/forms/buying-frame";

const by = { suppliers: [{ id: "a" }, { id: "b & c" }], settings: { horizonDays: 56 } };
const reading = (parameters: Parameters<typeof readFrame>[0]) => readFrame(parameters, by);

test.each([
  ["as set", "as set"],
  ["week", 7],
  ["four weeks", 28],
  ["horizon", null],
  ["anything else", "as set"],
])("[BUY-15] the cover %s comes to %s", (cover, days) => {
  expect(reading({ cover }).frame.cover).toBe(days);
});

test.each([
  ["1", 1, null],
  [" 56 ", 56, null],
  ["57", "as set", /^is more than the 56.days that the plan looks ahead/],
  ["0", "as set", /^must be at least one day/],
  ["2.5", "as set", /^must be a whole number/],
  ["", "as set", /^nothing is written here/],
])("[BUY-15] %j days to cover come to %s", (days, cover, fault) => {
  const { frame, daysFault, asked } = reading({ cover: "days", days });
  expect([frame.cover, asked.days]).toEqual([cover, days]);
  if (fault === null) expect(daysFault).toBeNull();
  else expect(daysFault).toMatch(fault);
});

test("[BUY-16] [BUY-17] who is left out and whether it must be in time; who is not there is not asked about", () => {
  const { frame } = reading({ out: ["b & c", "nobody", "a", "a"], intime: "yes" });
  expect(frame).toEqual({ cover: "as set", leftOut: ["a", "b & c"], mustBeInTime: true });
  expect(reading({ out: "a", intime: "no" }).frame).toEqual({ cover: "as set", leftOut: ["a"], mustBeInTime: false });
});

test("an address carries the frame and reads as it again", () => {
  const { asked } = reading({ cover: "days", days: "twelve & more", out: ["b & c"], intime: "yes" });
  const address = new URL(buyingAddress(asked, { why: "o=1" }, "why-o"), "http://localhost");
  const query = address.searchParams;
  const again = reading(Object.fromEntries([...query.keys()].map((name) => [name, query.getAll(name)])));
  expect([again.asked, query.get("why"), address.hash]).toEqual([asked, "o=1", "#why-o"]);
  expect(frameFields(reading({}).asked)).toEqual([]);
});
