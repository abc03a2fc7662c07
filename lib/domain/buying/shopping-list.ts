/** What is to be bought: the shape that candidates.ts fills from a plan, and that a basket is chosen for. */
import type { Day } from "../calendar";
import type { Stock } from "../quantity";
import type { LeastLeft } from "../to-buy";
import type { Material, Offer } from "../workshop";
import type { LeftOverWorth } from "./basket-problem";
import type { Keeping } from "./keeping";

export interface ShoppingList {
  readonly purchases: readonly Purchase[];
  /** Materials that are to be bought and that nobody offers, in the file's order. */
  readonly unsourced: readonly Material[];
}

/** A material that is to be bought and that somebody offers. */
export interface Purchase {
  readonly material: Material;
  readonly wanted: Stock;
  /**
   * The day on which least is left in the days to be covered, and what leads to that. Where some of it would go
   * out of date before use, less is wanted than that.
   */
  readonly least: LeastLeft | null;
  readonly onHand: Stock;
  /** The day by which it should be there. */
  readonly buyBy: Day;
  /** The latest day on which it may be ordered, by the plan; the plan's day where that names none. */
  readonly orderBy: Day;
  /** At least one, in the file's order. */
  readonly candidates: readonly Candidate[];
  /** What its leftovers count for, or null for nothing. */
  readonly leftOver: LeftOverWorth | null;
  /** What of it must keep until it is used, or null where it may go out of date or cannot. */
  readonly keeping: Keeping | null;
}

/** An offer with the day on which it comes if it is ordered today. */
export interface Candidate {
  readonly offer: Offer;
  readonly arrives: Day;
  /** It comes after the day by which it should be there. */
  readonly late: boolean;
  /** The last day of use of what comes, or null where that is not known. */
  readonly expires: Day | null;
}
