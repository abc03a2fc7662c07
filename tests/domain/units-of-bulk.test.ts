/** Figures worked by hand from the rule; no published source. */
import { test as lawTest, fc } from "@fast-check/vitest";
import { expect, test } from "vitest";
import { exactFor, bulkOf } from "@/lib/domain/needs";
import { compare, whole } from "@/lib/domain/fraction";
import { quantity, type Units } from "@/lib/domain/quantity";
import { unitsOfBulk } from "@/lib/domain/units-of-bulk";
import { g, grams, percent, product } from "@/tests/helpers/notation";

const plain = product("p", "f", { fill: grams("200") });
const lossy = product("p", "f", {
  fill: grams("200"),
  overfill: grams("2"),
  heel: grams("12"),
  processLoss: percent("4"),
});

test("[NEED-1] what the vessel holds, backwards: loss and heel first, then whole units, rounded down", () => {
  expect(unitsOfBulk(plain, g("6000"))).toBe(30n);
  expect(unitsOfBulk(plain, g("5999.999999"))).toBe(29n);
  // (5062.5 × 0.96 − 12) / 202 = 24 exactly
  expect(unitsOfBulk(lossy, g("5062.5"))).toBe(24n);
  expect(unitsOfBulk(lossy, g("5062.499999"))).toBe(23n);
});

test("[NEED-1] a vessel that does not hold one unit, or only the heel, fills none", () => {
  expect(unitsOfBulk(plain, g("199.999999"))).toBe(0n);
  expect(unitsOfBulk(lossy, g("12"))).toBe(0n);
  expect(unitsOfBulk(lossy, g("0"))).toBe(0n);
});

lawTest.prop([fc.bigInt({ min: 1n, max: 10n ** 13n })])(
  "[NEED-1] so many units fit, and one more does not",
  (micrograms) => {
    const vessel = quantity<ReturnType<typeof g>>(micrograms);
    const units = unitsOfBulk(lossy, vessel);
    const asks = (count: bigint) => exactFor(bulkOf(lossy), quantity<Units>(count));
    if (units > 0n) expect(compare(asks(units), whole(vessel))).toBeLessThanOrEqual(0);
    expect(compare(asks(units + 1n), whole(vessel))).toBe(1);
  },
);
