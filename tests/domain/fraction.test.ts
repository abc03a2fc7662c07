import { fc, test as property } from "@fast-check/vitest";
import { describe, expect, test } from "vitest";
import {
  compare,
  dividedBy,
  type Fraction,
  minus,
  plus,
  ratio,
  roundedDown,
  roundedHalfAway,
  roundedHalfEven,
  roundedUp,
  times,
  total,
} from "@/lib/domain/fraction";

const of = (text: string): Fraction => {
  const [over = "0", under = "1"] = text.split("/");
  return ratio(BigInt(over), BigInt(under));
};

test.each([
  { value: "5/2", down: 2n, up: 3n, even: 2n, away: 3n },
  { value: "7/2", down: 3n, up: 4n, even: 4n, away: 4n },
  { value: "-5/2", down: -3n, up: -2n, even: -2n, away: -3n },
  { value: "-7/2", down: -4n, up: -3n, even: -4n, away: -4n },
  { value: "1/3", down: 0n, up: 1n, even: 0n, away: 0n },
  { value: "2/3", down: 0n, up: 1n, even: 1n, away: 1n },
  { value: "-2/3", down: -1n, up: 0n, even: -1n, away: -1n },
  { value: "4/-2", down: -2n, up: -2n, even: -2n, away: -2n },
  { value: "0/7", down: 0n, up: 0n, even: 0n, away: 0n },
])("[QTY-4] [MONEY-4] $value rounds down to $down, up to $up, half even to $even, half away to $away", (given) => {
  const value = of(given.value);
  expect(roundedDown(value)).toBe(given.down);
  expect(roundedUp(value)).toBe(given.up);
  expect(roundedHalfEven(value)).toBe(given.even);
  expect(roundedHalfAway(value)).toBe(given.away);
});

test("a fraction over zero is a defect", () => {
  expect(() => ratio(1n, 0n)).toThrow(RangeError);
  expect(() => dividedBy(of("1"), of("0/5"))).toThrow(RangeError);
});

const fraction = fc
  .tuple(fc.bigInt({ min: -(10n ** 30n), max: 10n ** 30n }), fc.bigInt({ min: 1n, max: 10n ** 20n }))
  .map(([over, under]) => ({ over, under }));

describe("[MONEY-3] fractions keep the laws of arithmetic", () => {
  property.prop([fraction, fraction, fraction])("sums in any order are equal", (a, b, c) => {
    expect(compare(plus(plus(a, b), c), plus(a, plus(c, b)))).toBe(0);
    expect(compare(total([a, b, c]), plus(a, plus(b, c)))).toBe(0);
  });
  property.prop([fraction, fraction])("what is added can be taken away, what is multiplied divided", (a, b) => {
    expect(compare(minus(plus(a, b), b), a)).toBe(0);
    if (b.over !== 0n) expect(compare(dividedBy(times(a, b), b), a)).toBe(0);
  });
  property.prop([fraction])("rounding stays within a unit", (a) => {
    for (const rounded of [roundedDown(a), roundedUp(a), roundedHalfEven(a), roundedHalfAway(a)]) {
      const gap = minus(a, { over: rounded, under: 1n });
      expect(gap.over < gap.under && gap.over > -gap.under).toBe(true);
    }
  });
});
