/** The figures of a working add up as they are printed: computed by hand from the cases. */
import { describe, expect, test } from "vitest";
import { figuresThatAdd } from "@/lib/edge/figures-that-add";

const ug = (grams: string): bigint => {
  const [whole = "0", part = ""] = grams.replace("-", "").split(".");
  const size = BigInt(whole) * 1_000_000n + BigInt(part.padEnd(6, "0"));
  return grams.startsWith("-") ? -size : size;
};

const CASES = [
  {
    what: "whole grams have no decimals",
    sum: ["20", "-330", "310", "0"],
    shown: ["20 g", "−330 g", "310 g", "0 g"],
  },
  {
    what: "two decimals for all, where the printed lines add up",
    sum: ["20", "-330", "-50", "210.289231", "206.36", "56.649231"],
    shown: ["20.00 g", "−330.00 g", "−50.00 g", "210.29 g", "206.36 g", "56.65 g"],
  },
  {
    what: "a third, where they would not: 0.33 + 0.33 + 0.33 is not 1.00",
    sum: ["0.3334", "0.3334", "0.3334", "1.0002"],
    shown: ["0.3334 g", "0.3334 g", "0.3334 g", "1.0002 g"],
  },
  {
    what: "as many as keep a line from reading 0",
    sum: ["5", "0.0002", "5.0002"],
    shown: ["5.0000 g", "0.0002 g", "5.0002 g"],
  },
] as const;

describe("the figures of one working", () => {
  for (const { what, sum, shown } of CASES)
    test(what, () => {
      const terms = sum.map(ug);
      const figure = figuresThatAdd([terms], "mass");
      expect(terms.map((each) => figure(each).replaceAll("\u00a0", " "))).toEqual(shown);
    });

  test("every sum of a working has the same decimals", () => {
    const figure = figuresThatAdd(
      [
        [ug("1"), ug("2"), ug("3")],
        [ug("3"), ug("-0.25"), ug("2.75")],
      ],
      "mass",
    );
    expect(figure(ug("3"))).toBe("3.00\u00a0g");
  });

  test("what is counted has none", () => {
    expect(figuresThatAdd([[5n, -7n, -2n]], "count")(-2n)).toBe("−2\u00a0pieces");
  });
});
