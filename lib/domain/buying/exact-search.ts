/**
 * The least-cost basket, proven: a branch and bound over what each supplier is to the basket (not ordered from, paid
 * shipping, free shipping) in whole numbers throughout. Bounds are sums of cheapest covers (material-covers.ts),
 * raised where an order must reach a threshold (threshold-bound.ts); where that is not enough the best basket that
 * reaches the thresholds is found outright (threshold-covers.ts). No figure here is rounded, so "proven" rests on no
 * tolerance. @rule BUY-5
 */
import { type Cover, type Effort, WHOLE_WEIGHT } from "./material-covers";
import { LARGEST_SUM, type ScaledProblem } from "./scaled-problem";
import {
  type Choice,
  coverMemoryOf,
  decided,
  goodsBySupplier,
  rootOf,
  type SearchNode,
  type Standing,
} from "./search-node";
import { packsOf, thresholdAt, thresholdBound } from "./threshold-bound";
import { cheapestReaching } from "./threshold-covers";
import { costWithShipping, toppedUp } from "./topped-up";

export interface Search {
  /** The cheapest basket found, or null where none was. */
  readonly best: Choice | null;
  /** No basket costs less, in units of money. */
  readonly bound: number;
  /** `best` cannot be beaten; with no `best`, nothing fulfils the problem. */
  readonly isProven: boolean;
  readonly effortUsed: number;
}

/** Ways that one node may keep in mind for its exact answer before it is put off for the first time. */
const FIRST_PATIENCE = 100;
/** And at the most: a node that is not settled with so many stays open. */
const MOST_PATIENCE = 51_200;

/** Steps for each of those ways, and at the most for one turn of a node: about a second. */
const RATION = 20_000;
const LARGEST_RATION = 30_000_000;

export interface SearchProgress {
  readonly cost: number | null;
  readonly bound: number;
  /** Suppliers that the node at hand has decided about. */
  readonly decided: number;
}

export interface SearchOrders {
  /** A basket to beat. */
  readonly known: Choice | null;
  /** Steps to take at the most. */
  readonly effort: number;
  /** Asked now and then; false ends the search with what it has. */
  readonly mayGoOn?: (soFar: SearchProgress) => boolean;
}

export function searched(problem: ScaledProblem, { known, effort: allowed, mayGoOn }: SearchOrders): Search {
  const effort: Effort = { left: allowed };
  let best = known;
  const largest = Math.floor(LARGEST_SUM / WHOLE_WEIGHT);
  const ceiling = dearest(problem) + 1;
  const limit = () => Math.min(best?.cost ?? ceiling, largest);
  const consider = (choice: Choice | null) => {
    if (choice && choice.cost < (best?.cost ?? Infinity)) best = choice;
  };
  const memory = {
    covers: coverMemoryOf(problem),
    onCovers: (covers: readonly Cover[]) => consider(toppedUp(problem, packsOf(covers))),
  };
  const coverMemory = coverMemoryOf(problem);

  const root = rootOf(problem, effort);
  const stack: SearchNode[] = root === null || effort.left < 0 ? [] : [root];
  let unproven = effort.left < 0 ? 0 : Infinity;
  // A node that takes long is put off: by its next turn a cheaper basket may have settled it.
  const putOff: SearchNode[] = [];
  let patience = FIRST_PATIENCE;
  const nextNode = () => {
    if (stack.length === 0 && putOff.length > 0) {
      if (patience === MOST_PATIENCE) return undefined;
      patience = Math.min(patience * 8, MOST_PATIENCE);
      stack.push(...putOff.splice(0).sort((a, b) => b.bound - a.bound));
    }
    return stack.pop();
  };
  for (let node = nextNode(); node !== undefined; node = nextNode()) {
    if (node.bound >= limit()) continue;
    const bounds = () => Math.min(unproven, node.bound, ...[...stack, ...putOff].map(({ bound }) => bound));
    if (
      effort.left < 0 ||
      (mayGoOn && !mayGoOn({ cost: best?.cost ?? null, bound: bounds(), decided: decidedOf(node) }))
    ) {
      unproven = bounds();
      break;
    }
    const outcome = explored(problem, node, limit, memory, consider, { effort, patience });
    // What was found while the effort ran out proves nothing: the node stands as it did.
    if (effort.left < 0) {
      unproven = bounds();
      break;
    }
    if (outcome.kind === "put off") putOff.push({ ...node, bound: outcome.bound });
    if (outcome.kind !== "branch") continue;
    const children = outcome.standings.flatMap(
      (standing) => decided(problem, outcome.node, outcome.supplier, standing, coverMemory, effort) ?? [],
    );
    if (effort.left < 0) unproven = Math.min(unproven, node.bound);
    else stack.push(...children.sort((a, b) => b.bound - a.bound));
  }
  unproven = Math.min(unproven, ...putOff.map(({ bound }) => bound));
  const cost = best?.cost ?? Infinity;
  const isTooLarge = (best === null ? ceiling : cost) > largest;
  const bound = isTooLarge ? 0 : Math.min(cost, unproven);
  return { best, bound, isProven: !isTooLarge && unproven >= cost, effortUsed: allowed - effort.left };
}

const decidedOf = ({ standings }: SearchNode): number => standings.filter((standing) => standing !== "open").length;

/** More than any basket costs that the search looks at. */
const dearest = ({ materials, suppliers }: ScaledProblem): number =>
  materials.reduce(
    (sum, { offers }) =>
      offers.reduce((all, { steps }) => all + Math.max(0, ...steps.map(({ to, price }) => to * price)), sum),
    suppliers.reduce((sum, { shipping }) => sum + shipping, 0),
  );

type Explored =
  | { readonly kind: "settled" }
  | { readonly kind: "put off"; readonly bound: number }
  | {
      readonly kind: "branch";
      readonly node: SearchNode;
      readonly supplier: number;
      readonly standings: readonly Standing[];
    };

/** Settles a node, or names the supplier to decide next. */
function explored(
  problem: ScaledProblem,
  node: SearchNode,
  limit: () => number,
  memory: Parameters<typeof thresholdBound>[4],
  consider: (choice: Choice | null) => void,
  { effort, patience }: { readonly effort: Effort; readonly patience: number },
): Explored {
  effort.left -= problem.materials.length;
  let covers = node.covers;
  let bound = node.bound;
  let active: readonly number[] = [];
  for (;;) {
    consider(toppedUp(problem, packsOf(covers)));
    if (bound >= limit()) return { kind: "settled" };
    const goods = goodsBySupplier(problem, packsOf(covers));
    const undecided = mostViolated(problem, node, goods);
    const missed = problem.suppliers.flatMap((_, place) => {
      const standing = node.standings[place];
      const isDecided = standing === "paying" || standing === "free";
      return isDecided && (goods[place] ?? 0) < thresholdAt(problem, node, place) ? [place] : [];
    });
    if (missed.length === 0 && undecided === null) {
      // Every rule is kept at the cost of the bound: nothing under these decisions is cheaper.
      consider({ packs: packsOf(covers), cost: costWithShipping(problem, packsOf(covers)) });
      return { kind: "settled" };
    }
    if (missed.length > 0) {
      active = [...new Set([...active, ...missed])].sort((a, b) => a - b);
      const raised = thresholdBound(problem, node, active, (limit() - 1) * WHOLE_WEIGHT + 1, memory, effort);
      bound = Math.max(bound, Math.ceil(raised.weighed / WHOLE_WEIGHT));
      if (bound >= limit()) return { kind: "settled" };
      const atPeak = mostViolated(problem, node, goodsBySupplier(problem, packsOf(raised.covers)));
      if (undecided === null && atPeak === null) {
        const ration = { left: Math.min(patience * RATION, LARGEST_RATION, effort.left) };
        const given = ration.left;
        const reached = cheapestReaching(problem, node, active, raised, limit(), patience, ration);
        effort.left -= given - ration.left;
        if (reached.kind === "none cheaper") return { kind: "settled" };
        if (reached.kind === "too many") {
          if (reached.covers) consider(toppedUp(problem, packsOf(reached.covers)));
          return { kind: "put off", bound };
        }
        covers = reached.covers;
        bound = Math.max(bound, node.charge + covers.reduce((sum, { cost }) => sum + cost, 0));
        continue;
      }
      return branchOn(problem, { ...node, bound }, atPeak ?? undecided ?? 0);
    }
    return branchOn(problem, { ...node, bound }, undecided ?? 0);
  }
}

function branchOn(problem: ScaledProblem, node: SearchNode, supplier: number): Explored {
  const { shipping = 0, freeFrom = Infinity, minimum = 0 } = problem.suppliers[supplier] ?? {};
  const isNeverFree = shipping > 0 && freeFrom === Infinity;
  const isAlwaysFree = freeFrom <= minimum;
  const ordered: readonly Standing[] = isNeverFree ? ["paying"] : isAlwaysFree ? ["free"] : ["free", "paying"];
  return { kind: "branch", node, supplier, standings: [...ordered, "closed"] };
}

/** The undecided supplier whose order would cost most beyond its goods, or miss its minimum; null where none would. */
function mostViolated(problem: ScaledProblem, { standings }: SearchNode, goods: readonly number[]): number | null {
  let worst: number | null = null;
  let most = 0;
  for (const [place, supplier] of problem.suppliers.entries()) {
    const spent = goods[place] ?? 0;
    if (standings[place] !== "open" || spent === 0) continue;
    const shipping = spent < supplier.freeFrom ? supplier.shipping : 0;
    const violation = shipping + Math.max(0, supplier.minimum - spent);
    if (violation > most) [most, worst] = [violation, place];
  }
  return worst;
}
