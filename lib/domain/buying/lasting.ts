/** For how long a material lasts once a basket has come, opened to what stands at the end of that. @rule BUY-19 */
import { type Day, daysBetween } from "../calendar";
import type { Stock } from "../quantity";
import type { MaterialOutlook, ShelfEvent } from "../plan-figures";
import { type Standing, standingsAt } from "../standing-until";
import { type Bought, projectedWith, shelfToCome } from "./keeping";
import type { Ahead } from "./purchase-in-frame";

export interface Lasting {
  /** The first day after it came with less than the safety stock; null where the plan does not look so far. */
  readonly lowOn: Day | null;
  readonly onHand: Stock;
  /** From what is on hand, with what is bought, to the end of that day, else of the plan's last. */
  readonly standing: Standing;
  /** What is left at the plan's end beyond the safety stock; null where the plan comes to less before. */
  readonly beyond: Beyond | null;
}

export interface Beyond {
  readonly spare: bigint;
  /** What runs need up to the plan's last day, and in how many days. */
  readonly taken: bigint;
  readonly days: number;
  /** For how long the spare lasts at that pace, rounded down; null where nothing is taken. */
  readonly daysMore: number | null;
}

/**
 * The projection of the material again, with what was bought on the day on which it comes.
 * @returns null where some of it comes after the plan's last day, so that the plan does not say
 */
export function lastingWith(
  outlook: Pick<MaterialOutlook, "ladder" | "events" | "material" | "onHand">,
  bought: readonly Bought[],
  { today, lastDay }: Ahead,
): Lasting | null {
  const safety: bigint = outlook.material.safetyStock?.quantity ?? 0n;
  const comes = Math.max(...bought.map(({ arrives }) => arrives));
  if (comes > lastDay) return null;
  const { balances, events } = projectedWith(shelfToCome(outlook, today, lastDay), bought);
  const lowOn = balances.find(({ day, balance }) => day >= comes && balance < safety)?.day ?? null;
  const { onHand } = outlook;
  const projected = { onHand, events: withRunsOf(outlook.events, events), balances };
  const [standing] = standingsAt(projected, [lowOn ?? lastDay], today);
  if (standing === undefined) throw new Error("a day without what stands on it");
  if (lowOn !== null) return { lowOn, onHand, standing, beyond: null };
  const taken = outlook.events.reduce((sum, event) => (event.kind === "drawn" ? sum + event.need : sum), 0n);
  const [spare, days] = [standing.left - safety, daysBetween(today, lastDay)];
  const daysMore = taken === 0n ? null : Number((spare * BigInt(days)) / taken);
  return { lowOn, onHand, standing, beyond: { spare, taken, days, daysMore } };
}

/** The same runs draw in the same order as without the purchase. */
function withRunsOf(planned: readonly ShelfEvent[], events: readonly ShelfEvent[]): readonly ShelfEvent[] {
  const runs = planned.flatMap((event) => (event.kind === "drawn" ? [event.run] : []));
  let next = 0;
  return events.map((event) => (event.kind === "drawn" ? { ...event, run: runs[next++] ?? event.run } : event));
}
