import type { ReactNode } from "react";
import type { Day } from "@/lib/domain/calendar";
import type { Measure } from "@/lib/domain/quantity";
import type { RunInstead } from "@/lib/domain/run-instead";
import { counted } from "@/lib/edge/counted";
import { dayShown, stockInFull } from "@/lib/edge/figures";
import { unitsInWords } from "@/lib/edge/forms/posting-forms";
import { HowItComes } from "./how-it-comes";
import type { WorkingLine } from "./working";

/** How many units are made instead of bought, and by which day. @rule AHEAD-9 */
export const MakeWorking = ({
  instead,
  measure,
  today,
}: {
  readonly instead: RunInstead;
  readonly measure: Measure;
  readonly today: Day;
}): ReactNode => (
  <HowItComes
    says="How many to make, and by when"
    lines={[...unitLines(instead, measure), ...dayLines(instead, today)]}
  />
);

function unitLines({ product, units, wanted, coming, planned }: RunInstead, measure: Measure): readonly WorkingLine[] {
  const figure = (held: bigint): string => stockInFull(held, measure);
  const runs = counted(planned.length, "run that is", "runs that are");
  const lines: readonly WorkingLine[] = [
    { figure: figure(wanted), reason: "lacking" },
    ...(coming > 0n ? [{ operator: "−" as const, figure: figure(coming), reason: `of ${runs} planned of it` }] : []),
  ];
  if (units === 0n)
    return [...lines, { figure: unitsInWords(units), reason: "more: what is planned is enough", isResult: true }];
  return [
    ...lines,
    ...(coming > 0n ? [{ figure: figure(wanted - coming), reason: "still to be made", isResult: true }] : []),
    { operator: "÷", figure: figure(product.fill.quantity), reason: `in one unit of ${product.name}` },
    { figure: unitsInWords(units), reason: "rounded up to whole units", isResult: true },
  ];
}

const dayLines = ({ units, neededBy, day }: RunInstead, today: Day): readonly WorkingLine[] =>
  units === 0n
    ? []
    : [
        { figure: dayShown(neededBy, today), reason: "needed by" },
        {
          figure: dayShown(day, today),
          reason: dayReason(day, neededBy, today),
          isResult: true,
        },
      ];

function dayReason(day: Day, neededBy: Day, today: Day): string {
  if (day > neededBy) return "today, since that has passed";
  return day === today
    ? "today, the last day that is left before then"
    : "the last Monday to Friday up to then that is no closed day";
}
