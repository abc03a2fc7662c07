/** The basket of a plan without a thread: test workshops are small enough to be searched at once. */
import { type PlannedBasket, plannedBasket } from "@/lib/domain/buying/basket-of-plan";
import { shoppingListOf } from "@/lib/domain/buying/candidates";
import { leastBasket } from "@/lib/domain/buying/least-basket";
import { problemOf } from "@/lib/domain/buying/problem-of-list";
import type { Plan } from "@/lib/domain/plan-figures";
import type { Workshop } from "@/lib/domain/workshop";

const EFFORT = 5_000_000;

export function leastBasketFor(workshop: Workshop, plan: Plan): PlannedBasket {
  const list = shoppingListOf(workshop, plan);
  const answer = leastBasket(problemOf(workshop, list), { effort: EFFORT });
  if (answer.kind === "no basket") throw new Error("a workshop's offers can always make a basket");
  return plannedBasket(workshop, list, answer);
}
