/** The cheapest covers whose orders reach thresholds, exactly: the ways to cover each material, then one of each. */
import { type Cover, type Effort, WHOLE_WEIGHT } from "./material-covers";
import { type CoverWay, waysToCover } from "./material-ways";
import type { ScaledProblem } from "./scaled-problem";
import { costOf, type SearchNode } from "./search-node";
import { thresholdAt, type ThresholdBound } from "./threshold-bound";
import { cheapestWays } from "./threshold-choice";

export type Reaching =
  | { readonly kind: "found"; readonly covers: readonly Cover[] }
  | { readonly kind: "none cheaper" }
  /** There were too many ways: nothing is proven, though a good basket may have come of those that were kept. */
  | { readonly kind: "too many"; readonly covers: readonly Cover[] | null };

/** Ways of one material that are kept in mind in any case. */
const FEWEST_WAYS = 4_000;

/**
 * @param limit  only baskets that cost less are of use, in units of money, shipping included
 * @param width  ways of one material, and choices for the materials so far, that may be kept in mind
 */
export function cheapestReaching(
  problem: ScaledProblem,
  node: SearchNode,
  active: readonly number[],
  bound: ThresholdBound,
  limit: number,
  width: number,
  effort: Effort,
): Reaching {
  const groups = waysOf(problem, node, active, bound, limit, Math.max(width, FEWEST_WAYS), effort);
  if (groups === null) return { kind: "too many", covers: null };
  if (groups.some(({ length }) => length === 0)) return { kind: "none cheaper" };
  const chosen = cheapestWays(
    {
      groups,
      thresholds: active.map((place) => thresholdAt(problem, node, place)),
      given: active.map((place) => WHOLE_WEIGHT - (bound.weights[place] ?? WHOLE_WEIGHT)),
      limit: limit - node.charge,
      width,
    },
    effort,
  );
  switch (chosen.kind) {
    case "none cheaper":
      return chosen;
    case "found":
      return { kind: "found", covers: chosen.ways.map(({ cover }) => cover) };
    case "too many":
      return { kind: "too many", covers: chosen.ways?.map(({ cover }) => cover) ?? null };
  }
}

/** The ways to cover each material that could be part of a cheaper basket; null where there are too many. */
function waysOf(
  problem: ScaledProblem,
  node: SearchNode,
  active: readonly number[],
  bound: ThresholdBound,
  limit: number,
  atMost: number,
  effort: Effort,
): readonly (readonly CoverWay[])[] | null {
  const isOpen = (supplier: number) => node.standings[supplier] !== "closed";
  const weightOf = (supplier: number) => bound.weights[supplier] ?? WHOLE_WEIGHT;
  const slackWeighed = (limit - 1) * WHOLE_WEIGHT - bound.weighed;
  const slack = limit - 1 - node.charge - costOf(node.covers);
  const groups: (readonly CoverWay[])[] = [];
  for (const [at, material] of problem.materials.entries()) {
    const limits = {
      mostCost: (node.covers[at]?.cost ?? 0) + slack,
      mostWeighed: (bound.covers[at]?.weighed ?? 0) + slackWeighed,
      atMost,
      active,
      thresholds: active.map((place) => thresholdAt(problem, node, place)),
    };
    const ways = waysToCover(material, isOpen, weightOf, limits, effort);
    if (ways === null) return null;
    groups.push(ways);
  }
  return groups;
}
