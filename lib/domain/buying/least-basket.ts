/**
 * The least-cost basket of a problem, with the proof of it or what is left open. Where leftovers are worth something,
 * the least is that of the total less their worth. @rule BUY-4, BUY-5, BUY-6, BUY-17
 */
import type { MicroUnits } from "../money";
import { quantity } from "../quantity";
import type { BasketProblem, PacksByOffer } from "./basket-problem";
import { boughtByHand } from "./by-hand";
import { type Basket, checkedBasket } from "./checked-basket";
import { canBeSearched, leastOfParts, type Progress } from "./least-of-parts";
import { reckoned, withoutReckoned, withReckoned } from "./left-over-offers";

export interface LeastBasket {
  readonly kind: "basket";
  readonly basket: Basket;
  readonly packs: PacksByOffer;
  /** What it counts for less the least that any basket does, as far as that is proven; null where it is the least. */
  readonly gap: MicroUnits | null;
}

export type BasketAnswer =
  | LeastBasket
  /**
   * Nothing keeps every rule; or, not proven, nothing was found that does. Only a limit on packs, or packs that must
   * keep until they are used, bring this about.
   */
  | { readonly kind: "no basket"; readonly isProven: boolean };

export interface BasketOrders {
  /** Steps that the search may take for each part of the problem. */
  readonly effort: number;
  /** A basket to beat, beside the one by hand. */
  readonly known?: PacksByOffer | undefined;
  /** Asked now and then; false ends the search with what it has. */
  readonly mayGoOn?: ((soFar: Progress) => boolean) | undefined;
}

/** The basket of the least cost, within the problem's cap where leftovers might tempt beyond it. */
export function leastBasket(problem: BasketProblem, orders: BasketOrders): BasketAnswer {
  const { cap = null } = problem;
  const { answer, bound } = leastCounted(problem, orders, 0n);
  if (cap === null || answer.kind === "no basket" || answer.basket.total <= cap) return answer;
  return leastWithin(problem, cap, bound, orders);
}

/** Whether its figures are small enough for the search, so that a longer one can find or prove more. @rule BUY-5 */
export const isSearchable = (problem: BasketProblem): boolean => canBeSearched(reckoned(problem, 0n).problem);

/** What the basket was chosen by: cash less what its leftovers are worth. */
export const countedCost = ({ total, worth }: Pick<Basket, "total" | "worth">): bigint => total - worth;

/** Each turn rules out more, now and then by a single coin; what is open after so many is told as a gap. */
const MOST_TURNS = 200;
/** And all turns together take no more than so many times the effort for one search. */
const TURNS_EFFORT = 4;

/**
 * The least counted cost among baskets that cost no more cash than the cap. If every basket counts for `bound` at the
 * least, one within the cap forgoes at least `bound + all that leftovers could be worth − cap` of that worth; with that
 * demanded the bound rises, until a basket that reaches it keeps the cap.
 * @returns where no basket keeps the cap, the one of the least cash, which is then above it
 */
function leastWithin(problem: BasketProblem, cap: bigint, least: bigint, orders: BasketOrders): BasketAnswer {
  const bare = withoutWorth(problem);
  const { answer: cash } = leastCounted(bare, orders, 0n);
  if (cash.kind === "no basket") return cash;
  const { more } = reckoned(problem, 0n);
  if (cash.basket.total > cap || more === 0n) return cash;
  let best: LeastBasket = recounted(problem, cash.packs);
  let bound = least;
  let effort = orders.effort * TURNS_EFFORT;
  for (let turn = 0; turn < MOST_TURNS && effort > 0 && bound < countedCost(best.basket); turn += 1) {
    const turnsOrders = { ...orders, effort: Math.min(effort, orders.effort), known: best.packs };
    const { answer: next, bound: raised, effortUsed } = leastCounted(problem, turnsOrders, bound + more - cap);
    effort -= effortUsed;
    if (next.kind === "no basket") break;
    if (next.basket.total <= cap && countedCost(next.basket) < countedCost(best.basket)) best = next;
    if (raised <= bound) break;
    bound = raised;
  }
  const gap = quantity<MicroUnits>(countedCost(best.basket) - bound);
  return { ...best, gap: gap <= 0n ? null : gap };
}

/** The problem with leftovers that are worth nothing. */
export const withoutWorth = (problem: BasketProblem): BasketProblem => ({
  ...problem,
  cap: null,
  materials: problem.materials.map((material) => ({ ...material, leftOver: null })),
});

const recounted = (problem: BasketProblem, packs: PacksByOffer): LeastBasket => ({
  kind: "basket",
  basket: mustHold(problem, packs),
  packs,
  gap: null,
});

interface Counted {
  readonly answer: BasketAnswer;
  /** No basket that forgoes so much counts for less. */
  readonly bound: bigint;
  readonly effortUsed: number;
}

/** @param worthless  what leftovers must fall short of all that they could be worth */
function leastCounted(problem: BasketProblem, { known, effort, mayGoOn }: BasketOrders, worthless: bigint): Counted {
  const { problem: plain, more } = reckoned(problem, worthless);
  const starts = [boughtByHand(problem), known].flatMap((packs) => (packs ? [withReckoned(problem, packs)] : []));
  const tell =
    mayGoOn &&
    (({ total, bound, ...rest }: Progress) =>
      mayGoOn({ ...rest, total: total === null ? null : less(total, more), bound: less(bound, more) }));
  const found = leastOfParts(plain, { effort, starts, mayGoOn: tell });
  if (found.kind === "none")
    return { answer: { kind: "no basket", isProven: found.isProven }, bound: 0n, effortUsed: 0 };
  const packs = withoutReckoned(found.packs);
  const basket = mustHold(problem, packs);
  const bound = found.bound - more;
  const gap = less(quantity<MicroUnits>(countedCost(basket)), bound);
  return {
    answer: { kind: "basket", basket, packs, gap: gap <= 0n ? null : gap },
    bound,
    effortUsed: found.effortUsed,
  };
}

const less = (amount: bigint, by: bigint): MicroUnits => quantity<MicroUnits>(amount - by);

/** What the search chose is held to the rules by code that it does not share; what fails is a defect of the search. */
export function mustHold(problem: BasketProblem, packs: PacksByOffer): Basket {
  const checked = checkedBasket(problem, packs);
  if (checked.kind === "holds") return checked.basket;
  throw new Error(`the search chose a basket that breaks a rule: ${checked.faults.map(({ kind }) => kind).join(", ")}`);
}
