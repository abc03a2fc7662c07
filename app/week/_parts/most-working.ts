/** The most units that there is enough for, opened down to the lots. @rule MAKE-3 */
import type { WorkingLine } from "@/app/_ui/working";
import type { Day } from "@/lib/domain/calendar";
import type { MostWorking } from "@/lib/domain/lots-drawn";
import { counted } from "@/lib/edge/counted";
import { stockInFull } from "@/lib/edge/figures";
import { lotsThere } from "./lot-lines";
import { unitsShown } from "./run-words";

interface Opened {
  readonly lines: readonly WorkingLine[];
  readonly notes: readonly string[];
}

/**
 * What is there, less what a run takes once, shared over the units.
 * @param when  when that was there: "usable today", "usable at its turn"
 */
export function mostLines(most: MostWorking, today: Day, when: string): Opened {
  const { limiting, lots, there, inBatch, least, mostUnits } = most;
  const { name, measure } = limiting;
  const here: WorkingLine = {
    figure: stockInFull(there, measure),
    reason: `of ${name} on the shelf and ${when}, in ${counted(lots.length, "lot", "lots")}`,
  };
  const held = [
    ...(lots.length === 0 ? [here] : [...lotsThere({ lots, measure, today }), { ...here, isResult: true }]),
    ...(inBatch > 0n
      ? [{ operator: "+" as const, figure: stockInFull(inBatch, measure), reason: "weighed into its batch already" }]
      : []),
  ];
  const result: WorkingLine = { figure: unitsShown(mostUnits), reason: "whole units", isResult: true };
  return { lines: [...held, ...(least === null ? [] : sharedOver(least, measure)), result], notes: notesOf(most) };
}

function sharedOver(
  { perUnit, fixed, under }: NonNullable<MostWorking["least"]>,
  measure: MostWorking["limiting"]["measure"],
): readonly WorkingLine[] {
  const line = (operator: "−" | "÷", over: bigint, reason: string): readonly WorkingLine[] =>
    over > 0n ? [{ operator, figure: stockInFull({ over, under }, measure), reason }] : [];
  return [...line("−", fixed, "taken once, whatever the units"), ...line("÷", perUnit, "for each unit, at the least")];
}

/** The proof: so many take no more than is there, and one more takes more. */
function notesOf({ limiting: { measure }, mostUnits, takes, oneMoreTakes, least }: MostWorking): readonly string[] {
  const one = `${stockInFull(oneMoreTakes, measure)}, more than is there`;
  return [
    mostUnits === 0n
      ? `One unit would take ${one}.`
      : `${unitsShown(mostUnits)} ${mostUnits === 1n ? "takes" : "take"} ${stockInFull(takes, measure)} at the least; one more would take ${one}.`,
    ...(least === null
      ? ["What of a premix is there made ahead is taken first, so that the units are found by trying sizes."]
      : []),
  ];
}
