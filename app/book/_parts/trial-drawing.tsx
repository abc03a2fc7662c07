"use client";

import type { ReactNode } from "react";
import { CartesianGrid, Scatter, ScatterChart, XAxis, YAxis } from "recharts";
import type { TrialSeries } from "./trial-marks";

interface Drawing {
  readonly series: readonly TrialSeries[];
  readonly unit: { readonly before: string; readonly decimals: number };
  readonly width: number;
  readonly height: number;
}

const MOST_DECIMALS = 4;
const MOST_STEPS = 4;

/** Places from nothing up to or above the highest, at 1, 2 or 5 of a decimal unit. */
function roundSteps(highest: number): readonly number[] {
  if (!(highest > 0)) return [0, 1];
  const unit = 10 ** Math.floor(Math.log10(highest / MOST_STEPS));
  const step = [1, 2, 5, 10].map((each) => each * unit).find((each) => each * MOST_STEPS >= highest) ?? unit * 10;
  const count = Math.ceil(highest / step - 1e-9);
  return Array.from({ length: count + 1 }, (_, at) => Number((at * step).toPrecision(12)));
}

/** Percent of what was varied to the right; what came of it upright, from nothing up. */
export default function TrialDrawing({ series, unit, width, height }: Drawing): ReactNode {
  const upright = new Intl.NumberFormat("en-GB", {
    minimumFractionDigits: unit.decimals,
    maximumFractionDigits: MOST_DECIMALS,
  });
  const ticks = roundSteps(Math.max(...series.flatMap(({ points }) => points.map(({ value }) => value))));
  const shownBy = new Map(
    series.flatMap(({ points }) => points.map(({ percent, percentShown }) => [percent, percentShown] as const)),
  );
  return (
    <ScatterChart
      className="trial-points"
      width={width}
      height={height}
      margin={{ top: 12, right: 32, bottom: 4, left: 4 }}
      accessibilityLayer={false}
    >
      <CartesianGrid vertical={false} className="trial-grid" />
      <XAxis
        type="number"
        dataKey="percent"
        domain={["dataMin", "dataMax"]}
        ticks={[...shownBy.keys()]}
        padding={{ left: 24, right: 24 }}
        tickFormatter={(percent: number) => shownBy.get(percent) ?? ""}
        tickLine={false}
      />
      <YAxis
        type="number"
        dataKey="value"
        domain={[0, ticks.at(-1) ?? "auto"]}
        ticks={[...ticks]}
        interval={0}
        width={72}
        tickLine={false}
        axisLine={false}
        tickFormatter={(value: number) => `${unit.before}${upright.format(value)}`}
      />
      {series.map(({ name, mark, points }) => (
        <Scatter
          key={name}
          className="trial-series"
          name={name}
          data={[...points]}
          line
          shape={mark}
          isAnimationActive={false}
        />
      ))}
    </ScatterChart>
  );
}
