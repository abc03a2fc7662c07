import fc from "fast-check";
import { expect, test } from "vitest";
import { byCodePoint } from "@/lib/domain/code-point-order";

// From memory: the code points of a text are what its iterator gives, in order.
const codePoints = (text: string): readonly number[] => [...text].map((character) => character.codePointAt(0) ?? 0);

function byList(a: readonly number[], b: readonly number[]): number {
  const at = a.findIndex((point, index) => point !== b[index]);
  if (at < 0) return a.length - b.length;
  return at >= b.length ? 1 : (a[at] ?? 0) - (b[at] ?? 0);
}

test.each([
  ["a", "b", -1],
  ["b", "a", 1],
  ["a", "a", 0],
  ["", "a", -1],
  ["o10", "o2", -1],
  ["Z", "a", -1],
  ["z", "é", -1],
  ["～", "🌿", -1],
  ["🌿", "～", 1],
  ["\ud7ff", "🌿", -1],
  ["\ue000", "🌿", -1],
  ["a🌿", "a🌿b", -1],
])("[LOT-2] %j and %j: %i", (a, b, sign) => {
  expect(Math.sign(byCodePoint(a, b))).toBe(sign);
});

test("[LOT-2] any two texts as their lists of code points", () => {
  const text = fc.string({
    unit: fc.constantFrom("a", "b", "\ud7ff", "\ue000", "\uffff", "\u{10000}", "🌿", "\u{10ffff}"),
  });
  fc.assert(
    fc.property(text, text, (a, b) => {
      expect(Math.sign(byCodePoint(a, b))).toBe(Math.sign(byList(codePoints(a), codePoints(b))));
    }),
    { numRuns: 2000 },
  );
});
