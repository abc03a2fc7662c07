"use client";

import type { ReactNode } from "react";
import { DrawnLate } from "@/app/_ui/drawn-late";
import type { PaidOf } from "./paid-drawing";

const HEIGHT_PX = 260;

/** What was paid over time, a mark for each supplier. */
export const PaidChart = ({ says, ...given }: PaidOf & { readonly says: string }): ReactNode => (
  <DrawnLate
    says={says}
    height={HEIGHT_PX}
    given={given}
    load={() => import("./paid-drawing").then(({ default: drawing }) => drawing)}
  />
);
