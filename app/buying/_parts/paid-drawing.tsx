"use client";

import type { ReactNode } from "react";
import { CartesianGrid, Scatter, ScatterChart, XAxis, YAxis } from "recharts";
import type { CurrencyCode } from "@/lib/domain/money";
import { priceShown } from "@/lib/edge/figures";

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

/** Each supplier has a shape of its own, which the table beside the drawing names. */
export const MARKS = ["circle", "square", "triangle", "diamond", "cross", "star"] as const;

/** Prices over days, from nothing up, so that a small change looks small. */
export default function PaidDrawing({
  series,
  currency,
  width,
  height,
}: {
  readonly series: readonly PaidSeries[];
  readonly currency: CurrencyCode;
  readonly width: number;
  readonly height: number;
}): ReactNode {
  const points = series.flatMap((each) => each.points);
  const shownBy = new Map(points.map(({ day, dayShown }) => [day, dayShown]));
  const days = [...shownBy.keys()].sort((a, b) => a - b);
  const ends = [days[0] ?? 0, days.at(-1) ?? 1];
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
        domain={[0, "auto"]}
        width={64}
        tickLine={false}
        axisLine={false}
        allowDecimals={false}
        tickFormatter={(price: number) => priceShown(BigInt(Math.round(price)), currency)}
      />
      {series.map(({ supplier, points: own }, at) => (
        <Scatter
          key={supplier}
          className={`paid-series paid-${String(at % MARKS.length)}`}
          name={supplier}
          data={[...own]}
          line
          shape={MARKS[at % MARKS.length] ?? "circle"}
          isAnimationActive={false}
        />
      ))}
    </ScatterChart>
  );
}
