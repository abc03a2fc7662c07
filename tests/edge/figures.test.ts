import { describe, expect, test } from "vitest";
import { type Day, dayOf } from "@/lib/domain/calendar";
import { ratio } from "@/lib/domain/fraction";
import type { CurrencyCode } from "@/lib/domain/money";
import { type DecimalText, type Density, type PartsPerMillion, quantity, type Unit } from "@/lib/domain/quantity";
import * as figures from "@/lib/edge/figures";
import { massShown } from "@/lib/edge/mass-shown";

const g = (grams: string): bigint => {
  const [whole = "0", decimals = ""] = grams.split(".");
  return BigInt(whole + decimals.padEnd(6, "0"));
};
/** No-break spaces as plain ones: the tables below are read by people. */
const plain = (text: string): string => text.replaceAll("\u00a0", " ");
const pounds = "GBP" as CurrencyCode;
const day = (date: string): Day => {
  const found = dayOf(date);
  if (found === null) throw new Error(`no such day ${date}`);
  return found;
};

describe("masses on the screens", () => {
  test.each([
    // under 10 g one decimal
    { grams: "0", there: "0 g", lacking: "0 g", nearest: "0 g" },
    { grams: "9.44", there: "9.4 g", lacking: "9.5 g", nearest: "9.4 g" },
    { grams: "9.45", there: "9.4 g", lacking: "9.5 g", nearest: "9.5 g" },
    { grams: "9.99", there: "9.9 g", lacking: "10 g", nearest: "10 g" },
    { grams: "6", there: "6.0 g", lacking: "6.0 g", nearest: "6.0 g" },
    // to 999 g whole
    { grams: "84.2", there: "84 g", lacking: "85 g", nearest: "84 g" },
    { grams: "84", there: "84 g", lacking: "84 g", nearest: "84 g" },
    { grams: "999.5", there: "999 g", lacking: "1.00 kg", nearest: "1.00 kg" },
    // to 9.99 kg two decimals
    { grams: "1000", there: "1.00 kg", lacking: "1.00 kg", nearest: "1.00 kg" },
    { grams: "2931.000001", there: "2.93 kg", lacking: "2.94 kg", nearest: "2.93 kg" },
    { grams: "9995", there: "9.99 kg", lacking: "10.0 kg", nearest: "10.0 kg" },
    // from 10 kg one
    { grams: "46049", there: "46.0 kg", lacking: "46.1 kg", nearest: "46.0 kg" },
    { grams: "1234567", there: "1,234.5 kg", lacking: "1,234.6 kg", nearest: "1,234.6 kg" },
    // nothing that is there reads 0, and nothing reads more than is there
    { grams: "0.04", there: "0.04 g", lacking: "0.1 g", nearest: "0.04 g" },
    { grams: "0.000001", there: "0.000001 g", lacking: "0.1 g", nearest: "0.000001 g" },
    { grams: "0.09", there: "0.09 g", lacking: "0.1 g", nearest: "0.1 g" },
  ])("$grams g: there $there, lacking $lacking, nearest $nearest", ({ grams, there, lacking, nearest }) => {
    const mass = g(grams);
    expect(plain(massShown(mass, "there"))).toBe(there);
    expect(plain(massShown(mass, "lacking"))).toBe(lacking);
    expect(plain(massShown(mass, "nearest"))).toBe(nearest);
  });

  test("an exact fraction is rounded once, from the fraction itself", () => {
    // 84.5 g less a third of a microgram is nearer to 84 g, although its nearest microgram is 84.5 g
    expect(plain(massShown(ratio(3n * g("84.5") - 1n, 3n), "nearest"))).toBe("84 g");
    expect(plain(massShown(ratio(3n * g("84") + 1n, 3n), "lacking"))).toBe("85 g");
  });

  test("below zero the sign is a minus, and what is there still rounds down", () => {
    expect(plain(massShown(-g("84.2"), "there"))).toBe("−85 g");
    expect(plain(massShown(-g("84.2"), "lacking"))).toBe("−84 g");
  });

  test("the unit is joined by a no-break space", () => {
    expect(massShown(g("84"), "there")).toBe("84\u00a0g");
  });

  test.each([
    { grams: "163.8", decimals: 2, shown: "163.80 g" },
    { grams: "0.0004", decimals: 2, shown: "0.0004 g" },
    { grams: "1500", decimals: 2, shown: "1,500.00 g" },
  ])("in grams with $decimals decimals: $shown", ({ grams, decimals, shown }) => {
    expect(plain(figures.gramsShown(g(grams), decimals))).toBe(shown);
  });

  test.each([
    { grams: "84.2", shown: "84.2 g" },
    { grams: "1200", shown: "1,200 g" },
    { grams: "84.123456", shown: "84.123456 g" },
  ])("in full: $shown", ({ grams, shown }) => {
    expect(plain(figures.massInFull(g(grams)))).toBe(shown);
  });
});

describe("pieces and counts", () => {
  test.each([
    { pieces: ratio(120n, 1n), shown: "120 pieces" },
    { pieces: ratio(1n, 1n), shown: "1 piece" },
    { pieces: ratio(0n, 1n), shown: "0 pieces" },
    { pieces: ratio(1250n, 1n), shown: "1,250 pieces" },
    { pieces: ratio(100n, 98n), shown: "1.0204 pieces" },
    { pieces: ratio(1n, 6n), shown: "0.1667 pieces" },
  ])("$shown", ({ pieces, shown }) => {
    expect(plain(figures.piecesShown(pieces, "nearest"))).toBe(shown);
  });

  test("a material is shown in its own measure", () => {
    expect(plain(figures.stockShown(120n, "count", "there"))).toBe("120 pieces");
    expect(plain(figures.stockShown(g("120"), "mass", "there"))).toBe("120 g");
  });

  test.each([
    { number: "1", unit: "L", shown: "1 L" },
    { number: "2.50", unit: "kg", shown: "2.50 kg" },
    { number: "8", unit: "floz-us", shown: "8 US fl oz" },
    { number: "1000", unit: "each", shown: "1,000 pieces" },
    { number: "0.12345678901234567890123456789", unit: "g", shown: "0.12345678901234567890123456789 g" },
  ])("as typed: $shown", ({ number, unit, shown }) => {
    expect(plain(figures.amountShown({ number: number as DecimalText, unit: unit as Unit }))).toBe(shown);
  });
});

describe("money", () => {
  test.each([
    { rule: "MONEY-2", currency: "GBP", exact: ratio(3_842_500n, 1n), extra: 0, shown: "£3.84" },
    { rule: "MONEY-2", currency: "GBP", exact: ratio(3_842_500n, 1n), extra: 2, shown: "£3.8425" },
    { rule: "MONEY-4", currency: "GBP", exact: ratio(5_000n, 1n), extra: 0, shown: "£0.01" },
    { rule: "MONEY-4", currency: "GBP", exact: ratio(-1_255_000n, 1n), extra: 0, shown: "−£1.26" },
    { rule: "MONEY-4", currency: "GBP", exact: ratio(3n * 1_255_000n - 1n, 3n), extra: 0, shown: "£1.25" },
    { rule: "MONEY-2", currency: "JPY", exact: ratio(1_234_500_000n, 1n), extra: 0, shown: "¥1,235" },
    { rule: "MONEY-2", currency: "JPY", exact: ratio(12_345_600n, 1n), extra: 2, shown: "¥12.35" },
    { rule: "MONEY-2", currency: "KWD", exact: ratio(1_234_567n, 1n), extra: 0, shown: "KWD 1.235" },
    { rule: "MONEY-2", currency: "XQZ", exact: ratio(1_234_567n, 1n), extra: 0, shown: "XQZ 1.23" },
    { rule: "MONEY-4", currency: "GBP", exact: ratio(0n, 1n), extra: 0, shown: "£0.00" },
    {
      rule: "MONEY-4",
      currency: "GBP",
      exact: ratio(10n ** 30n + 10_000n, 1n),
      extra: 0,
      shown: "£1,000,000,000,000,000,000,000,000.01",
    },
    { rule: "MONEY-4", currency: "GBP", exact: ratio(1_500n, 1n), extra: 0, shown: "£0.002" },
  ])("[$rule] $shown, rounded once, half away from zero", ({ currency, exact, extra, shown }) => {
    expect(plain(figures.moneyShown(exact, currency as CurrencyCode, extra))).toBe(shown);
  });

  test.each([
    { micros: 38_000_000n, shown: "£38.00" },
    { micros: 76_500n, shown: "£0.0765" },
    { micros: 1n, shown: "£0.000001" },
    { micros: 0n, shown: "£0.00" },
  ])("a price as typed: $shown", ({ micros, shown }) => {
    expect(figures.priceShown(micros, pounds)).toBe(shown);
  });

  test.each([
    // £38.00 for 920 g
    { each: ratio(38_000_000n, g("920")), measure: "mass", shown: "£0.0413" },
    // £11.50 for 25 kg: three digits that say something
    { each: ratio(11_500_000n, g("25000")), measure: "mass", shown: "£0.000460" },
    { each: ratio(76_000_000n, 100n), measure: "count", shown: "£0.7600" },
    { each: ratio(24_000_000n, 10_000n), measure: "count", shown: "£0.00240" },
    { each: ratio(0n, 1n), measure: "mass", shown: "£0.0000" },
  ] as const)("[MONEY-3] one gram or piece: $shown", ({ each, measure, shown }) => {
    expect(figures.pricePerGramShown(each, measure, pounds)).toBe(shown);
  });

  test("the currency's sign", () => {
    expect(figures.currencySign(pounds)).toBe("£");
    expect(figures.currencySign("KWD" as CurrencyCode)).toBe("KWD");
  });
});

describe("percents, densities and minutes", () => {
  test.each([
    { ppm: 819_000n, shown: "81.90 %" },
    { ppm: 30_000n, shown: "3.00 %" },
    { ppm: 1_234n, shown: "0.1234 %" },
    { ppm: 12_340n, shown: "1.234 %" },
    { ppm: 1_000_000n, shown: "100.00 %" },
  ])("in a formula: $shown", ({ ppm, shown }) => {
    expect(plain(figures.percentShown(ppm as PartsPerMillion))).toBe(shown);
  });

  test("a premix's share of a share keeps four decimals", () => {
    expect(plain(figures.percentShown(ratio(1_000_000n, 3n)))).toBe("33.3333 %");
  });

  test.each([
    { ppm: 200_000n, shown: "20 %" },
    { ppm: 19_000n, shown: "1.9 %" },
  ])("a rate as typed: $shown", ({ ppm, shown }) => {
    expect(plain(figures.rateShown(ppm as PartsPerMillion))).toBe(shown);
  });

  test.each([
    { share: ratio(488n, 1_000n), shown: "48.8 %" },
    { share: ratio(-1n, 8n), shown: "−12.5 %" },
    { share: ratio(1n, 3n), shown: "33.3 %" },
  ])("a share: $shown", ({ share, shown }) => {
    expect(plain(figures.shareShown(share))).toBe(shown);
  });

  test.each([
    { density: 920_000n, shown: "0.920 g/mL" },
    { density: 1_261_300n, shown: "1.2613 g/mL" },
  ])("$shown", ({ density, shown }) => {
    expect(plain(figures.densityShown(quantity<Density>(density)))).toBe(shown);
  });

  test.each([
    { minutes: ratio(165n, 1n), shown: "2 h 45 min" },
    { minutes: ratio(45n, 1n), shown: "45 min" },
    { minutes: ratio(120n, 1n), shown: "2 h" },
    { minutes: ratio(27n, 8n), shown: "3.38 min" },
    { minutes: ratio(0n, 1n), shown: "0 min" },
    { minutes: "1.5" as DecimalText, shown: "1.5 min" },
  ])("$shown", ({ minutes, shown }) => {
    expect(plain(figures.minutesShown(minutes))).toBe(shown);
  });
});

describe("[DAY-1] days", () => {
  const today = day("2026-10-06");
  test.each([
    { date: "2026-10-09", parts: {}, shown: "Fri 9 Oct" },
    { date: "2027-01-04", parts: {}, shown: "Mon 4 Jan 2027" },
    { date: "2026-09-07", parts: { year: true }, shown: "Mon 7 Sep 2026" },
    { date: "2027-01-04", parts: { year: false }, shown: "Mon 4 Jan" },
    { date: "2026-11-02", parts: { weekday: false }, shown: "2 Nov" },
    { date: "1900-01-01", parts: {}, shown: "Mon 1 Jan 1900" },
  ])("$shown", ({ date, parts, shown }) => {
    expect(plain(figures.dayShown(day(date), today, parts))).toBe(shown);
  });

  test("in full for a title", () => {
    expect(plain(figures.longDayShown(today, today))).toBe("Tuesday 6 October");
    expect(plain(figures.longDayShown(day("2027-02-28"), today))).toBe("Sunday 28 February 2027");
  });

  test("lengths of time", () => {
    expect(plain(figures.daysShown(1))).toBe("1 day");
    expect(plain(figures.daysShown(56))).toBe("56 days");
  });
});
