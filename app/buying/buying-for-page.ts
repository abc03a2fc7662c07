import "server-only";
import { planForPage, type Planned } from "@/app/plan-for-page";
import {
  type BasketDifference,
  deciderOf,
  type Decider,
  differenceOf,
  withoutOffer,
} from "@/lib/domain/buying/basket-difference";
import type { PlannedLine } from "@/lib/domain/buying/basket-of-plan";
import { shoppingListOf } from "@/lib/domain/buying/candidates";
import type { ShoppingList } from "@/lib/domain/buying/shopping-list";
import { framed, heldToTime, type TooLate } from "@/lib/domain/buying/frame";
import { problemOf } from "@/lib/domain/buying/problem-of-list";
import { plan } from "@/lib/domain/plan";
import type { Plan } from "@/lib/domain/plan-figures";
import type { Workshop } from "@/lib/domain/workshop";
import { type FrameReading, readFrame } from "@/lib/edge/forms/buying-frame";
import { basketOf, basketOfList, type ChosenBasket } from "@/lib/operations/choose-basket";

/** Time for a search that is not answered at once. A maker waits so long at most. */
const SECONDS = 8;

export interface Buying {
  readonly found: Planned;
  readonly reading: FrameReading;
  /** The workshop and its plan as the frame has them. */
  readonly workshop: Workshop;
  readonly plan: Plan;
  readonly list: ShoppingList;
  readonly tooLate: readonly TooLate[];
  readonly chosen: ChosenBasket;
}

/** What is to be bought in the frame that the address asks for, and the basket for it; null where no workshop is open. */
export async function buyingForPage(
  parameters: Readonly<Record<string, string | readonly string[] | undefined>>,
): Promise<Buying | null> {
  const found = await planForPage();
  if (found === null) return null;
  const reading = readFrame(parameters, found.workshop);
  const workshop = framed(found.workshop, reading.frame);
  const itsPlan = workshop === found.workshop ? found.plan : plan(workshop, found.today);
  const whole = shoppingListOf(workshop, itsPlan);
  const { list, tooLate } = reading.frame.mustBeInTime ? heldToTime(whole) : { list: whole, tooLate: [] };
  const chosen = await basketOfList(workshop, list, SECONDS);
  return { found, reading, workshop, plan: itsPlan, list, tooLate, chosen };
}

export type Why =
  | { readonly kind: "no other offer" }
  | {
      readonly kind: "next best";
      readonly decider: Decider;
      readonly difference: BasketDifference;
      /** Whether both baskets are proven, so that the difference is. */
      readonly isProven: boolean;
    };

/** What the next best basket without the line's offer would cost, and what decided. @rule BUY-18 */
export async function whyOf(line: PlannedLine, { workshop, list, chosen }: Buying): Promise<Why> {
  const without = withoutOffer(problemOf(workshop, list), line.offer.id);
  if (without === null) return { kind: "no other offer" };
  const other = await basketOf(workshop, list, without, SECONDS);
  const difference = differenceOf(chosen.planned, other.planned);
  return {
    kind: "next best",
    decider: deciderOf(line, difference),
    difference,
    isProven: chosen.planned.gap === null && other.planned.gap === null,
  };
}
