/**
 * The figures of one working: all with as many decimals, and so many that what is printed adds up to the last digit.
 * Two where they are enough; the exact figures of the books, in micrograms, at the most.
 */
import { ratio, roundedHalfAway } from "@/lib/domain/fraction";
import type { Measure } from "@/lib/domain/quantity";
import { gramsShown, piecesShown } from "./figures";
import { MINUS, tenTo } from "./shown-digits";

/** What is added, below zero where it is taken off, and last what it comes to. */
export type Sum = readonly bigint[];

const MICROGRAM_DECIMALS = 6;
const ENOUGH_AS_A_RULE = 2;

/** How a figure of the working is shown, whatever its sign; of what is counted there are no decimals. */
export function figuresThatAdd(sums: readonly Sum[], measure: Measure): (held: bigint) => string {
  if (measure === "count") return (held) => signed(held, (size) => piecesShown(size, "nearest"));
  const decimals = decimalsOf(sums);
  return (held) => signed(held, (size) => gramsShown(size, decimals));
}

const signed = (held: bigint, shown: (size: bigint) => string): string =>
  held < 0n ? `${MINUS}${shown(-held)}` : shown(held);

function decimalsOf(sums: readonly Sum[]): number {
  const areWhole = sums.flat().every((held) => rounded(held, 0) * tenTo(MICROGRAM_DECIMALS) === held);
  let decimals = areWhole ? 0 : ENOUGH_AS_A_RULE;
  while (decimals < MICROGRAM_DECIMALS && !sums.every((sum) => holds(sum, decimals))) decimals += 1;
  return decimals;
}

/** No line reads nothing that is not, and the lines come to their result. */
const holds = (sum: Sum, decimals: number): boolean => {
  const printed = sum.map((held) => rounded(held, decimals));
  const result = printed.at(-1) ?? 0n;
  return (
    printed.every((each, at) => each !== 0n || sum[at] === 0n) &&
    printed.slice(0, -1).reduce((all, each) => all + each, 0n) === result
  );
};

const rounded = (held: bigint, decimals: number): bigint =>
  roundedHalfAway(ratio(held, tenTo(MICROGRAM_DECIMALS - decimals)));
