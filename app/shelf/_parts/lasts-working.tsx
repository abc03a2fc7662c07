import type { ReactNode } from "react";
import { HowItComes } from "@/app/_ui/how-it-comes";
import { onHandLine, standingFigures, standingLines } from "@/app/_ui/standing-working";
import { type Standing, standingUntil } from "@/lib/domain/standing-until";
import { dayShown, daysShown } from "@/lib/edge/figures";
import { calledLot } from "@/lib/edge/ladder-words";
import { daysBetween } from "@/lib/domain/calendar";
import type { MaterialPart } from "./shelf";

/** How long it lasts, opened to everything that is drawn, comes in or goes out of date until then. @rule PLAN-5 */
export function LastsWorking({ outlook, shelf }: MaterialPart): ReactNode {
  const { today, lastDay, productOf } = shelf;
  const standings = standingUntil(outlook, today);
  if (standings.length === 0) return null;
  const { material, onHand, shortOn } = outlook;
  const days = daysShown(daysBetween(today, shortOn ?? lastDay));
  const view = {
    material,
    today,
    productOf,
    called: (lot: string) => calledLot(outlook, lot),
    figure: standingFigures(onHand, standings, material),
  };
  return (
    <>
      <h3 className="shelf-further">
        {shortOn === null
          ? `It lasts to the end of the plan, ${dayShown(lastDay, today)}`
          : `It lasts ${days}, to ${dayShown(shortOn, today)}`}
      </h3>
      <HowItComes
        lines={[
          onHandLine(onHand, view),
          ...standings.flatMap((standing) =>
            standingLines(standing, leftWords(standing, { outlook, shelf }, view.figure), view),
          ),
        ]}
        notes={["If every run goes ahead: what the shelf cannot give is owed, and taken from what comes in next."]}
      />
    </>
  );
}

function leftWords({ day }: Standing, { outlook, shelf }: MaterialPart, figure: (held: bigint) => string): string {
  const { material, shortOn, belowSafetyOn } = outlook;
  const on = dayShown(day, shelf.today);
  const safety = material.safetyStock?.quantity ?? 0n;
  if (day === shortOn) return `owed to runs at the end of ${on}, the first day on which one cannot be met`;
  return day === belowSafetyOn
    ? `left at the end of ${on}, the first day below the safety stock of ${figure(safety)}`
    : `left at the end of ${on}, the least until the end of the plan`;
}
