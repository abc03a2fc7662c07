import { describe, expect, test } from "vitest";
import { type BenchMinutes, benchDays, minutesOfRun } from "@/lib/domain/bench-hours";
import { isoDate } from "@/lib/domain/calendar";
import { compare, ratio } from "@/lib/domain/fraction";
import { moneyText } from "@/lib/domain/money";
import { quantity } from "@/lib/domain/quantity";
import { workshopOf } from "@/tests/helpers/bench";
import { day, decimal, formula, material, product, run } from "@/tests/helpers/notation";

/** Monday to Friday 240 minutes, Saturday 90. */
const week: BenchMinutes = [240, 240, 240, 240, 240, 90, 0];
const minutes = (value: { readonly over: bigint; readonly under: bigint } | null): string =>
  // Minutes as millionths, so that they print as a decimal.
  value === null ? "not known" : moneyText({ over: value.over * 1_000_000n, under: value.under }, 1);

const bench = workshopOf({
  settings: { closedDays: [day("2026-11-27")] },
  materials: [material("A")],
  formulas: [formula("f", { A: "100" })],
  products: [product("p", "f", { labourMinutesPerRun: decimal("45"), labourMinutesPerUnit: decimal("1.5") })],
  runs: [
    run("r1", "p", "2026-11-26", 24),
    run("r2", "p", "2026-11-26", 90),
    run("r3", "p", "2026-11-27", 10),
    run("r4", "p", "2026-11-28", 30),
  ],
});

describe("minutes at the bench", () => {
  test.each([
    { units: 24n, is: ratio(81n, 1n) },
    { units: 1n, is: ratio(93n, 2n) },
  ])("[BOOK-6] a run of $units asks for its own minutes and each unit's", ({ units, is }) => {
    const [only] = bench.products;
    if (!only) throw new Error("no product");
    expect(compare(minutesOfRun(only, quantity(units)), is)).toBe(0);
  });

  test("[BOOK-6] thirds of a minute are kept", () => {
    const third = product("p", "f", { labourMinutesPerUnit: decimal("0.333") });
    expect(compare(minutesOfRun(third, quantity(3n)), ratio(999n, 1000n))).toBe(0);
  });

  test("[BOOK-6] each day's runs against its minutes: a closed day has none, whatever its weekday", () => {
    const days = benchDays(bench, week, day("2026-11-25"), day("2026-11-29"));
    expect(
      days.map((each) =>
        [
          isoDate(each.day),
          each.isClosed ? "closed" : "open",
          each.runs.map(({ id }) => id).join("+") || "-",
          minutes(each.asked),
          each.there,
          minutes(each.left),
        ].join(" "),
      ),
    ).toEqual([
      "2026-11-25 open - 0.0 240 240.0",
      "2026-11-26 open r1+r2 261.0 240 -21.0",
      "2026-11-27 closed r3 60.0 0 -60.0",
      "2026-11-28 open r4 90.0 90 0.0",
      "2026-11-29 open - 0.0 0 0.0",
    ]);
  });

  test("[BOOK-6] without the maker's hours what is there is not known, and not zero", () => {
    const [only] = benchDays(bench, null, day("2026-11-26"), day("2026-11-26"));
    expect([minutes(only?.asked ?? null), only?.there, only?.left]).toEqual(["261.0", null, null]);
  });
});
