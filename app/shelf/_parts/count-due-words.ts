/** What is said of a material that is counted by a rhythm. @rule LEDGER-25 */
import type { Day } from "@/lib/domain/calendar";
import type { CountDue, Rhythm } from "@/lib/domain/ledger/counts-due";
import { counted } from "@/lib/edge/counted";
import { dayShown } from "@/lib/edge/figures";

/** `every 30 days or 4 runs`. */
export function rhythmInWords(rhythm: NonNullable<Rhythm>): string {
  const { days, draws } = rhythm;
  const parts = [
    ...(days === null ? [] : [counted(days, "day", "days")]),
    ...(draws === null ? [] : [counted(draws, "run", "runs")]),
  ];
  return `every ${parts.join(" or ")}`;
}

/** `last counted Mon 2 Nov; three runs since`. */
export function sinceInWords({ countedOn, draws }: CountDue, today: Day): string {
  const runs = `${counted(draws, "run", "runs")} since`;
  return countedOn === null ? `never counted; ${runs}` : `last counted ${dayShown(countedOn, today)}; ${runs}`;
}
