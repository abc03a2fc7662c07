import type { ReactNode } from "react";
import { HowItComes } from "@/app/_ui/how-it-comes";
import type { WorkingLine } from "@/app/_ui/working";
import { type Standing, type StandingChange, standingUntil } from "@/lib/domain/standing-until";
import { dayShown, daysShown, stockInFull } from "@/lib/edge/figures";
import { daysBetween } from "@/lib/domain/calendar";
import type { MaterialPart } from "./shelf";

/** How long it lasts, opened to everything that is drawn, comes in or goes out of date until then. @rule PLAN-5 */
export function LastsWorking({ outlook, shelf }: MaterialPart): ReactNode {
  const { today, lastDay } = shelf;
  const standings = standingUntil(outlook, today);
  if (standings.length === 0) return null;
  const { material, onHand, shortOn } = outlook;
  const days = daysShown(daysBetween(today, shortOn ?? lastDay));
  return (
    <>
      <h3 className="shelf-further">
        {shortOn === null
          ? `It lasts to the end of the plan, ${dayShown(lastDay, today)}`
          : `It lasts ${days}, to ${dayShown(shortOn, today)}`}
      </h3>
      <HowItComes
        lines={[
          { figure: stockInFull(onHand, material.measure), reason: "on the shelf and usable today" },
          ...standings.flatMap((standing) => [
            ...standing.changes.map((change) => changeLine(change, { outlook, shelf })),
            leftLine(standing, { outlook, shelf }),
          ]),
        ]}
        notes={["If every run goes ahead: what the shelf cannot give is owed, and taken from what comes in next."]}
      />
    </>
  );
}

function changeLine(change: StandingChange, { outlook: { material }, shelf }: MaterialPart): WorkingLine {
  const { today, productOf } = shelf;
  const on = change.day === today ? "today" : dayShown(change.day, today);
  const figure = (held: bigint): string => stockInFull(held, material.measure);
  switch (change.kind) {
    case "drawn":
      return { operator: "−", figure: figure(change.need), reason: `${productOf(change.run.product).name}, ${on}` };
    case "arrived":
      return { operator: "+", figure: figure(change.quantity), reason: `comes in ${on}, lot ${change.lot}` };
    case "written off":
      return { operator: "−", figure: figure(change.quantity), reason: `out of date ${on}, lot ${change.lot}` };
  }
}

function leftLine({ day, left }: Standing, { outlook, shelf }: MaterialPart): WorkingLine {
  const { material, shortOn, belowSafetyOn } = outlook;
  const figure = left < 0n ? `−${stockInFull(-left, material.measure)}` : stockInFull(left, material.measure);
  const on = dayShown(day, shelf.today);
  const safety = material.safetyStock?.quantity ?? 0n;
  const reason =
    day === shortOn
      ? `owed to runs at the end of ${on}, the first day on which one cannot be met`
      : day === belowSafetyOn
        ? `left at the end of ${on}, the first day below the safety stock of ${stockInFull(safety, material.measure)}`
        : `left at the end of ${on}, the least until the end of the plan`;
  return { figure, reason, isResult: true };
}
