/**
 * One way for each of several materials by labels: materials one after the other, and of all choices for those so far
 * only the ones that could still end below the limit. Of two that bring the same goods towards every threshold the
 * dearer is dropped (a labelling algorithm; Desrochers and Soumis, INFOR 26 (1988), from memory). Quick where one
 * threshold or few materials are left, and told to stop where it is not.
 */
import { type Effort, WHOLE_WEIGHT } from "./material-covers";
import { undominated, type Way } from "./threshold-way";
import { leastToCome, type ThresholdTable, thresholdTable } from "./threshold-tables";

export interface LabelOrders<W extends Way> {
  /** The ways of each material still to be decided. */
  readonly groups: readonly (readonly W[])[];
  /** What is still missing towards each threshold. */
  readonly missing: readonly number[];
  /** What one unit of goods towards each threshold gives back, in parts. */
  readonly given: readonly number[];
  /** Only choices that cost less are of use. */
  readonly limit: number;
  /** Labels that are kept at the most. */
  readonly width: number;
}

export type LabelResult<W extends Way> =
  | { readonly kind: "found"; readonly ways: readonly W[] }
  | { readonly kind: "none cheaper" }
  /** Choices had to be left out; what was found among the likeliest proves nothing. */
  | { readonly kind: "too many"; readonly ways: readonly W[] | null };

interface Label<W extends Way> {
  readonly cost: number;
  /** Towards each threshold, and no more than what is missing. */
  readonly goods: readonly number[];
  /** The least that a choice costs which begins so, in parts. */
  readonly bound: number;
  readonly way: W | null;
  readonly before: Label<W> | null;
}

export function cheapestByLabels<W extends Way>(orders: LabelOrders<W>, effort: Effort): LabelResult<W> {
  const { groups, missing, given, limit, width } = orders;
  const order = [...groups.keys()].sort((a, b) => (groups[a]?.length ?? 0) - (groups[b]?.length ?? 0) || a - b);
  const inTurn = order.map((group) => groups[group] ?? []);
  const tables = missing.map((_, at) => thresholdTable(inTurn, missing, given, at, effort));
  const most = (limit - 1) * WHOLE_WEIGHT;
  let isWhole = true;
  let labels: readonly Label<W>[] = [{ cost: 0, goods: missing.map(() => 0), bound: 0, way: null, before: null }];
  for (const [place, ways] of inTurn.entries()) {
    let next: Label<W>[] = [];
    for (const before of labels) {
      if (next.length > width * 20) {
        isWhole = false;
        next = likeliest(next, width * 2);
      }
      for (const way of ways) {
        const cost = before.cost + way.cost;
        const goods = before.goods.map((sum, at) => Math.min(missing[at] ?? 0, sum + (way.goods[at] ?? 0)));
        const gaps = missing.map((sum, at) => sum - (goods[at] ?? 0));
        const bound = boundOf(cost, gaps, given, tables, place + 1);
        if (bound <= most) next.push({ cost, goods, bound, way, before });
      }
    }
    effort.left -= labels.length * ways.length;
    labels = undominated(next, effort);
    if (effort.left < 0) return { kind: "too many", ways: null };
    if (labels.length > width) {
      isWhole = false;
      labels = likeliest(labels, width);
    }
  }
  const reaching = labels.filter(({ goods }) => goods.every((sum, at) => sum >= (missing[at] ?? 0)));
  const best = reaching.reduce<Label<W> | null>((a, b) => (a === null || b.cost < a.cost ? b : a), null);
  const ways = best && waysOf(best, order);
  if (!isWhole) return { kind: "too many", ways };
  return ways === null ? { kind: "none cheaper" } : { kind: "found", ways };
}

const likeliest = <W extends Way>(labels: readonly Label<W>[], width: number): Label<W>[] =>
  [...labels].sort((a, b) => a.bound - b.bound || a.cost - b.cost).slice(0, width);

/** The largest of the tables' bounds: each keeps one threshold exactly and weighs the others. */
function boundOf(
  cost: number,
  gaps: readonly number[],
  given: readonly number[],
  tables: readonly ThresholdTable[],
  place: number,
): number {
  let weighed = cost * WHOLE_WEIGHT;
  for (let at = 0; at < gaps.length; at += 1) weighed += (given[at] ?? 0) * (gaps[at] ?? 0);
  let bound = -Infinity;
  for (const [at, table] of tables.entries()) {
    const gap = gaps[at] ?? 0;
    bound = Math.max(bound, weighed - (given[at] ?? 0) * gap + leastToCome(table, place, gap));
  }
  return bound;
}

/** The ways of a label, in the order of the groups. */
function waysOf<W extends Way>(last: Label<W>, order: readonly number[]): readonly W[] {
  const byGroup: W[] = [];
  let label: Label<W> | null = last;
  for (const group of [...order].reverse()) {
    if (label?.way) byGroup[group] = label.way;
    label = label?.before ?? null;
  }
  return byGroup;
}
