/** The fields one by one, as a form reads them. */
import { describe, expect, test } from "vitest";
import type { z } from "zod";
import { currency, day, days, id, name, oneOf, orElse, packs, units, wholeNumber, yesOrNo } from "@/lib/edge/fields";
import {
  amount,
  decimal,
  density,
  lossPercent,
  money,
  percent,
  percentByWeight,
  percentOrQs,
  price,
} from "@/lib/edge/figure-fields";
import { numberAsWritten } from "@/lib/edge/json-tree";
import { dayCalled } from "../bad-files/bench-workshop";
import { processorMs } from "../helpers/processor-time";

describe("a field gives the value of the domain", () => {
  test.each<[string, z.ZodType, unknown, unknown]>([
    ["MONEY-1", money, "8.40", 8_400_000n],
    ["MONEY-1", money, "0.000001", 1n],
    ["MONEY-1", money, "0", 0n],
    ["MONEY-1", price, "9007199254.740991", 2n ** 53n - 1n],
    ["QTY-7", percentByWeight, "2.5", 25_000n],
    ["QTY-7", percentByWeight, "0.0001", 1n],
    ["QTY-7", percentByWeight, "100.0000", 1_000_000n],
    ["QTY-7", percent, "0", 0n],
    ["QTY-7", lossPercent, "99.9999", 999_999n],
    ["FORMULA-1", percentOrQs, "qs", "qs"],
    ["QTY-1", density, "1.2613", 1_261_300n],
    ["QTY-3", decimal, "1.50", "1.50"],
    ["QTY-3", amount, "250 mL", { number: "250", unit: "mL" }],
    ["QTY-3", amount, "0.5 floz-uk", { number: "0.5", unit: "floz-uk" }],
    ["DAY-1", day, "2028-02-29", dayCalled("2028-02-29")],
    ["DAY-1", days, ["2026-12-25"], [dayCalled("2026-12-25")]],
    ["MONEY-2", currency, "KWD", "KWD"],
    ["FILE-3", name, "🌿".repeat(200), "🌿".repeat(200)],
    ["FILE-3", id, "constructor", "constructor"],
    ["FILE-1", units(0), 0, 0n],
    ["FILE-1", packs(2), 2, 2n],
    ["FILE-1", wholeNumber(0, 10), numberAsWritten("10"), 10],
    ["FILE-1", yesOrNo, false, false],
    ["FILE-1", oneOf(["working", "calendar"]), "calendar", "calendar"],
    ["FILE-1", orElse(money, null), undefined, null],
    ["FILE-1", orElse(money, null), null, null],
    ["FILE-1", orElse(units(1), 7), 2, 2n],
  ])("[%s] %# %j", (_, field, typed, value) => {
    expect(field.parse(typed)).toEqual(value);
  });
});

describe("or says what is wrong and what would be right", () => {
  test.each<[string, z.ZodType, unknown, string]>([
    ["QTY-2", amount, "250 ml", 'unknown unit "ml", write mL'],
    ["QTY-2", amount, "3 LB", 'unknown unit "LB", write lb'],
    ["QTY-3", amount, "250ml", 'must be a plain decimal, one space and a unit, as 250 mL, not "250ml"'],
    ["MONEY-1", money, "1.2345678", "1.2345678 has more than 6 decimals"],
    ["MONEY-1", price, "0.00", "must be above zero"],
    ["QTY-7", percentByWeight, "0", "0 % is out of range: it must be above zero"],
    ["QTY-7", lossPercent, "100", "100 % is out of range: it must be below 100"],
    ["QTY-7", percent, "12.34567", "12.34567 has more than 4 decimals"],
    ["DAY-1", day, "2026-02-30", 'no such day "2026-02-30"'],
    ["FILE-1", wholeNumber(0, 10), 11, "11 is out of range 0 to 10"],
    [
      "FILE-1",
      wholeNumber(0, 10),
      numberAsWritten("1.0"),
      "must be a whole number from 0 to 10, without a point or quotes, not 1.0",
    ],
    [
      "FILE-1",
      orElse(money, null),
      "-1",
      'must be a plain decimal, as 12.5 (no sign, exponent, separators or leading zero), not "-1"',
    ],
    ["FILE-3", id, "a\u202eb\u0000", 'control character or lone surrogate in "a\\u202eb\\u0000"; take it out'],
  ])("[%s] %# %j", (_, field, typed, message) => {
    const reading = field.safeParse(typed);
    expect(reading.error?.issues.map((issue) => issue.message)).toEqual([message]);
  });
});

test("[FILE-2] a value of many megabytes is shown short, and at once", () => {
  const taken = processorMs(() => {
    for (const field of [money, amount, day, name, currency, percentOrQs, density]) {
      for (const text of ["1".repeat(2e7), "\u0000".repeat(2e7), `${"1".repeat(2e7)} g`]) {
        const [issue] = field.safeParse(text).error?.issues ?? [];
        expect(issue?.message.length).toBeLessThan(250);
      }
    }
  });
  expect(taken).toBeLessThan(5_000);
});
