/**
 * Figures by the maker's notation. How each place writes numbers is checked against the Unicode CLDR tables that the
 * JavaScript engine carries (`toLocaleString`), masses against NIST SP 811 (2008), Appendix B.8: 1 oz avoirdupois is
 * 28.349 523 g, 1 lb is 0.453 592 37 kg.
 */
import { fc, test as law } from "@fast-check/vitest";
import { afterEach, describe, expect, test } from "vitest";
import { compare, type Fraction, ratio } from "@/lib/domain/fraction";
import type { CurrencyCode } from "@/lib/domain/money";
import { DEFAULT_NOTATION, type Locale, LOCALES, type Notation } from "@/lib/domain/notation";
import { type DecimalText, decimalValue, UNITS } from "@/lib/domain/quantity";
import { countShown, dayShown, moneyShown, percentShown } from "@/lib/edge/figures";
import { readTypedNumber } from "@/lib/edge/forms/typed-number";
import { stockAsTyped } from "@/lib/edge/forms/typed-stock";
import { formFromRecord } from "@/lib/edge/forms/form-reading";
import { massShown } from "@/lib/edge/mass-shown";
import { decimalTyped, writeIn } from "@/lib/edge/notation";
import { weekTitle } from "@/lib/edge/week-title";
import { day, g, percent } from "@/tests/helpers/notation";

const inNotation = <T>(given: Partial<Notation>, shown: () => T): T => {
  writeIn({ ...DEFAULT_NOTATION, ...given });
  return shown();
};
afterEach(() => {
  writeIn(DEFAULT_NOTATION);
});

const plain = (text: string): string => text.replace(/[\u00a0\u202f]/g, " ");

describe("masses in ounces and pounds", () => {
  test.each<[string, string, string, string]>([
    // grams, what is there, what is lacking, to the nearest
    ["0", "0 oz", "0 oz", "0 oz"],
    ["1", "0.035 oz", "0.036 oz", "0.035 oz"],
    ["28.349523", "0.999 oz", "1.00 oz", "1.00 oz"],
    ["28.349524", "1.00 oz", "1.01 oz", "1.00 oz"],
    ["84", "2.96 oz", "2.97 oz", "2.96 oz"],
    ["453.59237", "1.00 lb", "1.00 lb", "1.00 lb"],
    ["453.592369", "15.99 oz", "1.00 lb", "1.00 lb"],
    ["2930", "6.45 lb", "6.46 lb", "6.46 lb"],
    ["4535.9237", "10.0 lb", "10.0 lb", "10.0 lb"],
    ["46000", "101.4 lb", "101.5 lb", "101.4 lb"],
  ])("[SHOW-1] [QTY-2] %s g", (grams, there, lacking, nearest) => {
    inNotation({ units: "US" }, () => {
      expect(plain(massShown(g(grams), "there"))).toBe(there);
      expect(plain(massShown(g(grams), "lacking"))).toBe(lacking);
      expect(plain(massShown(g(grams), "nearest"))).toBe(nearest);
    });
  });

  law.prop([fc.bigInt({ min: 1n, max: 10n ** 15n })])(
    "[SHOW-1] what is there never reads as more, and what is lacking never as less",
    (micrograms) => {
      const micro = (shown: string): bigint => {
        const [number = "", unit = ""] = plain(shown).replaceAll(",", "").split(" ");
        const [whole = "", decimals = ""] = number.split(".");
        const { size } = UNITS[unit as "oz" | "lb"];
        return (BigInt(whole + decimals) * size.over * 1_000n) / (size.under * 10n ** BigInt(decimals.length));
      };
      inNotation({ units: "US" }, () => {
        expect(micro(massShown(micrograms, "there"))).toBeLessThanOrEqual(micrograms * 1_000n);
        expect(micro(massShown(micrograms, "lacking")) + 1n).toBeGreaterThanOrEqual(micrograms * 1_000n);
      });
    },
  );
});

describe("numbers, money and days by place", () => {
  test.each<[Locale, string, string, string, string, string]>([
    ["en-GB", "1,234,567", "£1,234.50", "2.50 %", "Fri 9 Oct", "5 to 11 October"],
    ["en-US", "1,234,567", "£1,234.50", "2.50 %", "Fri Oct 9", "October 5 to 11"],
    ["en-IN", "12,34,567", "£1,234.50", "2.50 %", "Fri 9 Oct", "5 to 11 October"],
    ["de-DE", "1.234.567", "1.234,50 £", "2,50 %", "Fri 9 Oct", "5 to 11 October"],
    ["fr-FR", "1 234 567", "1 234,50 £", "2,50 %", "Fri 9 Oct", "5 to 11 October"],
  ])("[SHOW-1] %s", (locale, count, money, share, oneDay, week) => {
    const today = day("2026-10-06");
    inNotation({ locale }, () => {
      expect(plain(countShown(1_234_567n))).toBe(count);
      expect(plain(moneyShown(1_234_500_000n, "GBP" as CurrencyCode))).toBe(money);
      expect(plain(percentShown(percent("2.5")))).toBe(share);
      expect(plain(dayShown(day("2026-10-09"), today))).toBe(oneDay);
      expect(plain(weekTitle(day("2026-10-05"), today))).toBe(week);
    });
  });

  test.each(LOCALES)("[SHOW-1] %s as the engine's own tables write it", (locale) => {
    inNotation({ locale }, () => {
      for (const number of [0, 7, 999, 1_000, 12_345, 987_654_321])
        expect(countShown(number)).toBe(number.toLocaleString(locale));
      expect(decimalTyped("12.5")).toBe((12.5).toLocaleString(locale));
    });
  });
});

describe("a number typed in the maker's locale is understood or refused, never misread", () => {
  test.each<[Locale, string, string]>([
    ["en-GB", "1.500", "1.500"],
    ["en-GB", "1,500", "write 1500 or 1.5"],
    ["en-GB", "1,5", "1.5"],
    ["de-DE", "1,500", "1.500"],
    ["de-DE", "1.500", "write 1500 or 1,5"],
    ["de-DE", "1.5", "1.5"],
    ["de-DE", "0.125", "0.125"],
    ["de-DE", "1.500,25", "write 1500,25"],
    ["fr-FR", "1 500", "write 1500 or 1,5"],
  ])("[SHOW-1] [QTY-3] %s: %s", (locale, typed, read) => {
    inNotation({ locale }, () => {
      const told = readTypedNumber(typed);
      expect("fault" in told ? told.fault : told.value).toContain(read);
    });
  });

  law.prop([fc.constantFrom(...LOCALES), fc.bigInt({ min: 0n, max: 10n ** 12n }), fc.integer({ min: 0, max: 6 })])(
    "[SHOW-1] what a field shows of a plain decimal is read back as the same",
    (locale, digits, decimals) => {
      const text = digits.toString().padStart(decimals + 1, "0");
      const decimal = decimals === 0 ? text : `${text.slice(0, -decimals)}.${text.slice(-decimals)}`;
      const told = inNotation({ locale }, () => readTypedNumber(decimalTyped(decimal)));
      expect(told).toEqual({ value: decimal });
    },
  );

  law.prop([fc.constantFrom(...LOCALES), fc.bigInt({ min: 0n, max: 10n ** 12n })])(
    "[SHOW-1] a weight that the app proposes is read back as the same",
    (locale, micrograms) => {
      const told = inNotation({ locale }, () => readTypedNumber(stockAsTyped(micrograms, "mass")));
      expect("fault" in told ? told.fault : decimalValue(told.value as DecimalText)).toSatisfy(
        (read: unknown) => compare(read as Fraction, ratio(micrograms, 1_000_000n)) === 0,
      );
    },
  );

  test("[SHOW-1] a record's form shows its decimals as they are read", () => {
    const record = { name: "Oil 1.5", density: "0.920", safetyStock: "1.500 kg" };
    const values = inNotation({ locale: "de-DE" }, () => formFromRecord("materials", record));
    expect(values).toMatchObject({ name: "Oil 1.5", density: "0,920", safetyStock: "1,500 kg" });
  });
});

test("an exact fraction is rounded once in either system", () => {
  const third = ratio(UNITS.oz.size.over * 2n, UNITS.oz.size.under * 3n);
  expect(plain(inNotation({ units: "US" }, () => massShown(third, "nearest")))).toBe("0.667 oz");
});
