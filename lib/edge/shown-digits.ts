/**
 * The digits of a figure as it is shown: rounded once, from whole numbers only, then grouped as the locale groups them.
 * Intl is given whole numbers and never a fraction, so that nothing can be rounded there.
 */
import { type Fraction, roundedDown, roundedHalfAway, roundedUp, times, whole } from "@/lib/domain/fraction";
import { marks } from "./notation";

/** What is there is rounded down, what is lacking or needed is rounded up; all else goes to the nearest. */
export type Direction = "there" | "lacking" | "nearest";

export const NO_BREAK = "\u00a0";
/** Stands before a figure below zero. */
export const MINUS = "\u2212";
export const MOST_DECIMALS = 12;

export const asFraction = (value: bigint | Fraction): Fraction => (typeof value === "bigint" ? whole(value) : value);
export const isNothing = (value: Fraction): boolean => value.over === 0n;
export const sizeOf = ({ over, under }: Fraction): Fraction => ({ over: over < 0n ? -over : over, under });
export const tenTo = (decimals: number): bigint => 10n ** BigInt(decimals);

const ROUNDINGS: Readonly<Record<Direction, (value: Fraction) => bigint>> = {
  there: roundedDown,
  lacking: roundedUp,
  nearest: roundedHalfAway,
};
export const REVERSED: Readonly<Record<Direction, Direction>> = {
  there: "lacking",
  lacking: "there",
  nearest: "nearest",
};

/** A figure above or at zero as a whole number of its last decimal. */
export const inDecimals = (size: Fraction, decimals: number, direction: Direction): bigint =>
  ROUNDINGS[direction](times(size, whole(tenTo(decimals))));

/** As many decimals as asked for, or as many more as keep a figure that is not nothing from reading 0. */
export function decimalsThatSay(size: Fraction, decimals: number, direction: Direction): number {
  let enough = decimals;
  while (enough < MOST_DECIMALS && !isNothing(size) && inDecimals(size, enough, direction) === 0n) enough += 1;
  return enough;
}

/** Plain digits: `scaled` counted in its last decimal. */
function plainDecimal(scaled: bigint, decimals: number): string {
  const digits = scaled.toString().padStart(decimals + 1, "0");
  return decimals === 0 ? digits : `${digits.slice(0, -decimals)}.${digits.slice(-decimals)}`;
}

/** Digits as the locale groups them. Only the whole part goes through Intl, so that nothing can be rounded there. */
export function grouped(plain: string): string {
  const [wholePart = "", decimals] = plain.split(".");
  const { whole: wholeNumbers, decimal } = marks();
  return wholeNumbers.format(BigInt(wholePart)) + (decimals === undefined ? "" : decimal + decimals);
}

const decimalsIn = (plain: string): number => (plain.includes(".") ? plain.length - plain.indexOf(".") - 1 : 0);

interface Decimals {
  readonly least: number;
  /** Where it is above `least`, zeros at the end are left out down to `least`. */
  readonly most: number;
}

/** A number with its sign, rounded once. */
export function numberShown(
  value: bigint | Fraction,
  { least, most }: Decimals,
  direction: Direction = "nearest",
): string {
  const exact = asFraction(value);
  const size = sizeOf(exact);
  const towards = exact.over < 0n ? REVERSED[direction] : direction;
  const decimals = decimalsThatSay(size, most, towards);
  let plain = plainDecimal(inDecimals(size, decimals, towards), decimals);
  while (decimalsIn(plain) > least && plain.endsWith("0")) plain = plain.slice(0, -1);
  if (plain.endsWith(".")) plain = plain.slice(0, -1);
  return `${exact.over < 0n ? MINUS : ""}${grouped(plain)}`;
}
