/** What stands of a material at the end of a day, opened to everything that happens until then. @rule PLAN-1, PLAN-5 */
import type { Day } from "./calendar";
import type { MaterialOutlook, ShelfEvent } from "./plan-figures";

export type StandingChange = Extract<ShelfEvent, { readonly kind: "drawn" | "arrived" | "written off" }>;

/** Some changes, one after the other, and what they leave. */
export interface Standing {
  readonly day: Day;
  readonly changes: readonly StandingChange[];
  /** At the end of the day; below zero where it is owed to runs. */
  readonly left: bigint;
}

/** What is on hand of a material today, and what a projection makes of it. */
export type Projected = Pick<MaterialOutlook, "onHand" | "events" | "balances">;

/**
 * From what is on hand to the end of each of these days. What is owed and settled moves nothing in or out.
 * @param ends  rising; one standing for each of them, with what changed since the one before
 */
export function standingsAt(
  { onHand, events, balances }: Projected,
  ends: readonly Day[],
  today: Day,
): readonly Standing[] {
  const changes = events.filter(
    (event): event is StandingChange =>
      // Lots that are out of date today are not on hand.
      event.kind !== "settled" && !(event.kind === "written off" && event.day <= today),
  );
  return ends.map((day, at) => ({
    day,
    changes: changes.filter((change) => change.day <= day && change.day > (ends[at - 1] ?? -Infinity)),
    left: balances.findLast((balance) => balance.day <= day)?.balance ?? onHand,
  }));
}

/**
 * From what is on hand to the first day below the safety stock, and from there to the first on which a run cannot be
 * met; where there is neither, to the first of the days on which least is left.
 * @returns one for each of those days, none where nothing happens to it within the horizon
 */
export function standingUntil(outlook: MaterialOutlook, today: Day): readonly Standing[] {
  const { balances, shortOn, belowSafetyOn } = outlook;
  const days = [...new Set([belowSafetyOn, shortOn].filter((day) => day !== null))].sort((a, b) => a - b);
  const least = balances.toSorted((a, b) => Number(a.balance > b.balance) - Number(a.balance < b.balance)).at(0);
  const ends = days.length > 0 ? days : least === undefined ? [] : [least.day];
  const standings = standingsAt(outlook, ends, today);
  return standings.every((standing) => standing.changes.length === 0) ? [] : standings;
}
