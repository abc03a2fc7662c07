"use client";

import type { ReactNode } from "react";
import { DrawnLate } from "@/app/_ui/drawn-late";
import type { CurrencyCode } from "@/lib/domain/money";
import type { PaidSeries } from "./paid-drawing";

const HEIGHT_PX = 260;

/** What was paid over time, a mark for each supplier. */
export const PaidChart = ({
  says,
  series,
  currency,
}: {
  readonly says: string;
  readonly series: readonly PaidSeries[];
  readonly currency: CurrencyCode;
}): ReactNode => (
  <DrawnLate
    says={says}
    height={HEIGHT_PX}
    given={{ series, currency }}
    load={() => import("./paid-drawing").then(({ default: drawing }) => drawing)}
  />
);
