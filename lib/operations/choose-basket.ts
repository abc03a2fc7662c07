/** The least-cost basket for what a plan lacks. It decides nothing that is kept: the maker does, with an order. */
import { plannedBasket, type PlannedBasket } from "@/lib/domain/buying/basket-of-plan";
import type { BasketProblem } from "@/lib/domain/buying/basket-problem";
import { boughtByHand } from "@/lib/domain/buying/by-hand";
import { shoppingListOf } from "@/lib/domain/buying/candidates";
import { type Basket, checkedBasket } from "@/lib/domain/buying/checked-basket";
import { problemOf } from "@/lib/domain/buying/problem-of-list";
import type { ShoppingList } from "@/lib/domain/buying/shopping-list";
import type { Plan } from "@/lib/domain/plan-figures";
import type { Workshop } from "@/lib/domain/workshop";
import { type SolvedBasket, solvedBasket } from "@/lib/solver/solved-basket";
import { solvedOnce } from "./solved-once";

const SECONDS = 20;

/** @rule BUY-1 to BUY-5 */
export async function chooseBasket(workshop: Workshop, plan: Plan): Promise<PlannedBasket> {
  const list = shoppingListOf(workshop, plan);
  const { answer } = await solvedBasket(problemOf(workshop, list), { seconds: SECONDS });
  return plannedBasket(workshop, list, mustBeBasket(answer));
}

/** A basket as the maker reads it, and as it was checked. */
export interface BasketToShow {
  readonly planned: PlannedBasket;
  readonly basket: Basket;
}

export interface ChosenBasket extends BasketToShow {
  readonly byHand: BasketToShow;
  /** By hand where the search gave no answer. */
  readonly chosen: "least" | "by hand";
  readonly cutShort: SolvedBasket["cutShort"];
}

/**
 * The basket for a list, beside the one by hand. The same problem is searched once. Where the search fails, the basket
 * by hand stands in its place, with nothing proven of it.
 * @rule BUY-7, BUY-9
 */
export async function basketOfList(
  workshop: Workshop,
  list: ShoppingList,
  seconds: number = SECONDS,
): Promise<ChosenBasket> {
  return basketOf(workshop, list, problemOf(workshop, list), seconds);
}

/** The same for a problem that was made narrower than its list. */
export async function basketOf(
  workshop: Workshop,
  list: ShoppingList,
  problem: BasketProblem,
  seconds: number = SECONDS,
): Promise<ChosenBasket> {
  const hand = basketByHand(problem);
  const toShow = (basket: Basket, gap: PlannedBasket["gap"]): BasketToShow => ({
    planned: plannedBasket(workshop, list, { basket, gap }),
    basket,
  });
  const byHand = toShow(hand, hand.total);
  const solved = await solvedOnce(problem, seconds);
  if (solved === null) return { ...byHand, byHand, chosen: "by hand", cutShort: "failed" };
  const { basket, gap } = mustBeBasket(solved.answer);
  return { ...toShow(basket, gap), byHand, chosen: "least", cutShort: solved.cutShort };
}

/** Offers of a workshop have no most packs, so that any need and any minimum can be reached. */
function mustBeBasket(answer: SolvedBasket["answer"]) {
  if (answer.kind === "no basket") throw new Error("offers without a limit on packs did not make a basket");
  return answer;
}

function basketByHand(problem: BasketProblem): Basket {
  const packs = boughtByHand(problem);
  const checked = packs && checkedBasket(problem, packs);
  if (checked?.kind !== "holds") throw new Error("the basket by hand breaks a rule");
  return checked.basket;
}
