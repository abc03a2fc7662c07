/**
 * Heel and proportional loss from batches that were made: loss = heel + share × bulk, by least squares, neither below
 * zero. Exact fractions; only the errors take a root. @rule YIELD-1, YIELD-2
 */
import { compare, dividedBy, type Fraction, minus, plus, ratio, times, total, whole, ZERO } from "./fraction";
import type { Micrograms } from "./quantity";
import { rootDown } from "./whole-root";

/** One batch: what was weighed into it, and what came out of it as fills and as what was left over. */
export interface BatchYield {
  readonly bulk: Micrograms;
  readonly filled: Micrograms;
}

export interface Point {
  readonly x: Fraction;
  readonly y: Fraction;
}

/** y = at + by × x, with the standard error of each; null where there are no more points than parameters. */
export interface FittedLine {
  readonly at: Fraction;
  readonly by: Fraction;
  readonly atError: Fraction | null;
  readonly byError: Fraction | null;
  readonly squares: Fraction;
}

export type YieldFit =
  /** Fewer than three batches. */
  | { readonly kind: "too few"; readonly batches: number }
  /** All of one size: what is lost cannot be told apart. */
  | { readonly kind: "one size"; readonly batches: number }
  | {
      readonly kind: "fitted";
      readonly batches: number;
      /** µg. */
      readonly heel: Fraction;
      /** Of the bulk. */
      readonly share: Fraction;
      /** Standard errors; null for one that was held at zero. */
      readonly heelError: Fraction | null;
      readonly shareError: Fraction | null;
    };

export const FEWEST_BATCHES = 3;

/** The heel and the share that fit these batches best. @rule YIELD-1 */
export function fitYield(batches: readonly BatchYield[]): YieldFit {
  if (batches.length < FEWEST_BATCHES) return { kind: "too few", batches: batches.length };
  if (batches.every(({ bulk }) => bulk === batches[0]?.bulk)) return { kind: "one size", batches: batches.length };
  const points = batches.map(({ bulk, filled }) => ({ x: whole(bulk), y: whole(bulk - filled) }));
  const { at, by, atError, byError } = lineNotBelowZero(points);
  return { kind: "fitted", batches: batches.length, heel: at, share: by, heelError: atError, shareError: byError };
}

/** Of the line with both free, with one held at zero, and with both, the best whose parameters are not below zero. */
export function lineNotBelowZero(points: readonly Point[]): FittedLine {
  const both = leastSquares(points);
  if (compare(both.at, ZERO) >= 0 && compare(both.by, ZERO) >= 0) return both;
  const held = [throughOrigin(points), level(points), atZero(points)].filter(
    ({ at, by }) => compare(at, ZERO) >= 0 && compare(by, ZERO) >= 0,
  );
  return held.reduce((best, each) => (compare(each.squares, best.squares) < 0 ? each : best));
}

/** Both parameters free. @param points  not all of one x */
export function leastSquares(points: readonly Point[]): FittedLine {
  const n = whole(BigInt(points.length));
  const [meanX, meanY] = [
    dividedBy(
      sumOf(points, ({ x }) => x),
      n,
    ),
    dividedBy(
      sumOf(points, ({ y }) => y),
      n,
    ),
  ];
  const spread = sumOf(points, ({ x }) => square(minus(x, meanX)));
  const together = sumOf(points, ({ x, y }) => times(minus(x, meanX), minus(y, meanY)));
  const by = dividedBy(together, spread);
  const at = minus(meanY, times(by, meanX));
  const squares = squaresOf(points, at, by);
  const variance = over(squares, points.length - 2);
  const atShare = plus(dividedBy(whole(1n), n), dividedBy(square(meanX), spread));
  return {
    at,
    by,
    squares,
    atError: variance && root(times(variance, atShare)),
    byError: variance && root(dividedBy(variance, spread)),
  };
}

/** y = by × x. */
export function throughOrigin(points: readonly Point[]): FittedLine {
  const squareX = sumOf(points, ({ x }) => square(x));
  const by = dividedBy(
    sumOf(points, ({ x, y }) => times(x, y)),
    squareX,
  );
  const squares = squaresOf(points, ZERO, by);
  const variance = over(squares, points.length - 1);
  return { at: ZERO, by, squares, atError: null, byError: variance && root(dividedBy(variance, squareX)) };
}

/** y = at. */
function level(points: readonly Point[]): FittedLine {
  const n = whole(BigInt(points.length));
  const at = dividedBy(
    sumOf(points, ({ y }) => y),
    n,
  );
  const squares = squaresOf(points, at, ZERO);
  const variance = over(squares, points.length - 1);
  return { at, by: ZERO, squares, atError: variance && root(dividedBy(variance, n)), byError: null };
}

const atZero = (points: readonly Point[]): FittedLine => ({
  at: ZERO,
  by: ZERO,
  squares: squaresOf(points, ZERO, ZERO),
  atError: null,
  byError: null,
});

const square = (value: Fraction): Fraction => times(value, value);
const sumOf = (points: readonly Point[], value: (point: Point) => Fraction): Fraction =>
  reduced(total(points.map(value)));
const squaresOf = (points: readonly Point[], at: Fraction, by: Fraction): Fraction =>
  sumOf(points, ({ x, y }) => square(minus(y, plus(at, times(by, x)))));
const over = (squares: Fraction, freedom: number): Fraction | null =>
  freedom < 1 ? null : dividedBy(squares, whole(BigInt(freedom)));

/** To at least sixteen significant digits, rounded down. */
function root({ over: above, under }: Fraction): Fraction {
  const scale = 10n ** 40n;
  return ratio(rootDown((above * scale * scale) / under), scale);
}

/** In lowest terms: sums of squares of fractions would else grow without end. */
function reduced({ over: above, under }: Fraction): Fraction {
  let [a, b] = [above < 0n ? -above : above, under];
  while (b !== 0n) [a, b] = [b, a % b];
  return a === 0n ? ZERO : { over: above / a, under: under / a };
}
