/** What a maker lays down before anything is chosen: for how long to buy, from whom not, and whether it must come in time. */
import type { Day } from "../calendar";
import { daysBetween } from "../calendar";
import type { Material, Workshop } from "../workshop";
import type { ShoppingList } from "./shopping-list";

export interface BuyingFrame {
  /** Days to cover, null for the whole horizon, or as the workshop is set. */
  readonly cover: number | null | "as set";
  /** Suppliers that are not to be bought from, by id. */
  readonly leftOut: readonly string[];
  /** Nothing may come after the day by which it should be there. */
  readonly mustBeInTime: boolean;
}

/**
 * The workshop as the frame has it: what is planned from it needs what the frame is to cover, and knows no offer of a
 * supplier that is left out. Nothing of it is kept. The workshop itself where the frame changes nothing.
 * @rule BUY-15, BUY-16
 */
export function framed(workshop: Workshop, { cover, leftOut }: BuyingFrame): Workshop {
  if (cover === "as set" && leftOut.length === 0) return workshop;
  const out = new Set(leftOut);
  return {
    ...workshop,
    settings: cover === "as set" ? workshop.settings : { ...workshop.settings, coverDays: cover },
    offers: workshop.offers.filter(({ supplier }) => !out.has(supplier)),
  };
}

/** A material of which no offer that may be taken comes in time. */
export interface TooLate {
  readonly material: Material;
  readonly buyBy: Day;
  /** The first day on which any of it can come. */
  readonly arrives: Day;
  readonly days: number;
}

/** The list without what cannot come in time, and that beside it. @rule BUY-17 */
export function heldToTime(list: ShoppingList): { readonly list: ShoppingList; readonly tooLate: readonly TooLate[] } {
  // The candidates of a purchase are all in time, or none is.
  const isLate = ({ candidates }: ShoppingList["purchases"][number]): boolean => candidates.every(({ late }) => late);
  return {
    list: { ...list, purchases: list.purchases.filter((purchase) => !isLate(purchase)) },
    tooLate: list.purchases.filter(isLate).map(({ material, buyBy, candidates }) => {
      const arrives = Math.min(...candidates.map((candidate) => candidate.arrives)) as Day;
      return { material, buyBy, arrives, days: daysBetween(buyBy, arrives) };
    }),
  };
}
