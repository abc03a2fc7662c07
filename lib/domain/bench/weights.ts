/** What was weighed against what was to be weighed. @rule BENCH-3, WEIGH-4 */
import type { Stock } from "@/lib/domain/quantity";
import { quantity } from "@/lib/domain/quantity";
import { type Batch, type NoteOf, type SheetLine, standing } from "./batch";

export interface LineWeighed {
  readonly line: SheetLine;
  /** That stand, in their order. */
  readonly weights: readonly NoteOf<"weighed">[];
  readonly total: Stock;
  readonly state: "open" | "more to come" | "done";
}

/** Each line of the sheet with what stands of it. */
export function linesWeighed(batch: Batch): readonly LineWeighed[] {
  const all = standing(batch, "weighed");
  return batch.lines.map((line) => {
    const weights = all.filter((note) => note.line === line.key);
    const last = weights.at(-1);
    return {
      line,
      weights,
      total: sumOf(weights),
      state: last === undefined ? "open" : last.more ? "more to come" : "done",
    };
  });
}

const sumOf = (notes: readonly { readonly net: Stock }[]): Stock =>
  quantity<Stock>(notes.reduce((sum, { net }) => sum + net, 0n));

/** How a line would stand with one more weight. */
export interface Judged {
  readonly total: Stock;
  /** Total less target: below zero where it is too little. */
  readonly off: bigint;
  readonly within: boolean;
  /** Ten times the target or more, or a tenth of it or less: a point in the wrong place. */
  readonly isTenfold: boolean;
}

/** Whether a weight may be so far off, µg. @rule BENCH-3 */
export const isWithinTolerance = (off: bigint, tolerance: bigint): boolean => (off < 0n ? -off : off) <= tolerance;

/** @param already  what stands of the line @rule BENCH-3 */
export function judged({ target, tolerance }: SheetLine, already: Stock, net: Stock): Judged {
  const total = quantity<Stock>(already + net);
  const off = total - target;
  return {
    total,
    off,
    within: isWithinTolerance(off, tolerance),
    isTenfold: total >= 10n * target || (total > 0n && 10n * total <= target),
  };
}

/** All that went in, by mass: what was weighed for lines of materials, and what was added beside them. */
export function massIn(batch: Batch): Stock {
  const poured = new Set(batch.lines.filter(({ of }) => of.kind === "formula").map(({ key }) => key));
  const weighed = standing(batch, "weighed").filter(({ line }) => !poured.has(line));
  return quantity<Stock>(sumOf(weighed) + sumOf(standing(batch, "added")));
}

/** What stands in an open batch of each lot, by what was written down of it. */
export function drawnByLot(batch: Pick<Batch, "notes">): ReadonlyMap<string, Stock> {
  const drawn = new Map<string, Stock>();
  for (const { lot, net } of [...standing(batch, "weighed"), ...standing(batch, "added")]) {
    if (lot !== null) drawn.set(lot, quantity<Stock>((drawn.get(lot) ?? 0n) + net));
  }
  return drawn;
}
