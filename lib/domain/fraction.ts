/**
 * Exact fractions of whole numbers. A price for one gram or a share of a batch is kept so until the last step.
 * The denominator is always above zero. Fractions are not reduced to lowest terms: finding a common divisor costs more
 * than carrying longer numbers, as long as sums of many are kept over one denominator.
 */
export interface Fraction {
  readonly over: bigint;
  readonly under: bigint;
}

export const ZERO: Fraction = { over: 0n, under: 1n };
export const ONE: Fraction = { over: 1n, under: 1n };

export const whole = (value: bigint): Fraction => ({ over: value, under: 1n });

/** over ÷ under; `under` must not be zero. */
export function ratio(over: bigint, under: bigint): Fraction {
  if (under === 0n) throw new RangeError("a fraction cannot be over zero");
  return under < 0n ? { over: -over, under: -under } : { over, under };
}

export const plus = (a: Fraction, b: Fraction): Fraction =>
  a.under === b.under
    ? { over: a.over + b.over, under: a.under }
    : { over: a.over * b.under + b.over * a.under, under: a.under * b.under };

export const minus = (a: Fraction, b: Fraction): Fraction => plus(a, { over: -b.over, under: b.under });
export const times = (a: Fraction, b: Fraction): Fraction => ({ over: a.over * b.over, under: a.under * b.under });

/** a ÷ b; `b` must not be zero. */
export const dividedBy = (a: Fraction, b: Fraction): Fraction => ratio(a.over * b.under, a.under * b.over);

export const total = (parts: readonly Fraction[]): Fraction => parts.reduce(plus, ZERO);

/** Below zero when a < b, zero when they are equal, above zero when a > b. */
export function compare(a: Fraction, b: Fraction): number {
  const difference = a.over * b.under - b.over * a.under;
  return difference < 0n ? -1 : difference > 0n ? 1 : 0;
}

/** The largest whole number not above the fraction. */
export function roundedDown({ over, under }: Fraction): bigint {
  const quotient = over / under;
  return over < 0n && over % under !== 0n ? quotient - 1n : quotient;
}

/** The smallest whole number not below the fraction. */
export const roundedUp = ({ over, under }: Fraction): bigint => -roundedDown({ over: -over, under });

/** The nearest whole number; a half goes to the even one. Quantities are rounded so. */
export function roundedHalfEven(value: Fraction): bigint {
  const down = roundedDown(value);
  const twiceRest = 2n * (value.over - down * value.under);
  if (twiceRest === value.under) return down % 2n === 0n ? down : down + 1n;
  return twiceRest > value.under ? down + 1n : down;
}

/** The nearest whole number; a half goes away from zero. Money is rounded so. */
export function roundedHalfAway({ over, under }: Fraction): bigint {
  const size = over < 0n ? -over : over;
  const nearest = (2n * size + under) / (2n * under);
  return over < 0n ? -nearest : nearest;
}
