/** A purchase without each rule of its frame in turn, to ask which of them decided a line. @rule BUY-12 */
import { type BuyingFrame, OPEN_FRAME } from "@/lib/domain/buying/buying-frame";
import type { BasketProblem } from "@/lib/domain/buying/basket-problem";
import { shoppingListIn } from "@/lib/domain/buying/candidates";
import { withoutWorth } from "@/lib/domain/buying/least-basket";
import type { WithoutRule } from "@/lib/domain/buying/line-reasons";
import { problemOf } from "@/lib/domain/buying/problem-of-list";
import type { Plan } from "@/lib/domain/plan-figures";
import type { Workshop } from "@/lib/domain/workshop";

/** @param problem  of the purchase as the frame has it, whose materials alone are asked about */
export function withoutEachRule(
  workshop: Workshop,
  plan: Plan,
  frame: BuyingFrame,
  problem: BasketProblem,
): readonly WithoutRule[] {
  const ids = new Set(problem.materials.map(({ id }) => id));
  const inFrame = (change: Partial<BuyingFrame>): BasketProblem => {
    const { list } = shoppingListIn(workshop, plan, { ...frame, ...change });
    const purchases = list.purchases.filter(({ material }) => ids.has(material.id));
    return problemOf(workshop, { ...list, purchases }, frame.cap);
  };
  const { leftOut, heldTo, chosen } = OPEN_FRAME;
  const asked: WithoutRule[] = [];
  if (frame.arrival !== "any day") asked.push({ rule: "arrival", problem: inFrame({ arrival: "any day" }) });
  if (frame.mustKeep) asked.push({ rule: "goes out of date", problem: inFrame({ mustKeep: false }) });
  if (frame.leftOvers > 0n) asked.push({ rule: "leftovers count", problem: withoutWorth(problem) });
  if (frame.leftOut.size + frame.heldTo.size + frame.chosen.size > 0)
    asked.push({ rule: "who is left out or held to", problem: inFrame({ leftOut, heldTo, chosen }) });
  return asked;
}
