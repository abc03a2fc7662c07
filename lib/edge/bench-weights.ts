/** Weights as the bench says them: to the step of the balance, and how far off they are. @rule BENCH-3 */
import { isWithinTolerance, type Judged } from "@/lib/domain/bench/weights";
import { ratio, times, whole } from "@/lib/domain/fraction";
import { MINUS, NO_BREAK, numberShown } from "./shown-digits";

const MOST_DECIMALS = 6;
const digits = (micrograms: bigint, decimals: number): string =>
  numberShown(times(whole(micrograms), ratio(1n, 1_000_000n)), { least: decimals, most: MOST_DECIMALS });

/** Grams with as many decimals as the balance shows, and as many more as were written down. */
export const weightShown = (micrograms: bigint, decimals: number): string =>
  `${digits(micrograms, decimals)}${NO_BREAK}g`;

/** `+2.5 g`, `−0.8 g`, `exact`. @param off  weighed less target, µg */
export const offShown = (off: bigint, decimals: number): string =>
  off === 0n ? "exact" : `${off < 0n ? MINUS : "+"}${weightShown(off < 0n ? -off : off, decimals)}`;

/** `0.3 g under, within tolerance`; `110.0 g over; ±58.8 g is allowed`. */
export function offInWords(off: bigint, tolerance: bigint, decimals: number): string {
  if (off === 0n) return "exactly the target";
  const by = `${weightShown(off < 0n ? -off : off, decimals)} ${off < 0n ? "under" : "over"}`;
  return isWithinTolerance(off, tolerance)
    ? `${by}, within tolerance`
    : `${by}; ±${weightShown(tolerance, decimals)} is allowed`;
}

/** `10,542 g is ten times of it: is the point in its place?`; null where the point is likely to be there. */
export const tenfoldInWords = ({ off, total, isTenfold }: Judged, decimals: number): string | null =>
  isTenfold
    ? `${weightShown(total, decimals)} is ${off < 0n ? "a tenth" : "ten times"} of it: is the point in its place?`
    : null;

/** `±58.8 g: 5,821.2 to 5,938.8 g`. @param target  what is to be on the balance, µg */
export function toleranceShown(target: bigint, tolerance: bigint, decimals: number): string {
  const least = target > tolerance ? target - tolerance : 0n;
  return `±${weightShown(tolerance, decimals)}: ${digits(least, decimals)} to ${weightShown(target + tolerance, decimals)}`;
}
