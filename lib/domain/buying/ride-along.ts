/** Only what must be ordered by a day, and what rides along with it free of shipping. @rule BUY-18 */
import type { Day } from "../calendar";
import type { Purchase, ShoppingList } from "./shopping-list";

export interface DueList {
  /** What must be ordered by the day. */
  readonly due: ShoppingList;
  /** What may wait, unless it rides along. */
  readonly others: readonly Purchase[];
}

export function dueBy(list: ShoppingList, day: Day): DueList {
  return {
    due: { ...list, purchases: list.purchases.filter(({ orderBy }) => orderBy <= day) },
    others: list.purchases.filter(({ orderBy }) => orderBy > day),
  };
}

export interface RidingList {
  readonly list: ShoppingList;
  /** What none of the suppliers used has, and which waits. */
  readonly waiting: readonly Purchase[];
}

/**
 * What must be ordered and whatever else the same suppliers offer: nobody else is ordered from, so nothing that rides
 * along brings shipping of its own.
 * @param used  ids of the suppliers of the basket for what must be ordered
 */
export function ridingAlong({ due, others }: DueList, used: ReadonlySet<string>): RidingList {
  const fromUsed = (purchase: Purchase): Purchase => ({
    ...purchase,
    candidates: purchase.candidates.filter(({ offer }) => used.has(offer.supplier)),
  });
  const riding = others.map(fromUsed);
  return {
    list: {
      ...due,
      purchases: [...due.purchases.map(fromUsed), ...riding.filter(({ candidates }) => candidates.length > 0)],
    },
    waiting: others.filter((_, at) => riding[at]?.candidates.length === 0),
  };
}
