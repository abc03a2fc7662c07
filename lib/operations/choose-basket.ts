/** The least-cost basket for what a plan lacks. It decides nothing that is kept: the maker does, with an order. */
import { plannedBasket, type PlannedBasket } from "@/lib/domain/buying/basket-of-plan";
import { shoppingListOf } from "@/lib/domain/buying/candidates";
import { problemOf } from "@/lib/domain/buying/problem-of-list";
import type { Plan } from "@/lib/domain/plan-figures";
import type { Workshop } from "@/lib/domain/workshop";
import { solvedBasket } from "@/lib/solver/solved-basket";

const SECONDS = 20;

/** @rule BUY-1 to BUY-5 */
export async function chooseBasket(workshop: Workshop, plan: Plan): Promise<PlannedBasket> {
  const list = shoppingListOf(workshop, plan);
  const { answer } = await solvedBasket(problemOf(workshop, list), { seconds: SECONDS });
  // Offers of a workshop have no most packs, so that any need and any minimum can be reached.
  if (answer.kind === "no basket") throw new Error("offers without a limit on packs did not make a basket");
  return plannedBasket(workshop, list, answer);
}
