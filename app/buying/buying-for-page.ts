import "server-only";
import { planForPage, type Planned } from "@/app/plan-for-page";
import { type BasketDifference, differenceOf, withoutOffer } from "@/lib/domain/buying/basket-difference";
import type { PlannedLine } from "@/lib/domain/buying/basket-of-plan";
import type { FrameFault } from "@/lib/domain/buying/buying-frame";
import { shoppingListIn } from "@/lib/domain/buying/candidates";
import { type DecidingRule, lineReasons } from "@/lib/domain/buying/line-reasons";
import { problemOf } from "@/lib/domain/buying/problem-of-list";
import type { ShoppingList } from "@/lib/domain/buying/shopping-list";
import { type FrameReading, readFrame } from "@/lib/edge/forms/buying-frame";
import { basketOf, basketOfList, type ChosenBasket } from "@/lib/operations/choose-basket";

/** Time for a search that is not answered at once. A maker waits so long at most. */
const SECONDS = 8;
/** Steps for each question about the rules that decided, which are asked on this thread: some tens of milliseconds. */
const EFFORT_FOR_RULES = 60_000;

export interface Buying {
  readonly found: Planned;
  readonly reading: FrameReading;
  readonly list: ShoppingList;
  /** What the frame makes impossible. */
  readonly faults: readonly FrameFault[];
  readonly chosen: ChosenBasket;
}

/** What is to be bought in the frame that the address asks for, and the basket for it; null where no workshop is open. */
export async function buyingForPage(
  parameters: Readonly<Record<string, string | readonly string[] | undefined>>,
): Promise<Buying | null> {
  const found = await planForPage();
  if (found === null) return null;
  const reading = readFrame(parameters, found.workshop);
  const { list, faults } = shoppingListIn(found.workshop, found.plan, reading.frame);
  const chosen = await basketOfList(found.workshop, list, SECONDS);
  return { found, reading, list, faults, chosen };
}

export type Why =
  | { readonly kind: "no other offer" }
  | {
      readonly kind: "next best";
      readonly decidedBy: readonly DecidingRule[];
      readonly difference: BasketDifference;
      /** Whether both baskets are proven, so that the difference is. */
      readonly isProven: boolean;
    };

/** What the next best basket without the line's offer would cost, and what decided. @rule BUY-12 */
export async function whyOf({ offer, packs }: PlannedLine, { found, list, chosen }: Buying): Promise<Why> {
  const { workshop } = found;
  const problem = problemOf(workshop, list);
  const without = withoutOffer(problem, offer.id);
  if (without === null) return { kind: "no other offer" };
  const other = await basketOf(workshop, list, without, SECONDS);
  const { basket, planned } = chosen;
  // Asked about this line alone: the reasons of a whole basket take as many searches for each of its lines.
  const asked = { kind: "basket" as const, basket, gap: planned.gap, packs: new Map([[offer.id, packs]]) };
  const [reason] = lineReasons(problem, asked, EFFORT_FOR_RULES);
  return {
    kind: "next best",
    decidedBy: reason?.decidedBy ?? [],
    difference: differenceOf(planned, other.planned),
    isProven: planned.gap === null && other.planned.gap === null,
  };
}
