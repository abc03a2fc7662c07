/** The plumb: how far a weight hangs from its target, between two brackets that stand at the tolerance. */
import { isWithinTolerance } from "@/lib/domain/bench/weights";

/** The drawing, in units of its own. */
export const PLUMB = { width: 120, height: 24, middle: 60, bracket: 25, end: 53 } as const;

/** What hangs outside stands clear of the bracket, however little it is. */
const CLEAR = 7;

/**
 * Where the diamond hangs: in proportion up to the bracket, clear of it where it is outside, and never past the line.
 * @param off        weighed less target, µg
 * @param tolerance  µg
 * @returns how far right of the middle, in units of the drawing
 */
export function plumbAt(off: bigint, tolerance: bigint): number {
  const size = off < 0n ? -off : off;
  const side = off < 0n ? -1 : 1;
  if (size === 0n) return 0;
  // In thousandths, so that no figure is too large to be divided exactly.
  const far = tolerance === 0n ? Infinity : (Number((size * 1000n) / tolerance) / 1000) * PLUMB.bracket;
  if (isWithinTolerance(off, tolerance)) return side * far;
  return side * Math.min(PLUMB.end, Math.max(PLUMB.bracket + CLEAR, far));
}
