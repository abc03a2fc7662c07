/** How far an order is, as screens say it. @rule ORDER-1 */
import type { Day } from "@/lib/domain/calendar";
import { daysBetween } from "@/lib/domain/calendar";
import { isAwaited, type OrderProgress, outstanding, progressOf } from "@/lib/domain/orders";
import type { Order } from "@/lib/domain/workshop";
import { counted } from "./counted";
import { dayShown, daysShown } from "./figures";

export const PROGRESS_WORDS: Readonly<Record<OrderProgress, string>> = {
  drafted: "Drafted",
  ordered: "Ordered",
  "partly received": "Partly received",
  received: "Received",
  "given up": "Given up",
};

/** `Was due Thu 26 Nov, two days ago.` for what is awaited, else what became of it. */
export function orderSays(order: Order, today: Day): string {
  const progress = progressOf(order);
  const came = order.lines.filter((line) => outstanding(line) === 0n).length;
  const of = `${String(came)} of ${counted(order.lines.length, "line", "lines")} came whole`;
  switch (progress) {
    case "drafted":
      return `Drafted ${dayShown(order.placed, today)} and not ordered yet, so the plan does not expect it.`;
    case "ordered":
      return `Ordered ${dayShown(order.placed, today)}. It ${dueSays(order, today)}`;
    case "partly received":
      return `Ordered ${dayShown(order.placed, today)}, partly received: ${of}. The rest ${dueSays(order, today)}`;
    case "received":
      return `Ordered ${dayShown(order.placed, today)}, all of it has come.`;
    case "given up":
      return `Ordered ${dayShown(order.placed, today)} and given up${came > 0 ? `, ${of}` : ""}: nothing more is expected.`;
  }
}

function dueSays({ due }: Order, today: Day): string {
  const overdue = daysBetween(due, today);
  if (overdue > 0) return `was due ${dayShown(due, today)}, ${daysShown(overdue)} ago.`;
  return overdue === 0 ? "is due today." : `is due ${dayShown(due, today)}.`;
}

/** Whether it should have come. */
export const isOverdue = (order: Order, today: Day): boolean => isAwaited(order) && order.due < today;
