import { fc, test as property } from "@fast-check/vitest";
import { describe, expect, test } from "vitest";
import {
  allocateMoney,
  type CurrencyCode,
  decimalsOf,
  moneyText,
  moneyTextInFull,
  totalMoney,
} from "@/lib/domain/money";
import { money } from "@/tests/helpers/notation";

describe("[MONEY-2] decimals by ISO 4217", () => {
  test.each([
    ["GBP", 2],
    ["JPY", 0],
    ["ISK", 0],
    ["KWD", 3],
    ["CLF", 4],
    ["UYW", 4],
    ["MGA", 2],
    ["ZZZ", 2],
  ] as const)("%s has %i", (code, decimals) => {
    expect(decimalsOf(code as unknown as CurrencyCode)).toBe(decimals);
  });
});

test.each([
  { micro: "0.00005", decimals: 4, text: "0.0001" },
  { micro: "0.00015", decimals: 4, text: "0.0002" },
  { micro: "840.4", decimals: 0, text: "840" },
  { micro: "840.5", decimals: 0, text: "841" },
  { micro: "2.34565", decimals: 4, text: "2.3457" },
  { micro: "0", decimals: 2, text: "0.00" },
  { micro: "9007199254.740991", decimals: 6, text: "9007199254.740991" },
])("[MONEY-4] $micro to $decimals decimals is $text: half away from zero", ({ micro, decimals, text }) => {
  expect(moneyText({ over: money(micro), under: 1n }, decimals)).toBe(text);
});

test("[MONEY-4] below zero, half away from zero too", () => {
  expect(moneyText({ over: -money("2.345"), under: 1n }, 2)).toBe("-2.35");
  expect(moneyText({ over: -1n, under: 3n }, 2)).toBe("0.00");
});

test.each([
  ["8.4", "GBP", "8.40"],
  ["0.299", "GBP", "0.299"],
  ["840", "JPY", "840"],
  ["840.4", "JPY", "840.4"],
  ["2.3", "KWD", "2.300"],
  ["0.000001", "GBP", "0.000001"],
] as const)("[MONEY-1] %s %s is written in full as %s", (amount, currency, text) => {
  expect(moneyTextInFull(money(amount), currency as unknown as CurrencyCode)).toBe(text);
});

const amount = fc.bigInt({ min: 0n, max: 10n ** 15n }).map((value) => value as ReturnType<typeof money>);
property.prop([amount, fc.array(fc.bigInt({ min: 0n, max: 10n ** 9n }), { minLength: 1, maxLength: 12 })])(
  "[MONEY-5] shares add up to the whole exactly, none below zero",
  (whole, weights) => {
    fc.pre(weights.some((weight) => weight > 0n));
    const shares = allocateMoney(whole, weights);
    expect(totalMoney(shares)).toBe(whole);
    expect(shares.every((share) => share >= 0n)).toBe(true);
  },
);
