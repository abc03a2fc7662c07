/** For how long a material lasts once a basket has come. @rule BUY-19 */
import { type Day, daysBetween } from "../calendar";
import type { MaterialOutlook } from "../plan-figures";
import { type Bought, projectedWith, shelfToCome } from "./keeping";
import type { Ahead } from "./purchase-in-frame";

export interface Lasting {
  /** The first day after it came with less than the safety stock; null where the plan does not look so far. */
  readonly lowOn: Day | null;
  /** Days beyond the plan's last that what is then left would last at the plan's pace; null where nothing is taken. */
  readonly daysBeyond: number | null;
}

/** The projection of the material again, with what was bought on the day on which it comes. */
export function lastingWith(
  outlook: Pick<MaterialOutlook, "ladder" | "events" | "material">,
  bought: readonly Bought[],
  { today, lastDay }: Ahead,
): Lasting {
  const safety: bigint = outlook.material.safetyStock?.quantity ?? 0n;
  const comes = Math.max(...bought.map(({ arrives }) => arrives));
  const { balances } = projectedWith(shelfToCome(outlook, today, lastDay), bought);
  const low = balances.find(({ day, balance }) => day >= comes && balance < safety);
  if (low) return { lowOn: low.day, daysBeyond: null };
  const taken = outlook.events.reduce((sum, event) => (event.kind === "drawn" ? sum + event.need : sum), 0n);
  const spare = (balances.at(-1)?.balance ?? 0n) - safety;
  const days = BigInt(daysBetween(today, lastDay));
  return { lowOn: null, daysBeyond: taken === 0n ? null : Number((spare * days) / taken) };
}
