import type { ReactNode } from "react";
import type { ComparedTrial } from "@/lib/domain/formula-book/compared-trials";
import { readAt, timesRead } from "@/lib/domain/formula-book/trials";
import { type Fraction, times, whole } from "@/lib/domain/fraction";
import { decimalsOf } from "@/lib/domain/money";
import { decimalValue, WHOLE } from "@/lib/domain/quantity";
import { currencySign, percentShown } from "@/lib/edge/figures";
import { timeAfterShown } from "@/lib/edge/forms/time-after";
import { TRIAL_MARKS, type TrialPoint } from "./trial-marks";
import { type TrialChart, TrialDrawings } from "./trial-drawings";
import type { AboutTrials } from "./trials-ledger";

/** What was varied against viscosity at each time, and against what one unit would cost. */
export function TrialCharts({
  compared,
  about: { varied, product, currency },
}: {
  readonly compared: readonly ComparedTrial[];
  readonly about: AboutTrials;
}): ReactNode {
  const viscosities = timesRead(compared.map(({ trial }) => trial)).map((time, at) => ({
    name: timeAfterShown(time),
    mark: TRIAL_MARKS[at % TRIAL_MARKS.length] ?? "circle",
    points: pointsOf(compared, ({ trial }) => {
      const read = readAt(trial, time, "viscosity");
      return read === null ? null : decimalValue(read);
    }),
  }));
  const costs = pointsOf(compared, ({ perUnit }) => perUnit && { over: perUnit.over, under: perUnit.under * MAJOR });
  const charts: readonly TrialChart[] = [
    {
      title: `Viscosity in mPa·s against ${varied ?? ""}`,
      says: `Viscosity in mPa·s against the percent of ${varied ?? ""}, a mark for each time after making; the table says the same.`,
      unit: { before: "", decimals: 0 },
      series: viscosities.filter(({ points }) => points.length > 1),
    },
    {
      title: `Cost of one ${product ?? ""} against ${varied ?? ""}`,
      says: `Cost of one ${product ?? ""} against the percent of ${varied ?? ""}; the table says the same.`,
      unit: { before: currencySign(currency), decimals: decimalsOf(currency) },
      series: costs.length > 1 ? [{ name: "cost", mark: "circle", points: costs }] : [],
    },
  ];
  return <TrialDrawings charts={charts.filter(({ series }) => series.length > 0)} />;
}

const MAJOR = 1_000_000n;

/** A place in a drawing, no figure: the figures stand in the table. */
const placeOf = ({ over, under }: Fraction): number => Number(over) / Number(under);

/** In the order of the percent, so that a line can join them. */
const pointsOf = (
  compared: readonly ComparedTrial[],
  figure: (one: ComparedTrial) => Fraction | null,
): readonly TrialPoint[] =>
  compared
    .flatMap((one): readonly TrialPoint[] => {
      const value = figure(one);
      if (one.share === null || value === null) return [];
      const percent = times(one.share, whole(WHOLE));
      return [{ percent: placeOf(one.share) * 100, percentShown: percentShown(percent), value: placeOf(value) }];
    })
    .toSorted((a, b) => a.percent - b.percent);
