/** Where the diamond of a plumb hangs, and what is said beside it. @rule BENCH-3 */
import { expect, test } from "vitest";
import { judged } from "@/lib/domain/bench/weights";
import { type Micrograms, quantity } from "@/lib/domain/quantity";
import { offInWords, offShown, toleranceShown } from "@/lib/edge/bench-weights";
import { offWords } from "@/lib/edge/forms/bench-refusals";
import { PLUMB, plumbAt } from "@/lib/edge/plumb";
import { g } from "../helpers/notation";

const { bracket, end } = PLUMB;

test.each([
  ["nothing off hangs in the middle", "0", "1.5", 0],
  ["a fifth of the tolerance over", "0.3", "1.5", bracket / 5],
  ["the same under hangs left", "-0.3", "1.5", -bracket / 5],
  ["the whole tolerance is at the bracket", "1.5", "1.5", bracket],
  ["a hair more is clear of it", "1.500001", "1.5", bracket + 7],
  ["and so it is on the left", "-1.500001", "1.5", -bracket - 7],
  ["twice the tolerance", "3", "1.5", 50],
  ["far over stays on the line", "10000", "1.5", end],
  ["far under stays on the line", "-10000", "1.5", -end],
  ["no tolerance and exact", "0", "0", 0],
  ["no tolerance and a hair over", "0.000001", "0", end],
])("[BENCH-3] %s", (_case, off, tolerance, place) => {
  expect(plumbAt(signed(off), g(tolerance))).toBeCloseTo(place, 2);
});

test("[BENCH-3] the words beside it name the side, and the tolerance where it is left", () => {
  expect(offInWords(-300_000n, 1_500_000n, 1)).toBe("0.3\u00a0g under, within tolerance");
  expect(offInWords(110_000_000n, 58_800_000n, 1)).toBe("110.0\u00a0g over; ±58.8\u00a0g is allowed");
  expect(offInWords(0n, 0n, 1)).toBe("exactly the target");
  expect(offShown(2_500_000n, 1)).toBe("+2.5\u00a0g");
  expect(offShown(-40_000n, 1), "more decimals than the balance has").toBe("−0.04\u00a0g");
  expect(toleranceShown(5_880_000_000n, 58_800_000n, 1)).toBe("±58.8\u00a0g: 5,821.2 to 5,938.8\u00a0g");
  expect(toleranceShown(1_000_000n, 1_500_000n, 1), "never below nothing").toBe("±1.5\u00a0g: 0.0 to 2.5\u00a0g");
});

test("[BENCH-3] what is asked where it is outside says the same words, with the target", () => {
  const line = {
    key: "1",
    part: "f",
    of: { kind: "material", id: "oil" },
    called: "Oil",
    phase: null,
    target: quantity<Micrograms>(g("1054.2")),
    tolerance: quantity<Micrograms>(g("10.6")),
  } as const;
  const asked = (net: string): string => offWords(line, judged(line, quantity(0n), quantity(g(net))));
  expect(asked("1070")).toBe(
    "is needed: 15.8\u00a0g over; ±10.6\u00a0g is allowed at a target of 1,054.2\u00a0g. Weigh again, or say why it is kept",
  );
  expect(asked("105.42")).toContain(" 105.42\u00a0g is a tenth of it: is the point in its place? Weigh again");
});

const signed = (grams: string): bigint => (grams.startsWith("-") ? -g(grams.slice(1)) : g(grams));
