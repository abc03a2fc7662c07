/** Days for runs that cannot be made, for the few that are looked at closely. @rule SUGGEST-1 to SUGGEST-4 */
import type { Day } from "@/lib/domain/calendar";
import { byId } from "@/lib/domain/index-by-id";
import type { RunOutlook } from "@/lib/domain/plan-figures";
import { type Planned, suggestedDays } from "@/lib/domain/suggested-days";
import type { Run } from "@/lib/domain/workshop";
import { dayShown } from "@/lib/edge/figures";

export interface BetterDay {
  readonly day: Day;
  /** In words: each order that must come in. */
  readonly dependsOn: readonly string[];
}

/** The earliest day on which each of the runs could be made in full, or null where none was found. */
export const betterDays = (short: readonly RunOutlook[], planned: Planned): ReadonlyMap<Run, BetterDay | null> =>
  new Map(short.map((outlook) => [outlook.run, betterDay(outlook, planned)]));

function betterDay(outlook: RunOutlook, planned: Planned): BetterDay | null {
  const [found] = suggestedDays(outlook, planned, 1).days;
  if (!found) return null;
  const { workshop, plan } = planned;
  const [orderOf, supplierOf] = [byId("order", workshop.orders), byId("supplier", workshop.suppliers)];
  return {
    day: found.day,
    dependsOn: found.dependsOn.map(
      ({ order, day }) =>
        `order ${order} of ${supplierOf(orderOf(order).supplier).name} comes in by ${dayShown(day, plan.today)}`,
    ),
  };
}
