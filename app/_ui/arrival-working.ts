/** When an order comes, from the day on which it goes out: lead time and days shut. @rule DAY-2, DAY-3 */
import { arrivalSteps, type Delivery } from "@/lib/domain/arrivals";
import { type Day, daysAfter, daysBetween, weekday } from "@/lib/domain/calendar";
import { inARow } from "@/lib/edge/counted";
import { dayShown, daysShown } from "@/lib/edge/figures";
import type { WorkingLine } from "./working";

const SATURDAY = 6;

/** @param wanted  the day on which it is to go out */
export function arrivalLines(delivery: Delivery, wanted: Day, today: Day): readonly WorkingLine[] {
  const { supplier } = delivery;
  const { placed, due, arrives } = arrivalSteps(delivery, wanted);
  const shown = (day: Day): string => dayShown(day, today);
  const moved = daysBetween(due, arrives);
  return [
    {
      figure: shown(placed),
      reason: placed === wanted ? "ordered" : `ordered, the first working day of both from ${shown(wanted)} on`,
    },
    {
      operator: "+",
      figure: daysShown(supplier.leadDays),
      reason:
        supplier.leadCounts === "calendar"
          ? `the lead time of ${supplier.name}, every day counted`
          : `the lead time of ${supplier.name}, its working days alone${shutWords(delivery, placed, due, shown)}`,
    },
    ...(moved > 0
      ? [
          { figure: shown(due), reason: "due", isResult: true },
          { operator: "+" as const, figure: daysShown(moved), reason: "on which the workshop is closed" },
        ]
      : []),
    { figure: shown(arrives), reason: "it comes", isResult: true },
  ];
}

/** The supplier's closed days that the lead time steps over, beside Saturdays and Sundays. */
function shutWords({ supplier }: Delivery, from: Day, to: Day, shown: (day: Day) => string): string {
  const shut = [...new Set(supplier.closedDays)]
    .filter((day) => day > from && day <= to && weekday(day) < SATURDAY)
    .sort((a, b) => a - b);
  return shut.length === 0 ? "" : `; shut ${inARow(shut.map(shown))}`;
}

/** What the next working day of both would have meant, where that is the reason for ordering no later. */
export function oneDayLater(delivery: Delivery, orderBy: Day, today: Day): string {
  const { placed, arrives } = arrivalSteps(delivery, daysAfter(orderBy, 1));
  return `Ordered on ${dayShown(placed, today)}, the next working day, it would come ${dayShown(arrives, today)}, too late.`;
}
