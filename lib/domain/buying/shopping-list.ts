/** What is to be bought: the shape that candidates.ts fills from a plan, and that a basket is chosen for. */
import type { Day } from "../calendar";
import type { Stock } from "../quantity";
import type { Material, Offer } from "../workshop";

export interface ShoppingList {
  readonly purchases: readonly Purchase[];
  /** Materials that are to be bought and that nobody offers, in the file's order. */
  readonly unsourced: readonly Material[];
}

/** A material that is to be bought and that somebody offers. */
export interface Purchase {
  readonly material: Material;
  readonly wanted: Stock;
  /** The day by which it should be there. */
  readonly buyBy: Day;
  /** At least one, in the file's order. */
  readonly candidates: readonly Candidate[];
}

/** An offer with the day on which it comes if it is ordered today. */
export interface Candidate {
  readonly offer: Offer;
  readonly arrives: Day;
  /** It comes after the day by which it should be there. */
  readonly late: boolean;
}
