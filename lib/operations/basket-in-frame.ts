/** The least-cost basket in a maker's frame, and what the frame makes impossible. @rule BUY-10, BUY-11, BUY-18 */
import type { PlannedBasket } from "@/lib/domain/buying/basket-of-plan";
import { type BuyingFrame, type FrameFault, overCap } from "@/lib/domain/buying/buying-frame";
import { shoppingListIn } from "@/lib/domain/buying/candidates";
import { minimumsOutOfReach } from "@/lib/domain/buying/minimum-out-of-reach";
import { problemOf } from "@/lib/domain/buying/problem-of-list";
import { dueBy, ridingAlong } from "@/lib/domain/buying/ride-along";
import type { Purchase, ShoppingList } from "@/lib/domain/buying/shopping-list";
import { byId } from "@/lib/domain/index-by-id";
import type { MicroUnits } from "@/lib/domain/money";
import { lineTooLarge } from "@/lib/domain/orders";
import { quantity } from "@/lib/domain/quantity";
import type { Plan } from "@/lib/domain/plan-figures";
import type { Workshop } from "@/lib/domain/workshop";
import { basketOf, type ChosenBasket, type Patience } from "./choose-basket";

export interface BasketInFrame {
  /** What the basket is for. */
  readonly list: ShoppingList;
  /** What is lacking too, and may wait by the frame. */
  readonly waiting: readonly Purchase[];
  readonly faults: readonly FrameFault[];
  /** Null where nothing keeps every rule; the faults say which. */
  readonly chosen: ChosenBasket | null;
}

/** Steps for the question which minimum is out of reach: some tens of milliseconds. */
const EFFORT_FOR_MINIMUMS = 60_000;

export async function basketInFrame(
  workshop: Workshop,
  plan: Plan,
  frame: BuyingFrame,
  patience: Patience,
): Promise<BasketInFrame> {
  const framed = shoppingListIn(workshop, plan, frame);
  const { list, waiting, chosen } = await chosenFor(workshop, framed.list, frame, patience);
  const faults = [...framed.faults];
  if (chosen === null) {
    const supplierOf = byId("supplier", workshop.suppliers);
    for (const { supplier, by } of minimumsOutOfReach(problemOf(workshop, list), EFFORT_FOR_MINIMUMS))
      faults.push({ kind: "minimum out of reach", supplier: supplierOf(supplier), by });
  } else {
    faults.push(...tooLargeIn(chosen.planned));
    if (chosen.chosen === "so far") return { list, waiting, faults, chosen };
    const over = overCap({ total: chosen.basket.total, gap: gapOf(chosen.planned) }, frame.cap);
    if (over) faults.push(over);
  }
  return { list, waiting, faults, chosen };
}

const tooLargeIn = ({ orders }: PlannedBasket): readonly FrameFault[] =>
  orders.flatMap(({ lines }) =>
    lines.flatMap(({ offer, packs }): readonly FrameFault[] => {
      const found = lineTooLarge(offer, packs);
      return found ? [{ kind: "line too large", ...found }] : [];
    }),
  );

const gapOf = ({ gap }: PlannedBasket): MicroUnits => gap ?? quantity<MicroUnits>(0n);

async function chosenFor(
  workshop: Workshop,
  whole: ShoppingList,
  { orderBy, cap }: BuyingFrame,
  patience: Patience,
): Promise<Omit<BasketInFrame, "faults">> {
  const basketFor = (list: ShoppingList) => basketOf(workshop, list, problemOf(workshop, list, cap), patience);
  if (orderBy === null) return { list: whole, waiting: [], chosen: await basketFor(whole) };
  const parted = dueBy(whole, orderBy);
  const dueAlone = { list: parted.due, waiting: parted.others, chosen: await basketFor(parted.due) };
  if (dueAlone.chosen === null || dueAlone.chosen.chosen === "so far" || parted.others.length === 0) return dueAlone;
  const { list, waiting } = ridingAlong(
    parted,
    new Set(dueAlone.chosen.planned.orders.map(({ supplier }) => supplier.id)),
  );
  const riding = { list, waiting, chosen: await basketFor(list) };
  // What rides along is not worth going over the cap for.
  const isOver = cap !== null && (riding.chosen === null || riding.chosen.basket.total > cap);
  return isOver || riding.chosen === null ? dueAlone : riding;
}
