/**
 * NIST Statistical Reference Datasets, linear regression: Norris (with intercept) and NoInt1 (without), with NIST's
 * certified values; data and values read in copies in other programs' test files, not at NIST.
 */
import { expect, test } from "vitest";
import type { Fraction } from "@/lib/domain/fraction";
import { leastSquares, throughOrigin } from "@/lib/domain/yield-fit";

const number = (value: Fraction | null): number =>
  value === null ? NaN : Number((value.over * 10n ** 18n) / value.under) / 1e18;
const tenths = (value: number): Fraction => ({ over: BigInt(value.toFixed(1).replace(".", "")), under: 10n });

const NORRIS_X = [
  0.2, 337.4, 118.2, 884.6, 10.1, 226.5, 666.3, 996.3, 448.6, 777.0, 558.2, 0.4, 0.6, 775.5, 666.9, 338.0, 447.5, 11.6,
  556.0, 228.1, 995.8, 887.6, 120.2, 0.3, 0.3, 556.8, 339.1, 887.2, 999.0, 779.0, 11.1, 118.3, 229.2, 669.1, 448.9, 0.5,
];
const NORRIS_Y = [
  0.1, 338.8, 118.1, 888.0, 9.2, 228.1, 668.5, 998.5, 449.1, 778.9, 559.2, 0.3, 0.1, 778.1, 668.8, 339.3, 448.9, 10.8,
  557.7, 228.3, 998.0, 888.8, 119.6, 0.3, 0.6, 557.6, 339.3, 888.0, 998.5, 778.9, 10.2, 117.6, 228.9, 668.4, 449.2, 0.2,
];

test("[YIELD-1] NIST StRD Norris, to fourteen digits", () => {
  const line = leastSquares(NORRIS_X.map((x, at) => ({ x: tenths(x), y: tenths(NORRIS_Y[at] ?? 0) })));
  expect(number(line.at)).toBeCloseTo(-0.262323073774029, 14);
  expect(number(line.by)).toBeCloseTo(1.00211681802045, 14);
  expect(number(line.atError)).toBeCloseTo(0.232818234301152, 14);
  expect(number(line.byError)).toBeCloseTo(0.429796848199937e-3, 16);
  expect(number(line.squares)).toBeCloseTo(26.6173985294224, 12);
});

test("[YIELD-1] NIST StRD NoInt1, to fourteen digits", () => {
  const points = Array.from({ length: 11 }, (_, at) => ({ x: tenths(60 + at), y: tenths(130 + at) }));
  const line = throughOrigin(points);
  expect(number(line.by)).toBeCloseTo(2.07438016528926, 14);
  expect(number(line.byError)).toBeCloseTo(0.165289256198347e-1, 15);
  expect(Math.sqrt(number(line.squares) / 10)).toBeCloseTo(3.56753034006338, 13);
});
