/** How much is to be bought: what is to stay and what the runs need, less what is there and comes. @rule PLAN-8 */
import type { Day } from "@/lib/domain/calendar";
import type { LeastLeft } from "@/lib/domain/to-buy";
import type { Material } from "@/lib/domain/workshop";
import { counted } from "@/lib/edge/counted";
import { dayShown } from "@/lib/edge/figures";
import { figuresThatAdd, type Sum } from "@/lib/edge/figures-that-add";
import type { WorkingLine } from "./working";

export interface ToBuy {
  readonly material: Material;
  readonly onHand: bigint;
  readonly least: LeastLeft;
  /** What is bought: where some of what is lacking would go out of date before use, less than that. */
  readonly wanted: bigint;
  readonly today: Day;
}

const safetyOf = ({ material }: ToBuy): bigint => material.safetyStock?.quantity ?? 0n;

/** What its lines add up, and what they come to. */
export function toBuySum(of: ToBuy): Sum {
  const { arrived, needed, lost, left } = of.least;
  const notBought = safetyOf(of) - left - of.wanted;
  return [safetyOf(of), -of.onHand, -arrived, needed, lost, -notBought, of.wanted];
}

/** @param figure  how its figures are shown, where the working has more lines than these */
export function toBuyLines(of: ToBuy, figure?: (held: bigint) => string): readonly WorkingLine[] {
  const { material, onHand, least, wanted, today } = of;
  const { day, arrived, needed, runs, lost, left } = least;
  const shown = figure ?? figuresThatAdd([toBuySum(of)], material.measure);
  const until = day === today ? "today" : `to ${dayShown(day, today)}`;
  const line = (operator: "+" | "−", held: bigint, reason: string): readonly WorkingLine[] =>
    held === 0n ? [] : [{ operator, figure: shown(held), reason }];
  return [
    { figure: shown(safetyOf(of)), reason: "is to stay, the safety stock" },
    ...line("−", onHand, "on the shelf"),
    ...line("−", arrived, `on the way, and in by ${dayShown(day, today)}`),
    ...line("+", needed, `for ${counted(runs, "run", "runs")} ${until}`),
    ...line("+", lost, "out of date by then"),
    ...line("−", safetyOf(of) - left - wanted, "that would go out of date before a run takes it, not bought"),
    {
      figure: shown(wanted),
      reason: `to buy: ${left < 0n ? `${shown(-left)} owed to runs` : `${shown(left)} left`} on ${dayShown(day, today)}, the day with least`,
      isResult: true,
    },
  ];
}
