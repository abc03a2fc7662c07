/** The least-cost basket for what a plan lacks. It decides nothing that is kept: the maker does, with an order. */
import { plannedBasket, type PlannedBasket } from "@/lib/domain/buying/basket-of-plan";
import type { BasketProblem } from "@/lib/domain/buying/basket-problem";
import { boughtByHand } from "@/lib/domain/buying/by-hand";
import { shoppingListOf } from "@/lib/domain/buying/candidates";
import { type Basket, checkedBasket } from "@/lib/domain/buying/checked-basket";
import { countedCost, type LeastBasket } from "@/lib/domain/buying/least-basket";
import type { Progress } from "@/lib/domain/buying/least-of-parts";
import { problemOf } from "@/lib/domain/buying/problem-of-list";
import type { ShoppingList } from "@/lib/domain/buying/shopping-list";
import type { MicroUnits } from "@/lib/domain/money";
import { quantity } from "@/lib/domain/quantity";
import type { Plan } from "@/lib/domain/plan-figures";
import type { Workshop } from "@/lib/domain/workshop";
import { type SolvedBasket, solvedBasket } from "@/lib/solver/solved-basket";
import { type BasketSearch, earlierAnswers, searchFor } from "./solved-once";

const SECONDS = 20;

/** @rule BUY-1 to BUY-5 */
export async function chooseBasket(workshop: Workshop, plan: Plan): Promise<PlannedBasket> {
  const list = shoppingListOf(workshop, plan);
  const { answer } = await solvedBasket(problemOf(workshop, list), { seconds: SECONDS });
  if (answer.kind === "no basket") throw new Error("offers without a limit on packs did not make a basket");
  return plannedBasket(workshop, list, answer);
}

/** A basket as the maker reads it, and as it was checked. */
export interface BasketToShow {
  readonly planned: PlannedBasket;
  readonly basket: Basket;
}

export interface ChosenBasket extends BasketToShow {
  /** Null where buying by hand breaks a rule of the frame. */
  readonly byHand: BasketToShow | null;
  /** By hand where the search gave no answer; the best so far while it goes on. */
  readonly chosen: "least" | "so far" | "by hand";
  readonly cutShort: SolvedBasket["cutShort"];
  /** When it was found, where it is an earlier answer that still holds and is cheaper than what was found since. */
  readonly foundAt: Date | null;
  /** Names the search where it is to be stopped or begun again, and how far it is. */
  readonly search: { readonly key: string; readonly progress: Progress | null };
}

export interface Patience {
  /** Time for a search that is not answered at once. */
  readonly seconds: number;
  /** How long to wait for it before the best so far is taken; Infinity to wait for its end. */
  readonly waitMilliseconds: number;
}

const TO_THE_END: Patience = { seconds: SECONDS, waitMilliseconds: Infinity };

/**
 * The basket for a list, beside the one by hand. The same problem is searched once. Where the search fails, the basket
 * by hand stands in its place, with nothing proven of it.
 * @returns null where nothing keeps every rule
 * @rule BUY-7, BUY-9
 */
export const basketOfList = (
  workshop: Workshop,
  list: ShoppingList,
  patience: Patience = TO_THE_END,
): Promise<ChosenBasket | null> => basketOf(workshop, list, problemOf(workshop, list), patience);

/** The same for a problem that was made narrower than its list. */
export async function basketOf(
  workshop: Workshop,
  list: ShoppingList,
  problem: BasketProblem,
  patience: Patience = TO_THE_END,
): Promise<ChosenBasket | null> {
  const toShow = (basket: Basket, gap: PlannedBasket["gap"]): BasketToShow => ({
    planned: plannedBasket(workshop, list, { basket, gap }),
    basket,
  });
  const hand = basketByHand(problem);
  const byHand = hand && toShow(hand, hand.total);
  const running = searchFor(problem, patience.seconds);
  const found = await settledWithin(running, patience.waitMilliseconds);
  const search = { key: running.key, progress: running.progress() };
  const show = ({ basket, gap }: LeastBasket, chosen: "least" | "so far", cutShort: SolvedBasket["cutShort"]) => ({
    ...toShow(basket, gap),
    byHand,
    chosen,
    cutShort,
    foundAt: null,
    search,
  });
  const asFound = (): ChosenBasket | null => {
    if (found === "searching") {
      const first = running.first();
      if (first?.kind === "basket") return show(first, "so far", null);
      return byHand && { ...byHand, byHand, chosen: "so far", cutShort: null, foundAt: null, search };
    }
    if (found === null)
      return byHand && { ...byHand, byHand, chosen: "by hand", cutShort: "failed", foundAt: null, search };
    return found.answer.kind === "basket" ? show(found.answer, "least", found.cutShort) : null;
  };
  const now = asFound();
  return now && (earlierThan(now, problem, toShow) ?? now);
}

/**
 * Of what is not proven, the cheapest of the earlier answers that keeps every rule of the problem as it is now, if that
 * is cheaper. It only stands in: no search begins from it, so that what one ends with does not hang on what was asked
 * before. @rule BUY-6, BUY-9
 */
function earlierThan(
  now: ChosenBasket,
  problem: BasketProblem,
  toShow: (basket: Basket, gap: PlannedBasket["gap"]) => BasketToShow,
): ChosenBasket | null {
  const { gap } = now.planned;
  if (gap === null) return null;
  let best: { readonly basket: Basket; readonly at: Date } | null = null;
  let least = countedCost(now.basket);
  for (const { packs, at } of earlierAnswers()) {
    const checked = checkedBasket(problem, packs);
    if (checked.kind === "broken" || countedCost(checked.basket) >= least) continue;
    if (problem.cap != null && checked.basket.total > problem.cap) continue;
    best = { basket: checked.basket, at };
    least = countedCost(checked.basket);
  }
  if (best === null) return null;
  const open = quantity<MicroUnits>(least - (countedCost(now.basket) - gap));
  const chosen = now.chosen === "by hand" ? "least" : now.chosen;
  return { ...now, ...toShow(best.basket, open), chosen, foundAt: best.at };
}

/** The answer of a search, unless it takes longer. */
async function settledWithin(
  { answered }: BasketSearch,
  milliseconds: number,
): Promise<SolvedBasket | null | "searching"> {
  if (milliseconds === Infinity) return answered;
  let timer: NodeJS.Timeout | undefined;
  const late = new Promise<"searching">((resolve) => {
    timer = setTimeout(() => resolve("searching"), milliseconds);
  });
  const found = await Promise.race([answered, late]);
  clearTimeout(timer);
  return found;
}

function basketByHand(problem: BasketProblem): Basket | null {
  const packs = boughtByHand(problem);
  if (packs === null) return null;
  const checked = checkedBasket(problem, packs);
  if (checked.kind !== "holds") throw new Error("the basket by hand breaks a rule");
  return checked.basket;
}
