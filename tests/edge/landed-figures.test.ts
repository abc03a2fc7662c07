/** What a kilo or a piece costs, as it is shown and drawn. */
import { expect, test } from "vitest";
import { ratio } from "@/lib/domain/fraction";
import { compare, whole } from "@/lib/domain/fraction";
import type { CurrencyCode } from "@/lib/domain/money";
import { largeUnitShown, priceTicks } from "@/lib/edge/landed-figures";

const NO_BREAK = "\u00a0";
const GBP = "GBP" as CurrencyCode;

test.each([
  ["8.42", GBP, ["£0.00", "£5.00", "£10.00"]],
  ["10", GBP, ["£0.00", "£5.00", "£10.00"]],
  ["10.01", GBP, ["£0.00", "£5.00", "£10.00", "£15.00"]],
  ["0.0123", GBP, ["£0.00", "£0.005", "£0.01", "£0.015"]],
  ["0.000001", GBP, ["£0.00", "£0.000001"]],
  ["1234", "JPY", ["¥0", "¥500", "¥1,000", "¥1,500"]],
  ["3.2", "KWD", ["KWD 0.000", "KWD 1.000", "KWD 2.000", "KWD 3.000", "KWD 4.000"]],
])(
  "[MONEY-2] [MONEY-4] lines up to %s, with the decimals of %s and as many more as they need",
  (highest, code, shown) => {
    const [units = "0", decimals = ""] = highest.split(".");
    const micros = BigInt(units + decimals.padEnd(6, "0"));
    const ticks = priceTicks(whole(micros), code as CurrencyCode);
    expect(ticks.map((tick) => tick.shown.replaceAll(NO_BREAK, " "))).toEqual(shown);
    // The highest price lies within the drawing, and not far below its top line.
    const [under, top] = [ticks.at(-2)?.micros ?? 0n, ticks.at(-1)?.micros ?? 0n];
    expect([top >= micros, under < micros]).toEqual([true, true]);
  },
);

test("a price that is no whole number of millionths lies within the drawing too", () => {
  const price = ratio(10_000_001n, 2n);
  const top = priceTicks(price, GBP).at(-1)?.micros ?? 0n;
  expect(compare(price, whole(top)) <= 0).toBe(true);
});

test("[ORDER-6] a kilo with the currency's decimals, a piece with two more", () => {
  expect(largeUnitShown(ratio(8_424_000n, 1_000_000_000n), "mass", GBP)).toBe(`£8.42 a${NO_BREAK}kg`);
  expect(largeUnitShown(ratio(8_424_500n, 1_000_000_000n), "mass", "JPY" as CurrencyCode)).toBe(`¥8 a${NO_BREAK}kg`);
  expect(largeUnitShown(ratio(12_345n, 1n), "count", GBP)).toBe("£0.0123 each");
});
