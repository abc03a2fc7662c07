/** What a ribbon shows, one thing after another, each with its place and its words: the drawing walked by keyboard. */
import { type Day, daysAfter } from "@/lib/domain/calendar";
import type { MaterialOutlook, ShelfEvent } from "@/lib/domain/plan-figures";
import type { Stock } from "@/lib/domain/quantity";
import { dayShown, stockShown } from "./figures";
import { calledLot } from "./ladder-words";
import { lastDayOfUse } from "./ribbon-sentence";
import { percentAcross, spanOf, tickOf, timed } from "./ribbon-time";

export interface RibbonStep {
  /** Across the ribbon, as its drawing has it. */
  readonly at: string;
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
  const amount: Amount = (quantity, side) => stockShown(quantity, material.measure, side);
  const order =
    orderBy === null ? [] : [{ tick: orderBy <= today ? 0 : tickOf(orderBy, today), says: orderWords(orderBy, today) }];
  const changeWords = wordsOfChanges(outlook, today, amount, productName);
  const changes = timed(events, today).map(({ tick, event }) => ({
    tick,
    says: `${changeWords(event)}; ${standing(event, amount)}.`,
  }));
  return [{ tick: 0, says: `Today: ${amount(onHand, "there")} on the shelf.` }, ...order, ...changes]
    .sort((one, other) => one.tick - other.tick)
    .map(({ tick, says }) => ({ at: percentAcross(tick, span), says }));
}

function orderWords(orderBy: Day, today: Day): string {
  if (orderBy < today) return `The order day was ${dayShown(orderBy, today)}.`;
  return orderBy === today ? "Order today." : `${dayShown(orderBy, today)}: the last day to order.`;
}

type Amount = (quantity: Stock, side: "there" | "lacking") => string;

/** What happens, and when; what goes out of date is told on the last day on which it could be used. */
function wordsOfChanges(
  outlook: MaterialOutlook,
  today: Day,
  amount: Amount,
  productName: (product: string) => string,
): (event: ShelfEvent) => string {
  const lastUse = new Map(outlook.expiring.map((each) => [each.lot, lastDayOfUse(each)]));
  const shown = (day: Day): string => (day === today ? "Today" : dayShown(day, today));
  return (event) => {
    switch (event.kind) {
      case "written off": {
        const [last, lost] = [
          lastUse.get(event.lot) ?? event.day,
          `${amount(event.quantity, "there")} of ${calledLot(outlook, event.lot)}`,
        ];
        return last < daysAfter(event.day, -1)
          ? `${shown(event.day)}: ${lost} is out of date since ${dayShown(last, today)}`
          : `${shown(last)}: ${lost} goes out of date`;
      }
      case "arrived":
        return `${shown(event.day)}: ${amount(event.quantity, "there")} comes in`;
      case "settled":
        return `${shown(event.day)}: ${amount(event.quantity, "there")} of it goes to earlier runs`;
      case "drawn":
        return `${shown(event.day)}: ${productName(event.run.product)} draws ${amount(event.need, "lacking")}`;
    }
  };
}

const standing = ({ shelf, owed }: ShelfEvent, amount: Amount): string =>
  owed > 0n ? `short by ${amount(owed, "lacking")}` : `${amount(shelf, "there")} left`;
