/** What to weigh for a trial: the formula for a small batch, one line of it varied. @rule TRIAL-1 */
import { percentOf } from "@/lib/domain/formula";
import { compare, dividedBy, type Fraction, minus, ONE, times, whole, ZERO } from "@/lib/domain/fraction";
import { type DecimalText, decimalValue, type Micrograms, shareOf, WHOLE } from "@/lib/domain/quantity";
import type { Formula } from "@/lib/domain/workshop";
import type { Outcome } from "@/lib/edge/fields";
import { readTypedPercent } from "./typed-amount";
import { readTypedStock } from "./typed-stock";

export interface TypedAims {
  /** Of the whole batch; empty for 100 g. */
  readonly size: string;
  /** The number of the line that is varied, from 0, and its percent; empty for none. */
  readonly line: string;
  readonly percent: string;
}

export type AimsReading =
  /** µg of each line, exact. */
  | { readonly kind: "aims"; readonly aims: readonly Fraction[] }
  | { readonly kind: "refused"; readonly field: keyof TypedAims; readonly message: string };

/** The size where nothing is typed. */
export const USUAL_TRIAL = "100 g";

/** Where one line is varied, the line that takes what is left gives way; without one the others do, in proportion. */
export function readAims(formula: Formula, typed: TypedAims): AimsReading {
  const size = readTypedStock(typed.size.trim() === "" ? USUAL_TRIAL : typed.size, "mass");
  if ("fault" in size) return { kind: "refused", field: "size", message: size.fault };
  const batch = size.value as Micrograms | null;
  if (batch === null || batch <= 0n)
    return { kind: "refused", field: "size", message: "must be above nothing, as 100 g" };
  const shares = formula.lines.map((line) => shareOf(percentOf(line, formula)));
  const at = /^\d{1,4}$/.test(typed.line) ? Number(typed.line) : -1;
  const was = shares[at];
  if (was === undefined || typed.percent.trim() === "") return { kind: "aims", aims: inBatch(shares, batch) };
  const percent = shareTyped(typed.percent);
  if ("fault" in percent) return { kind: "refused", field: "percent", message: percent.fault };
  const varied = withVaried(formula, shares, at, percent.value);
  return varied === null
    ? { kind: "refused", field: "percent", message: "leaves nothing for the line that takes what is left; write less" }
    : { kind: "aims", aims: inBatch(varied, batch) };
}

const inBatch = (shares: readonly Fraction[], batch: bigint): readonly Fraction[] =>
  shares.map((share) => times(share, whole(batch)));

function shareTyped(typed: string): Outcome<Fraction> {
  const read = readTypedPercent(typed);
  if ("fault" in read) return read;
  const ppm = times(decimalValue(read.value as DecimalText), whole(WHOLE / 100n));
  const share = { over: ppm.over, under: ppm.under * WHOLE };
  const isShare = share.over > 0n && compare(share, ONE) < 0;
  return isShare ? { value: share } : { fault: "must be a percent above 0 and below 100, as 6" };
}

/** @returns null where nothing, or less, would be left for another line */
function withVaried(
  formula: Formula,
  shares: readonly Fraction[],
  at: number,
  varied: Fraction,
): readonly Fraction[] | null {
  const was = shares[at] ?? ZERO;
  const rest = formula.lines.findIndex(({ percent }) => percent === "qs");
  const more = minus(varied, was);
  if (rest === at || rest === -1) {
    const others = minus(ONE, was);
    if (others.over === 0n) return null;
    const factor = dividedBy(minus(ONE, varied), others);
    return shares.map((share, each) => (each === at ? varied : times(share, factor)));
  }
  const left = minus(shares[rest] ?? ZERO, more);
  if (left.over <= 0n) return null;
  return shares.map((share, each) => (each === at ? varied : each === rest ? left : share));
}
