import type { ReactNode } from "react";
import { HowItComes } from "@/app/_ui/how-it-comes";
import type { WorkingLine } from "@/app/_ui/working";
import type { PlannedUse } from "@/lib/domain/buying/planned-use";
import { whole } from "@/lib/domain/fraction";
import type { Measure } from "@/lib/domain/quantity";
import { counted } from "@/lib/edge/counted";
import { countShown, stockInFull } from "@/lib/edge/figures";
import { shareOf } from "./suggestion-working";

/** Where the use of a day and its deviation come from, before the maker writes others. @rule BUY-14 */
export function UseWorking({ use, measure }: { readonly use: PlannedUse; readonly measure: Measure }): ReactNode {
  const { mean, deviation, byWeek, used, days } = use;
  const lines: readonly WorkingLine[] = [
    { figure: stockInFull(used, measure), reason: "needed by the planned runs" },
    { operator: "÷", figure: counted(days, "day", "days"), reason: "to the plan’s last day, today among them" },
    { figure: shareOf(mean, measure), reason: "the use of a day", isResult: true },
    ...byWeek.map((amount, week) => ({
      figure: stockInFull(amount, measure),
      reason: `needed in week ${countShown(week + 1)} from today`,
    })),
    {
      figure: shareOf(whole(deviation), measure),
      reason: "the standard deviation of those weeks ÷ √7, a day’s where days vary independently",
      isResult: true,
    },
  ];
  return <HowItComes says="How the use of a day comes about" lines={lines} />;
}
