/** How much is to be bought, opened to what is there, comes, goes and is lost by the day on which least is left. */
import { type Day, daysAfter, earlier, later } from "./calendar";
import type { Frame } from "./outlook";
import type { MaterialOutlook, ShelfEvent } from "./plan-figures";
import { quantity, type Stock } from "./quantity";

export interface LeastLeft {
  /** The first day, among those that a purchase can reach and is to cover, on which least is left. */
  readonly day: Day;
  readonly arrived: Stock;
  /** What the runs up to then need, whether the shelf can give it or not. */
  readonly needed: Stock;
  readonly runs: number;
  /** Out of date by then, of what is usable today or comes. */
  readonly lost: Stock;
  /** On hand and arrived, less needed and lost; below zero where runs are owed something. */
  readonly left: bigint;
}

/**
 * What leads to the amount to be bought, which is the safety stock less what is left.
 * @returns null where nothing is to be bought
 * @rule PLAN-8
 */
export function leastLeft(outlook: MaterialOutlook, { today, lastDay, coverDays }: Frame): LeastLeft | null {
  const from = earlier(outlook.firstArrival, lastDay);
  const to = earlier(daysAfter(from, coverDays), lastDay);
  const { balances } = outlook;
  const reached = balances.filter(({ day }, at) => day <= to && (balances[at + 1]?.day ?? lastDay + 1) > from);
  const least = reached.reduce((one, other) => (other.balance < one.balance ? other : one));
  if (least.balance >= (outlook.material.safetyStock?.quantity ?? 0n)) return null;
  const upTo = outlook.events.filter(({ day }) => day <= least.day);
  const drawn = upTo.flatMap((event) => (event.kind === "drawn" ? [event] : []));
  // Lots that are out of date today are not on hand.
  const lost = upTo.filter(({ kind, day }) => kind === "written off" && day > today);
  return {
    day: later(least.day, from),
    arrived: together(upTo.filter(({ kind }) => kind === "arrived")),
    needed: quantity<Stock>(drawn.reduce((all, { need }) => all + need, 0n)),
    runs: drawn.length,
    lost: together(lost),
    left: least.balance,
  };
}

const together = (events: readonly ShelfEvent[]): Stock =>
  quantity<Stock>(events.reduce((all, event) => ("quantity" in event ? all + event.quantity : all), 0n));
