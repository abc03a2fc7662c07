"use client";

import type { ReactNode } from "react";
import { DrawnLate } from "@/app/_ui/drawn-late";
import type { TrialSeries } from "./trial-marks";

const HEIGHT_PX = 240;

export interface TrialChart {
  readonly title: string;
  readonly says: string;
  /** What stands beside the figures of the upright axis. */
  readonly unit: { readonly before: string; readonly decimals: number };
  readonly series: readonly TrialSeries[];
}

/** What came of what was varied: one drawing for each thing that was read. The table above says the same. */
export const TrialDrawings = ({ charts }: { readonly charts: readonly TrialChart[] }): ReactNode =>
  charts.map(({ title, says, unit, series }) => (
    <figure key={title} className="trial-chart">
      <figcaption>
        {title}
        {series.length > 1 && (
          <ul className="trial-marks">
            {series.map(({ name, mark }) => (
              <li key={name} className={`trial-mark ${mark}`}>
                {name}
              </li>
            ))}
          </ul>
        )}
      </figcaption>
      <DrawnLate
        says={says}
        height={HEIGHT_PX}
        given={{ series, unit }}
        load={() => import("./trial-drawing").then(({ default: drawing }) => drawing)}
      />
    </figure>
  ));
