/**
 * One way for each of several materials, at the least cost, so that goods reach every threshold: ways that cannot be
 * part of a cheaper choice are crossed out by the bounds of threshold-bound.ts, as often as that leaves fewer, and the
 * rest is chosen by labels. Whole numbers throughout.
 */
import { type Effort, WHOLE_WEIGHT } from "./material-covers";
import { cheapestByLabels, type LabelResult } from "./threshold-labels";
import type { Way } from "./threshold-way";

export interface ChoiceOrders<W extends Way> {
  /** The ways of each material, at least one. */
  readonly groups: readonly (readonly W[])[];
  readonly thresholds: readonly number[];
  /** What one unit of goods towards each threshold gives back, in parts of WHOLE_WEIGHT: where to begin. */
  readonly given: readonly number[];
  /** Only choices that cost less are of use. */
  readonly limit: number;
  /** Choices that may be kept in mind for the materials so far. */
  readonly width: number;
}

const TURNS = 60;

/** What is left to decide: groups with more than one way, and what the others leave to be reached. */
interface Rest<W extends Way> {
  readonly open: readonly (readonly W[])[];
  readonly missing: readonly number[];
  readonly spent: number;
}

interface Bound {
  readonly given: readonly number[];
  /** In parts. */
  readonly weighed: number;
  /** The best way of each open group, by its place, and its weighed cost. */
  readonly picks: readonly number[];
  readonly leasts: readonly number[];
  readonly goods: readonly number[];
}

/** The cheapest choice below the limit; of several, the first found. */
export function cheapestWays<W extends Way>(orders: ChoiceOrders<W>, effort: Effort): LabelResult<W> {
  let { groups, given } = orders;
  let best: readonly W[] | null = null;
  let limit = orders.limit;
  const onFound = (ways: readonly W[], cost: number) => {
    if (cost < limit) [best, limit] = [ways, cost];
  };
  const settled = (): LabelResult<W> => (best === null ? { kind: "none cheaper" } : { kind: "found", ways: best });
  for (;;) {
    const rest = restOf(groups, orders.thresholds);
    if (!isReachable(rest)) return settled();
    const bound = raisedBound({ groups, rest, given, limit: () => limit, onFound }, effort);
    if (effort.left < 0) return { kind: "too many", ways: best };
    if (Math.ceil(bound.weighed / WHOLE_WEIGHT) >= limit) return settled();
    given = bound.given;
    const kept = withoutHopeless(groups, rest, bound, limit);
    if (kept.some((ways) => ways.length === 0)) return settled();
    const isFewer = kept.some((ways, at) => ways.length < (groups[at]?.length ?? 0));
    groups = kept;
    if (isFewer) continue;
    const { open, missing, spent } = rest;
    const labelled = cheapestByLabels(
      { groups: open, missing, given, limit: limit - spent, width: orders.width },
      effort,
    );
    if (labelled.kind !== "none cheaper" && labelled.ways) {
      const ways = chosen(groups, labelled.ways);
      onFound(
        ways,
        ways.reduce((sum, { cost }) => sum + cost, 0),
      );
    }
    return labelled.kind === "too many" ? { kind: "too many", ways: best } : settled();
  }
}

/** A way of every group: those that were chosen of the open ones, and the only one of each other. */
function chosen<W extends Way>(groups: readonly (readonly W[])[], ofOpen: readonly W[]): readonly W[] {
  let at = -1;
  return groups.flatMap((ways) => (ways.length > 1 ? ofOpen[(at += 1)] : ways[0]) ?? []);
}

function restOf<W extends Way>(groups: readonly (readonly W[])[], thresholds: readonly number[]): Rest<W> {
  const decided = groups.flatMap((ways) => (ways.length === 1 ? ways : []));
  return {
    open: groups.filter(({ length }) => length > 1),
    missing: thresholds.map((threshold, at) =>
      Math.max(0, threshold - decided.reduce((sum, { goods }) => sum + (goods[at] ?? 0), 0)),
    ),
    spent: decided.reduce((sum, { cost }) => sum + cost, 0),
  };
}

const isReachable = <W extends Way>({ open, missing }: Rest<W>): boolean =>
  missing.every((sum, at) => open.reduce((most, ways) => most + mostGoods(ways, at), 0) >= sum);

const mostGoods = (ways: readonly Way[], at: number): number =>
  ways.reduce((most, { goods }) => Math.max(most, goods[at] ?? 0), 0);

function boundAt<W extends Way>({ open, missing, spent }: Rest<W>, given: readonly number[], effort: Effort): Bound {
  const goods = missing.map(() => 0);
  const picks: number[] = [];
  const leasts: number[] = [];
  let weighed = spent * WHOLE_WEIGHT;
  for (const [at, sum] of missing.entries()) weighed += (given[at] ?? 0) * sum;
  for (const ways of open) {
    let [least, pick] = [Infinity, 0];
    for (const [place, way] of ways.entries()) {
      const each = weighedCost(way, given, missing);
      if (each < least) [least, pick] = [each, place];
    }
    effort.left -= ways.length;
    weighed += least;
    picks.push(pick);
    leasts.push(least);
    for (const [at, sum] of missing.entries()) goods[at] = (goods[at] ?? 0) + Math.min(sum, ways[pick]?.goods[at] ?? 0);
  }
  return { given, weighed, picks, leasts, goods };
}

/** Goods beyond what is missing are worth nothing. */
function weighedCost({ cost, goods }: Way, given: readonly number[], missing: readonly number[]): number {
  let weighed = cost * WHOLE_WEIGHT;
  for (let at = 0; at < missing.length; at += 1) {
    weighed -= (given[at] ?? 0) * Math.min(missing[at] ?? 0, goods[at] ?? 0);
  }
  return weighed;
}

interface BoundOrders<W extends Way> {
  readonly groups: readonly (readonly W[])[];
  readonly rest: Rest<W>;
  readonly given: readonly number[];
  readonly limit: () => number;
  readonly onFound: (ways: readonly W[], cost: number) => void;
}

/** The bound at weights that make it large, by subgradients (Held and Karp, Mathematical Programming 1 (1971), from memory). */
function raisedBound<W extends Way>(orders: BoundOrders<W>, effort: Effort): Bound {
  const { rest } = orders;
  const tryAt = (given: readonly number[]): Bound => {
    const bound = boundAt(rest, given, effort);
    if (bound.goods.every((sum, at) => sum >= (rest.missing[at] ?? 0))) tell(orders, bound);
    return bound;
  };
  let best = tryAt(orders.given);
  let current = best;
  let pace = 1;
  for (let turn = 0; turn < TURNS; turn += 1) {
    const enough = (orders.limit() - 1) * WHOLE_WEIGHT + 1;
    const slopes = rest.missing.map((sum, at) => sum - (current.goods[at] ?? 0));
    const steepness = slopes.reduce((sum, slope) => sum + slope * slope, 0);
    if (best.weighed >= enough || steepness === 0 || effort.left < 0) break;
    const step = (pace * (enough - current.weighed)) / steepness;
    const given = current.given.map((each, at) => {
      const moved = Math.floor(each + step * (slopes[at] ?? 0) + 1 / 2);
      return Math.min(WHOLE_WEIGHT, Math.max(0, moved));
    });
    if (given.every((each, at) => each === current.given[at])) break;
    current = tryAt(given);
    if (current.weighed > best.weighed) best = current;
    else pace /= 1.3;
  }
  return best;
}

function tell<W extends Way>({ groups, rest, onFound }: BoundOrders<W>, { picks }: Bound): void {
  const ofOpen = rest.open.flatMap((ways, at) => ways[picks[at] ?? 0] ?? []);
  const cost = ofOpen.reduce((sum, way) => sum + way.cost, rest.spent);
  onFound(chosen(groups, ofOpen), cost);
}

/** Without the ways that no choice below the limit can hold. */
function withoutHopeless<W extends Way>(
  groups: readonly (readonly W[])[],
  { missing }: Rest<W>,
  { given, weighed, leasts }: Bound,
  limit: number,
): readonly (readonly W[])[] {
  const slack = (limit - 1) * WHOLE_WEIGHT - weighed;
  let at = -1;
  return groups.map((ways) => {
    if (ways.length === 1) return ways;
    const least = leasts[(at += 1)] ?? 0;
    return ways.filter((way) => weighedCost(way, given, missing) - least <= slack);
  });
}
