/** Codes of batches. Dates: GS1 General Specifications, section 7.12 (YYMMDD); ISO 8601, 5.2.3 (ordinal date). */
import fc from "fast-check";
import { expect, test } from "vitest";
import { codeAfter, type BatchCodeScheme, DATINGS, nextCode } from "@/lib/domain/bench/batch-code";
import { day } from "../../helpers/notation";

const scheme = (given: Partial<BatchCodeScheme> = {}): BatchCodeScheme => ({
  before: "",
  dating: "none",
  between: "",
  digits: 2,
  ...given,
});

test.each([
  { says: "a number alone", of: scheme(), on: "2026-11-25", code: "01" },
  {
    says: "GS1's date",
    of: scheme({ dating: "year, month and day", between: "-" }),
    on: "2026-11-25",
    code: "261125-01",
  },
  { says: "an ordinal date", of: scheme({ dating: "year and day of the year" }), on: "2026-11-25", code: "2632901" },
  {
    says: "the first of January",
    of: scheme({ dating: "year and day of the year" }),
    on: "2026-01-01",
    code: "2600101",
  },
  {
    says: "a leap year's last day",
    of: scheme({ dating: "year and day of the year" }),
    on: "2028-12-31",
    code: "2836601",
  },
  { says: "a text before", of: scheme({ before: "LAV ", digits: 4 }), on: "2026-11-25", code: "LAV 0001" },
])("[BENCH-2] $says", ({ of, on, code }) => {
  expect(nextCode(of, day(on), [])).toBe(code);
});

test.each([
  { says: "the next after the highest", used: ["A-01", "A-07", "A-3"], code: "A-08" },
  { says: "others count for nothing", used: ["B-99", "A-x", "A-", "XA-12"], code: "A-01" },
  { says: "more digits where they are needed", used: ["A-99"], code: "A-100" },
])("[BENCH-2] $says", ({ used, code }) => {
  expect(nextCode(scheme({ before: "A-" }), day("2026-11-25"), used)).toBe(code);
});

test("[BENCH-2] no code comes twice, whatever was used", () => {
  fc.assert(
    fc.property(
      fc.record({
        before: fc.string({ maxLength: 5 }),
        dating: fc.constantFrom(...DATINGS),
        between: fc.string({ maxLength: 3 }),
        digits: fc.integer({ min: 1, max: 6 }),
      }),
      fc.array(fc.string({ maxLength: 8 })),
      (of, others) => {
        const used = [...others];
        for (let count = 0; count < 12; count += 1) {
          const code = nextCode(of, day("2026-11-25"), used);
          expect(used).not.toContain(code);
          used.push(code);
        }
      },
    ),
  );
});

test.each([
  ["M-06", "M-07"],
  ["M-99", "M-100"],
  ["2611251", "2611252"],
  ["M", "M-2"],
])("[BENCH-10] after %s comes %s", (code, next) => {
  expect(codeAfter(code)).toBe(next);
});
