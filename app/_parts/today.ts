/** What the dockets of the day are drawn from. */
import type { BetterDay } from "@/app/_ui/better-day";
import type { Carried } from "@/app/_ui/run-carried";
import type { BroughtForward } from "@/lib/domain/bring-forward";
import type { PlannedBasket } from "@/lib/domain/buying/basket-of-plan";
import type { Day } from "@/lib/domain/calendar";
import type { Matters } from "@/lib/domain/matters";
import type { Plan } from "@/lib/domain/plan-figures";
import type { Run, Workshop } from "@/lib/domain/workshop";

export interface Today {
  readonly workshop: Workshop;
  readonly today: Day;
  readonly plan: Plan;
  readonly matters: Matters;
  /** The orders that fill what is lacking for the least money; null while they are searched for, or where there are none. */
  readonly basket: PlannedBasket | null;
  /** Of the first runs that cannot be made: another day on which each could be, or null for none. */
  readonly better: ReadonlyMap<Run, BetterDay | null>;
  /** What could be made earlier to save of the lot that goes out of date first. */
  readonly forward: BroughtForward | null;
  readonly carriedOf: (run: Run) => Carried;
  /** Made as the page is drawn, so that an order drafted twice is one. */
  readonly newOrderId: (supplier: string) => string;
}
