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
  const lacking = wanted > coming ? wanted - coming : 0n;
  const runs = counted(planned.length, "run that is", "runs that are");
  return [
    { figure: figure(wanted), reason: "lacking" },
    ...(coming > 0n ? [{ operator: "−" as const, figure: figure(coming), reason: `of ${runs} planned of it` }] : []),
    ...(coming > 0n ? [{ figure: figure(lacking), reason: "still to be made", isResult: true }] : []),
    { operator: "÷", figure: figure(product.fill.quantity), reason: `in one unit of ${product.name}` },
    { figure: unitsInWords(units), reason: units === 0n ? "more" : "rounded up to whole units", isResult: true },
  ];
}

const dayLines = ({ units, neededBy, day }: RunInstead, today: Day): readonly WorkingLine[] =>
  units === 0n
    ? []
    : [
        { figure: dayShown(neededBy, today), reason: "needed by" },
        {
          figure: dayShown(day, today),
          reason:
            day > neededBy
              ? "today, since that has passed"
              : "the last Monday to Friday up to then that is no closed day",
          isResult: true,
        },
      ];
