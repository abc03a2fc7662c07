/** How much is to be bought: what is to stay and what the runs need, less what is there and comes. @rule PLAN-8 */
import type { Day } from "@/lib/domain/calendar";
import type { LeastLeft } from "@/lib/domain/to-buy";
import type { Material } from "@/lib/domain/workshop";
import { counted } from "@/lib/edge/counted";
import { dayShown } from "@/lib/edge/figures";
import { signedStock } from "./standing-working";
import type { WorkingLine } from "./working";

export interface ToBuy {
  readonly material: Material;
  readonly onHand: bigint;
  readonly least: LeastLeft;
  /** What is bought: where some of what is lacking would go out of date before use, less than that. */
  readonly wanted: bigint;
  readonly today: Day;
}

/** Exactly, so that each line can be added up. */
export function toBuyLines({ material, onHand, least, wanted, today }: ToBuy): readonly WorkingLine[] {
  const { day, arrived, needed, runs, lost, left } = least;
  const safety = material.safetyStock?.quantity ?? 0n;
  const exactly = (held: bigint): string => signedStock(held, { material });
  const until = day === today ? "today" : `to ${dayShown(day, today)}`;
  const line = (operator: "+" | "−", held: bigint, reason: string): readonly WorkingLine[] =>
    held === 0n ? [] : [{ operator, figure: exactly(held), reason }];
  return [
    { figure: exactly(safety), reason: "is to stay, the safety stock" },
    ...line("−", onHand, "on the shelf"),
    ...line("−", arrived, `on the way, and in by ${dayShown(day, today)}`),
    ...line("+", needed, `for ${counted(runs, "run", "runs")} ${until}`),
    ...line("+", lost, "out of date by then"),
    ...line("−", safety - left - wanted, "that would go out of date before a run takes it, not bought"),
    {
      figure: exactly(wanted),
      reason: `to buy: ${left < 0n ? `${exactly(-left)} owed to runs` : `${exactly(left)} left`} on ${dayShown(day, today)}, the day with least`,
      isResult: true,
    },
  ];
}
