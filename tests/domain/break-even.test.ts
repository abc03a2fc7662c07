import { expect, test } from "vitest";
import { breakEven } from "@/lib/domain/break-even";
import { type Fraction, ratio, whole } from "@/lib/domain/fraction";
import { money } from "@/tests/helpers/notation";

test.each([
  { fixed: "10", kept: whole(money("2.5")), is: 4n },
  { fixed: "10", kept: whole(money("2.499999")), is: 5n },
  { fixed: "0.000001", kept: whole(money("100")), is: 1n },
  // 1 ÷ (1/3 of a micro-unit): three units for each micro-unit
  { fixed: "0.000002", kept: ratio(1n, 3n), is: 6n },
  { fixed: "0", kept: whole(money("0")), is: 0n },
  { fixed: "0.01", kept: whole(money("0")), is: "never" },
  { fixed: "0.01", kept: ratio(-1n, 7n), is: "never" },
])("[PRICE-5] $fixed a month: $is", ({ fixed, kept, is }: { fixed: string; kept: Fraction; is: bigint | string }) => {
  const result = breakEven(money(fixed), kept);
  expect(result.kind === "units" ? result.units : result.kind).toBe(is);
});
