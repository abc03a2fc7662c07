import { describe, expect, test, vi } from "vitest";
import type { CurrencyCode } from "@/lib/domain/money";
import type { Outcome } from "@/lib/edge/fields";
import {
  isRest,
  readTypedAmount,
  readTypedMoney,
  readTypedPercent,
  readTypedPercentOrRest,
  readTypedWholeNumber,
} from "@/lib/edge/forms/typed-amount";
import { readTypedDay } from "@/lib/edge/forms/typed-day";
import { readTypedNumber, tooLong, withoutEnds } from "@/lib/edge/forms/typed-number";

/** What was understood, or `refused: why`. */
const inShort = <T>(outcome: Outcome<T>): string =>
  "value" in outcome ? String(outcome.value) : `refused: ${outcome.fault}`;

describe("[QTY-3] a number that a person types", () => {
  test.each([
    ["1.5", "1.5"],
    ["1,5", "1.5"],
    ["1,50", "1.50"],
    ["1,5000", "1.5000"],
    ["1.500", "1.500"],
    ["0,125", "0.125"],
    ["0,500", "0.500"],
    ["1234,500", "1234.500"],
    ["12", "12"],
    ["1500", "1500"],
    ["007", "7"],
    ["00", "0"],
    ["00.5", "0.5"],
    [".5", "0.5"],
    [",5", "0.5"],
    ["5.", "5"],
    ["5,", "5"],
    ["+5", "5"],
    ["  12.5  ", "12.5"],
    ["\u00a012.5\u202f", "12.5"],
    ["\u200912,5\u2009", "12.5"],
    ["\ufeff12", "12"],
    ["\u200e12\u200f", "12"],
    ["0", "0"],
    ["9007199254740993", "9007199254740993"],
  ])("%j is understood as %s", (typed, plain) => {
    expect(inShort(readTypedNumber(typed))).toBe(plain);
  });

  test.each([
    ["1,500", '"1,500" can be read two ways; write 1500 or 1.5'],
    ["12,345", '"12,345" can be read two ways; write 12345 or 12.345'],
    ["1 500", '"1 500" has its digits in groups; write 1500 or 1.5'],
    ["1\u00a0500", '"1\u00a0500" has its digits in groups; write 1500 or 1.5'],
    ["1'500", '"1\'500" has its digits in groups; write 1500 or 1.5'],
    ["1.500,00", '"1.500,00" has its digits in groups; write 1500'],
    ["1,500.00", '"1,500.00" has its digits in groups; write 1500'],
    ["1 500,25", '"1 500,25" has its digits in groups; write 1500.25'],
    ["1.500.000", '"1.500.000" has its digits in groups; write 1500000'],
    ["1,500,000", '"1,500,000" has its digits in groups; write 1500000'],
    ["+1,500", '"+1,500" can be read two ways; write 1500 or 1.5'],
    ["-5", 'must not be below zero, as "-5" is'],
    ["−5", 'must not be below zero, as "−5" is'],
    ["١٢", 'write it with the digits 0 to 9; "١٢" has others'],
    ["１２", 'write it with the digits 0 to 9; "１２" has others'],
    ["", "nothing is written here; write a number, as 12.5"],
    ["\u00a0", "nothing is written here; write a number, as 12.5"],
    [".", 'must be a number, as 12.5, not "."'],
    ["1e3", 'must be a number, as 12.5, not "1e3"'],
    ["1/2", 'must be a number, as 12.5, not "1/2"'],
    ["½", 'must be a number, as 12.5, not "½"'],
    ["1.2.3", 'must be a number, as 12.5, not "1.2.3"'],
    ["1, 5", 'must be a number, as 12.5, not "1, 5"'],
    ["1 5", 'must be a number, as 12.5, not "1 5"'],
    ["12 34", 'must be a number, as 12.5, not "12 34"'],
    ["Infinity", 'must be a number, as 12.5, not "Infinity"'],
    ["0x10", 'must be a number, as 12.5, not "0x10"'],
    ["++5", 'must be a number, as 12.5, not "++5"'],
    ["five", 'must be a number, as 12.5, not "five"'],
    ["<script>", 'must be a number, as 12.5, not "<script>"'],
  ])("%j is refused: %s", (typed, fault) => {
    expect(inShort(readTypedNumber(typed))).toBe(`refused: ${fault}`);
  });

  test("of ten thousand characters, or ten million, no reading looks at more than a hundred at once", () => {
    const readings = [readTypedNumber, readTypedAmount, readTypedMoney, readTypedPercent, readTypedPercentOrRest];
    for (const long of ["1".repeat(10_000), " ".repeat(10_000_000), "1,".repeat(5_000), "9 ".repeat(5_000)]) {
      let refusals: readonly Outcome<string>[] = [];
      const most = mostLookedAt(() => {
        refusals = [...readings.map((read) => read(long)), readTypedDay(long, "refused")];
      });
      expect(most).toBeLessThanOrEqual(100);
      const day = { fault: expect.stringContaining("must be a date") as string };
      expect(refusals).toEqual([...readings.map(() => tooLong(long)), day]);
    }
    expect(mostLookedAt(() => withoutEnds(" ".repeat(101)))).toBe(101);
  });
});

/** The length of the longest text that a pattern was run over: work is counted, since a clock also counts a busy machine. */
function mostLookedAt(work: () => void): number {
  let most = 0;
  // Whatever runs a pattern, replacing and splitting too, asks `exec`.
  // eslint-disable-next-line @typescript-eslint/unbound-method -- it is called below on the pattern it was asked of
  const { exec } = RegExp.prototype;
  const spy = vi.spyOn(RegExp.prototype, "exec").mockImplementation(function (this: RegExp, text) {
    most = Math.max(most, text.length);
    return exec.call(this, text);
  });
  try {
    work();
  } finally {
    spy.mockRestore();
  }
  return most;
}

describe("[QTY-2, QTY-3] an amount", () => {
  test.each([
    ["1 kg", "1 kg"],
    ["250mL", "250 mL"],
    ["250 ML", "250 mL"],
    ["250 ml", "250 mL"],
    ["1,5KG", "1.5 kg"],
    ["1\u00a0kg", "1 kg"],
    ["  12  each ", "12 each"],
    ["12 pcs", "12 each"],
    ["0.5l", "0.5 L"],
    ["2 Litres", "2 L"],
    ["16 oz", "16 oz"],
    ["1 lb.", "1 lb"],
    ["8 floz-us", "8 floz-us"],
    ["8 FLOZ-UK", "8 floz-uk"],
    ["8 US fl oz", "8 floz-us"],
    ["1 UK gallon", "1 gal-uk"],
    ["500 grams", "500 g"],
    [".5 g", "0.5 g"],
  ])("%j is understood as %s", (typed, amount) => {
    expect(inShort(readTypedAmount(typed))).toBe(amount);
  });

  const sizes = "write 5 floz-us (United States) or 5 floz-uk (United Kingdom)";
  test.each([
    ["5 fl oz", `"fl oz" has two sizes, and oz alone is a weight; ${sizes}`],
    ["5 fl. oz.", `"fl. oz." has two sizes, and oz alone is a weight; ${sizes}`],
    ["5 fluid ounces", `"fluid ounces" has two sizes, and oz alone is a weight; ${sizes}`],
    ["1 gallon", '"gallon" has two sizes; write 1 gal-us (United States) or 1 gal-uk (United Kingdom)'],
    ["250", '"250" has no unit; write it with one, as 250 g, 250 mL or 250 each'],
    ["g", 'must be a number and a unit, as 250 g, not "g"'],
    ["5 cups", 'unknown unit "cups"; write one of mg, g, kg, oz, lb, mL, L, floz-us, gal-us, floz-uk, gal-uk, each'],
    ["1,500 g", '"1,500" can be read two ways; write 1500 or 1.5'],
    ["1 500 g", '"1 500" has its digits in groups; write 1500 or 1.5'],
    ["-5 g", 'must not be below zero, as "-5" is'],
    ["١ kg", 'write it with the digits 0 to 9; "١" has others'],
    ["", 'must be a number and a unit, as 250 g, not ""'],
  ])("%j is refused: %s", (typed, fault) => {
    expect(inShort(readTypedAmount(typed))).toBe(`refused: ${fault}`);
  });
});

describe("[MONEY-1] money", () => {
  const pounds = "GBP" as CurrencyCode;
  test.each([
    ["£8.40", "8.40"],
    ["8.40 £", "8.40"],
    ["£ 8,40", "8.40"],
    ["8.40 GBP", "8.40"],
    ["GBP 8.40", "8.40"],
    ["8.40", "8.40"],
    ["$5", 'refused: "$" is not the workshop\'s currency; write the amount in GBP'],
  ])("%j is %s in a workshop that reckons in pounds", (typed, plain) => {
    expect(inShort(readTypedMoney(typed, pounds))).toBe(plain);
  });

  test.each([
    ["8,40 €", '"€" is not the workshop\'s currency; write the amount in GBP'],
    ["EUR 8.40", '"EUR" is not the workshop\'s currency; write the amount in GBP'],
    ["£1,500", '"1,500" can be read two ways; write 1500 or 1.5'],
    ["-£5", 'must not be below zero, as "-£5" is'],
    ["£", "nothing is written here; write a number, as 12.5"],
    ["8.40/kg", 'must be a number, as 12.5, not "8.40/kg"'],
  ])("%j is refused there: %s", (typed, fault) => {
    expect(inShort(readTypedMoney(typed, pounds))).toBe(`refused: ${fault}`);
  });

  test("any sign passes where the workshop's currency is not given", () => {
    expect(inShort(readTypedMoney("8,40 €"))).toBe("8.40");
  });
});

describe("[FORMULA-1] a percent, or what is left", () => {
  test.each([
    ["2,5 %", "2.5"],
    ["2.5%", "2.5"],
    ["% 5", "5"],
    ["100", "100"],
    ["qs", "qs"],
    ["QS", "qs"],
    ["q.s.", "qs"],
    ["q. s.", "qs"],
    ["qs to 100", "qs"],
    ["q.s. to 100 %", "qs"],
    ["ad 100", "qs"],
    ["to 100%", "qs"],
    ["5 g", "refused: 5 g is an amount; write its percent by weight of the whole, as 5 or 5 %"],
    ["0,5 KG", "refused: 0.5 kg is an amount; write its percent by weight of the whole, as 5 or 5 %"],
    ["5 mL", "refused: 5 mL is an amount; write its percent by weight of the whole, as 5 or 5 %"],
    ["5 % %", 'refused: must be a number, as 12.5, not "5 %"'],
    ["1,500 %", 'refused: "1,500" can be read two ways; write 1500 or 1.5'],
  ])("%j is %s", (typed, read) => {
    expect(inShort(readTypedPercentOrRest(typed))).toBe(read);
  });

  test("an empty field is not the rest", () => {
    expect([isRest(""), isRest("  "), isRest("qs"), isRest("rest of it")]).toEqual([false, false, true, false]);
  });
});

test.each([
  ["24", "24"],
  ["24.0", "24"],
  ["024", "24"],
  ["1,5", 'refused: must be a whole number, as 24, not "1,5"'],
  ["9007199254740991", "9007199254740991"],
  ["9007199254740992", 'refused: "9007199254740992" is too large; the most is 9007199254740991'],
  ["1,500", 'refused: "1,500" can be read two ways; write 1500 or 1.5'],
])("a whole number: %j is %s", (typed, read) => {
  expect(inShort(readTypedWholeNumber(typed))).toBe(read);
});

describe("[DAY-1] a day", () => {
  test.each([
    ["2026-11-25", "2026-11-25"],
    ["2026-4-3", "2026-04-03"],
    ["25/12/2026", "2026-12-25"],
    ["25.12.2026", "2026-12-25"],
    ["12/25/2026", "2026-12-25"],
    ["5/5/2026", "2026-05-05"],
    ["3/4/2026", 'refused: "3/4/2026" can be read two ways; write 2026-04-03 or 2026-03-04 (year-month-day)'],
    ["31/31/2026", 'refused: no such day "31/31/2026"; write it as 2026-11-25 (year-month-day)'],
    ["tomorrow", 'refused: must be a date as 2026-11-25 (year-month-day), not "tomorrow"'],
    ["2028-03", 'refused: must be a date as 2026-11-25 (year-month-day), not "2028-03"'],
  ])("%j is %s", (typed, read) => {
    expect(inShort(readTypedDay(typed, "refused"))).toBe(read);
  });

  test.each([
    ["2028-02", "2028-02-29"],
    ["02/2027", "2027-02-28"],
    ["2028-3", "2028-03-31"],
    ["13/2028", 'refused: must be a date as 2026-11-25 (year-month-day), not "13/2028"'],
  ])("an expiry of %j is the last day of the month, %s", (typed, read) => {
    expect(inShort(readTypedDay(typed, "its last day"))).toBe(read);
  });
});
