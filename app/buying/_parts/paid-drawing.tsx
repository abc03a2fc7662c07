"use client";

import type { ReactNode } from "react";
import { CartesianGrid, Scatter, ScatterChart, XAxis, YAxis } from "recharts";
import { Mark } from "./paid-marks";

export interface PaidSeries {
  readonly supplier: string;
  readonly points: readonly PaidPoint[];
}

export interface PaidPoint {
  /** Days on one line, so that gaps look as long as they were. */
  readonly day: number;
  readonly dayShown: string;
  /** Whole micro-units for a kilogram or a piece: a place in a drawing, no figure. */
  readonly price: number;
}

/** A line across, at a place and with its words. */
export interface PaidTick {
  readonly price: number;
  readonly shown: string;
}

export interface PaidOf {
  readonly series: readonly PaidSeries[];
  /** From nothing up, at least two. */
  readonly ticks: readonly PaidTick[];
}

/** Room for the words of the widest line, in pixels for each letter. */
const LETTER_PX = 8.5;

/** Prices over days, from nothing up, so that a small change looks small; each supplier has a shape of its own. */
export default function PaidDrawing({
  series,
  ticks,
  width,
  height,
}: PaidOf & { readonly width: number; readonly height: number }): ReactNode {
  const points = series.flatMap((each) => each.points);
  const shownBy = new Map(points.map(({ day, dayShown }) => [day, dayShown]));
  const days = [...shownBy.keys()].sort((a, b) => a - b);
  const ends = [days[0] ?? 0, days.at(-1) ?? 1];
  const places = ticks.map(({ price }) => price);
  return (
    <ScatterChart
      className="paid-points"
      width={width}
      height={height}
      margin={{ top: 12, right: 44, bottom: 4, left: 4 }}
      accessibilityLayer={false}
    >
      <CartesianGrid vertical={false} className="paid-grid" />
      <XAxis
        type="number"
        dataKey="day"
        domain={[(ends[0] ?? 0) - 1, (ends[1] ?? 1) + 1]}
        ticks={[...new Set(ends)]}
        tickFormatter={(day: number) => shownBy.get(day) ?? ""}
        tickLine={false}
        interval={0}
      />
      <YAxis
        type="number"
        dataKey="price"
        domain={[0, places.at(-1) ?? 1]}
        ticks={places}
        interval={0}
        width={12 + Math.ceil(Math.max(...ticks.map(({ shown }) => shown.length)) * LETTER_PX)}
        tickLine={false}
        axisLine={false}
        tickFormatter={(price: number) => ticks.find((tick) => tick.price === price)?.shown ?? ""}
      />
      {series.map(({ supplier, points: own }, at) => (
        <Scatter
          key={supplier}
          className={`paid-series paid-${String(at)}`}
          name={supplier}
          data={[...own]}
          line
          shape={({ cx, cy }: { readonly cx?: number | undefined; readonly cy?: number | undefined }) => (
            <g transform={`translate(${String(cx ?? 0)} ${String(cy ?? 0)})`}>
              <Mark at={at} />
            </g>
          )}
          isAnimationActive={false}
        />
      ))}
    </ScatterChart>
  );
}
