/** What a ribbon shows, one thing after another, each with its place and its words: the drawing walked by keyboard. */
import { type Day, daysAfter } from "@/lib/domain/calendar";
import type { MaterialOutlook, ShelfEvent } from "@/lib/domain/plan-figures";
import type { Stock } from "@/lib/domain/quantity";
import { dayShown, stockShown } from "./figures";
import { spanOf, tickOf, timed } from "./ribbon-time";

export interface RibbonStep {
  /** Across the ribbon, percent. */
  readonly at: number;
  readonly says: string;
}

interface Strip {
  readonly today: Day;
  readonly lastDay: Day;
  /** What a run makes, by its product's id. */
  readonly productName: (product: string) => string;
}

/** Today's stock, the order day, and each change of the stock to the last day, in the order of their places. */
export function ribbonSteps(outlook: MaterialOutlook, { today, lastDay, productName }: Strip): readonly RibbonStep[] {
  const { material, onHand, events, orderBy } = outlook;
  const span = spanOf(today, lastDay);
  const amount = (quantity: Stock, side: "there" | "lacking"): string => stockShown(quantity, material.measure, side);
  const order =
    orderBy === null ? [] : [{ tick: orderBy <= today ? 0 : tickOf(orderBy, today), says: orderWords(orderBy, today) }];
  const changes = timed(events, today).map(({ tick, event }) => ({
    tick,
    says: `${dayOf(event, today)}: ${changeWords(event, amount, productName)}; ${standing(event, amount)}.`,
  }));
  return [{ tick: 0, says: `Today: ${amount(onHand, "there")} on the shelf.` }, ...order, ...changes]
    .sort((one, other) => one.tick - other.tick)
    .map(({ tick, says }) => ({ at: Math.round((tick / span) * 10_000) / 100, says }));
}

function orderWords(orderBy: Day, today: Day): string {
  if (orderBy < today) return `The order day was ${dayShown(orderBy, today)}.`;
  return orderBy === today ? "Order today." : `${dayShown(orderBy, today)}: the last day to order.`;
}

/** What goes out of date is told on the last day on which it could be used. */
function dayOf({ kind, day }: ShelfEvent, today: Day): string {
  const told = kind === "written off" ? daysAfter(day, -1) : day;
  return told === today ? "Today" : dayShown(told, today);
}

type Amount = (quantity: Stock, side: "there" | "lacking") => string;

function changeWords(event: ShelfEvent, amount: Amount, productName: (product: string) => string): string {
  switch (event.kind) {
    case "written off":
      return `${amount(event.quantity, "there")} of lot ${event.lot} goes out of date`;
    case "arrived":
      return `${amount(event.quantity, "there")} comes in`;
    case "settled":
      return `${amount(event.quantity, "there")} of it goes to earlier runs`;
    case "drawn":
      return `${productName(event.run.product)} draws ${amount(event.need, "lacking")}`;
  }
}

const standing = ({ shelf, owed }: ShelfEvent, amount: Amount): string =>
  owed > 0n ? `short by ${amount(owed, "lacking")}` : `${amount(shelf, "there")} left`;
