/**
 * How much at least a basket costs whose orders must reach thresholds. Goods of such an order are counted for less, by
 * a weight for each supplier, and what the threshold would give back is added: whatever the weights, no basket that
 * reaches the thresholds costs less (Lagrangian relaxation; Fisher, Management Science 27 (1981)). All in whole
 * numbers, so the bound is exact and not subject to a solver's tolerance.
 */
import { cheapestCover, type Cover, type Effort, WHOLE_WEIGHT } from "./material-covers";
import type { ScaledProblem } from "./scaled-problem";
import { goodsBySupplier, type SearchNode, thresholdOf } from "./search-node";

export interface ThresholdBound {
  readonly weights: readonly number[];
  /** The cheapest covers by weighed prices. */
  readonly covers: readonly Cover[];
  /** In parts of a unit of money. */
  readonly weighed: number;
}

export interface BoundMemory {
  readonly covers: Map<string, Cover | null>[];
  /** Called with the covers of every bound that is tried: they are often near a good basket. */
  readonly onCovers: (covers: readonly Cover[]) => void;
}

const ROUNDS = 3;

/** Covers are remembered up to so many for each material. */
const MOST_REMEMBERED = 4_000;

/**
 * @param active  suppliers, by place, whose thresholds are to be kept
 * @param enough  a bound, in parts of a unit, that settles the node; no better one is looked for
 */
export function thresholdBound(
  problem: ScaledProblem,
  node: SearchNode,
  active: readonly number[],
  enough: number,
  memory: BoundMemory,
  effort: Effort,
): ThresholdBound {
  let best = boundAt(
    problem,
    node,
    active,
    problem.suppliers.map(() => WHOLE_WEIGHT),
    memory,
    effort,
  );
  for (let round = 0; round < (active.length === 1 ? 1 : ROUNDS); round += 1) {
    const before = best.weighed;
    for (const supplier of active) {
      // The bound is concave in each weight: above its peak the goods fall short of the threshold, below they exceed.
      let [low, high] = [0, WHOLE_WEIGHT];
      while (low < high && best.weighed < enough && effort.left >= 0) {
        const middle = (low + high) >> 1;
        const tried = boundAt(problem, node, active, best.weights.with(supplier, middle), memory, effort);
        if (tried.weighed > best.weighed && effort.left >= 0) best = tried;
        const goods = goodsBySupplier(problem, packsOf(tried.covers))[supplier] ?? 0;
        if (goods < thresholdAt(problem, node, supplier)) high = middle;
        else low = middle + 1;
      }
    }
    if (best.weighed === before || best.weighed >= enough) break;
  }
  return best;
}

export const packsOf = (covers: readonly Cover[]) => covers.map(({ packs }) => packs);

export function thresholdAt(problem: ScaledProblem, { standings }: SearchNode, place: number): number {
  const [supplier, standing] = [problem.suppliers[place], standings[place]];
  return supplier && standing ? thresholdOf(supplier, standing) : 0;
}

function boundAt(
  problem: ScaledProblem,
  node: SearchNode,
  active: readonly number[],
  weights: readonly number[],
  memory: BoundMemory,
  effort: Effort,
): ThresholdBound {
  effort.left -= problem.materials.length;
  const isOpen = (supplier: number) => node.standings[supplier] !== "closed";
  const weightOf = (supplier: number) => weights[supplier] ?? WHOLE_WEIGHT;
  const covers = problem.materials.map((material, at) => {
    const known = node.covers[at];
    const isWeighed = material.suppliers.some((place) => isOpen(place) && weightOf(place) !== WHOLE_WEIGHT);
    if (known && !isWeighed) return known;
    const key = material.suppliers.map((place) => (isOpen(place) ? String(weightOf(place)) : "-")).join(" ");
    const remembered = memory.covers[at];
    const cover = remembered?.get(key) ?? cheapestCover(material, isOpen, weightOf, effort);
    if (remembered && effort.left >= 0) {
      if (remembered.size >= MOST_REMEMBERED) remembered.clear();
      remembered.set(key, cover);
    }
    return cover ?? known ?? { packs: [], cost: 0, weighed: 0 };
  });
  const given = active.reduce((sum, place) => {
    return sum + (WHOLE_WEIGHT - weightOf(place)) * thresholdAt(problem, node, place);
  }, node.charge * WHOLE_WEIGHT);
  memory.onCovers(covers);
  return { weights, covers, weighed: covers.reduce((sum, cover) => sum + cover.weighed, given) };
}
