/** Currencies and rounding against ISO 4217, the decimal arithmetic standards and the largest-remainder example. */
import { describe, expect, test } from "vitest";
import { type Fraction, ratio, roundedHalfAway, roundedHalfEven } from "@/lib/domain/fraction";
import { allocateMoney, type CurrencyCode, decimalsOf, moneyText, moneyTextInFull } from "@/lib/domain/money";
import { money } from "@/tests/helpers/notation";

const code = (text: string) => text as CurrencyCode;

describe("[MONEY-2] ISO 4217 minor units", () => {
  test.each([
    ["read in a copy", 0, "JPY KRW ISK"],
    ["read in a copy", 2, "EUR USD GBP CHF"],
    ["read in a copy", 3, "BHD KWD TND"],
    ["read in a copy; an older copy gives it 0", 4, "CLF"],
    ["list one, from memory; older copies read agree", 0, "BIF CLP DJF GNF KMF PYG RWF UYI VND VUV XAF XOF XPF"],
    ["list one, from memory; older copies still give it 2", 0, "UGX"],
    ["list one, from memory; older copies read agree", 3, "IQD JOD LYD OMR"],
    ["list one, from memory", 4, "UYW"],
    [
      "an older copy of list one, read; each of these still has two",
      2,
      "AED AFN ALL AMD AOA ARS AUD AWG AZN BAM BBD BDT BMD BND BOB BRL BSD BTN BWP BZD CAD CDF CNY COP CRC CUP CVE CZK DKK DOP DZD EGP ETB FJD FKP GEL GHS GIP GMD GTQ GYD HKD HNL HTG HUF IDR ILS INR IRR JMD KES KGS KHR KPW KYD KZT LAK LBP LKR LRD LSL MAD MDL MGA MKD MMK MNT MOP MUR MVR MWK MXN MYR MZN NAD NGN NIO NOK NPR NZD PAB PEN PGK PHP PKR PLN QAR RON RSD RUB SAR SBD SCR SDG SEK SGD SHP SOS SRD SSP SVC SYP SZL THB TJS TMT TOP TRY TTD TWD TZS UAH UYU UZS WST XCD YER ZAR",
    ],
    ["no such code: two, the project's own rule", 2, "ZZZ"],
  ] as const)("%s: %i decimals", (_, decimals, codes) => {
    for (const each of codes.split(" ")) expect([each, decimalsOf(code(each))]).toEqual([each, decimals]);
  });

  test.each([
    ["JPY", "1234", "1234"],
    ["GBP", "8.4", "8.40"],
    ["KWD", "2.5", "2.500"],
    ["UYW", "2.34565", "2.34565"],
  ])("%s %s is written %s", (currency, amount, written) => {
    expect(moneyTextInFull(money(amount), code(currency))).toBe(written);
  });
});

describe("rounding to two places (IEEE 754 and General Decimal Arithmetic, recomputed with a decimal library; constructed values)", () => {
  const thousandths = (value: bigint): Fraction => ratio(value, 10n);
  test.each([
    { value: "0.125", inThousandths: 125n, even: 12n, away: 13n },
    { value: "0.135", inThousandths: 135n, even: 14n, away: 14n },
    { value: "1.005", inThousandths: 1005n, even: 100n, away: 101n },
    { value: "2.675", inThousandths: 2675n, even: 268n, away: 268n },
    { value: "-0.125", inThousandths: -125n, even: -12n, away: -13n },
  ])("[QTY-4, MONEY-4] $value: half to even $even, half away from zero $away hundredths", (row) => {
    expect(roundedHalfEven(thousandths(row.inThousandths))).toBe(row.even);
    expect(roundedHalfAway(thousandths(row.inThousandths))).toBe(row.away);
  });

  test.each([
    ["1.005", "1.01"],
    ["2.675", "2.68"],
    ["0.125", "0.13"],
    ["-0.125", "-0.13"],
  ])("[MONEY-4] %s is printed %s, where binary floating point would give 1.00 and 2.67", (value, printed) => {
    const size = money(value.replace("-", ""));
    expect(moneyText(ratio(value.startsWith("-") ? -size : size, 1n), 2)).toBe(printed);
  });
});

describe("[MONEY-5] shares", () => {
  // Hamilton's largest-remainder example: 100,000 votes, 10 seats (from memory; recomputed).
  const votes = [47_000n, 16_000n, 15_900n, 12_000n, 6_000n, 3_100n];

  test("of 10 micro-units by 47:16:15.9:12:6:3.1 add up and are each within one unit of the exact share", () => {
    const shares = allocateMoney(money("0.000010"), votes);
    expect(shares.reduce<bigint>((sum, share) => sum + share, 0n)).toBe(10n);
    for (const [index, share] of shares.entries()) {
      const exact = ratio((votes[index] ?? 0n) * 10n, 100_000n);
      const off = ratio(share * exact.under - exact.over, exact.under);
      expect(off.over > -off.under && off.over < off.under, `share ${String(index)}`).toBe(true);
    }
  });

  // The rule asks for shares that add up. The library hands what is left over to the first shares; largest
  // remainder, which the bench will need for weighing, would give 5, 2, 1, 1, 1, 0.
  test("go to the first shares, not to the largest remainders", () => {
    expect(allocateMoney(money("0.000010"), votes)).toEqual([5n, 2n, 2n, 1n, 0n, 0n]);
  });
});
