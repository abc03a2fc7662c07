/**
 * The least that the materials still to come can add when one threshold is kept exactly and the others only weighed:
 * a table for each threshold and number of materials left. Stronger than weighing all of them, because packs are whole
 * (a knapsack table; Martello and Toth, Knapsack Problems (1990), chapter 2, from memory). Goods are counted in
 * buckets, a way's rounded up and what is missing rounded down, so that a figure is never above the true one.
 */
import { type Effort, WHOLE_WEIGHT } from "./material-covers";
import type { Way } from "./threshold-way";

const MOST_BUCKETS = 1_024;

export interface ThresholdTable {
  readonly bucket: number;
  /** What the ways of the groups from each place on bring at the least. */
  readonly bases: readonly number[];
  /** By the place of the next group, and then by the buckets that are missing. */
  readonly rows: readonly Float64Array[];
}

/** The table of one threshold, for groups in the order in which they are decided. */
export function thresholdTable(
  groups: readonly (readonly Way[])[],
  missing: readonly number[],
  given: readonly number[],
  threshold: number,
  effort: Effort,
): ThresholdTable {
  const wanted = missing[threshold] ?? 0;
  const goodsOf = (way: Way) => Math.min(wanted, way.goods[threshold] ?? 0);
  const bases: number[] = [0];
  for (const ways of [...groups].reverse()) {
    bases.unshift((bases[0] ?? 0) + ways.reduce((least, way) => Math.min(least, goodsOf(way)), Infinity));
  }
  const beyond = Math.max(0, wanted - (bases[0] ?? 0));
  const bucket = Math.max(1, Math.ceil(beyond / MOST_BUCKETS));
  const size = Math.floor(beyond / bucket) + 1;
  let row = new Float64Array(size).fill(Infinity);
  row[0] = 0;
  const rows = [row];
  for (let place = groups.length - 1; place >= 0; place -= 1) {
    const base = (bases[place] ?? 0) - (bases[place + 1] ?? 0);
    const after = row;
    row = new Float64Array(size).fill(Infinity);
    for (const way of groups[place] ?? []) {
      const weighed = weighedBut(way, missing, given, threshold);
      const brings = Math.ceil((goodsOf(way) - base) / bucket);
      for (let short = 0; short < size; short += 1) {
        const whole = weighed + (after[short > brings ? short - brings : 0] ?? Infinity);
        if (whole < (row[short] ?? Infinity)) row[short] = whole;
      }
    }
    effort.left -= ((groups[place]?.length ?? 0) * size) >> 2;
    rows.unshift(row);
  }
  return { bucket, bases, rows };
}

/** The least that the groups from `place` on can add where `short` is still missing. */
export function leastToCome({ bucket, bases, rows }: ThresholdTable, place: number, short: number): number {
  const beyond = short - (bases[place] ?? 0);
  return rows[place]?.[beyond <= 0 ? 0 : Math.floor(beyond / bucket)] ?? Infinity;
}

/** What a way costs in parts, less what it gives towards every threshold but one. */
function weighedBut({ cost, goods }: Way, missing: readonly number[], given: readonly number[], but: number): number {
  let weighed = cost * WHOLE_WEIGHT;
  for (let at = 0; at < missing.length; at += 1) {
    if (at !== but) weighed -= (given[at] ?? 0) * Math.min(missing[at] ?? 0, goods[at] ?? 0);
  }
  return weighed;
}
