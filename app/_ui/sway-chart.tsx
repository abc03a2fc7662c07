"use client";

import type { ReactNode } from "react";
import { DrawnLate } from "./drawn-late";
import type { SwayBar } from "./sway-drawing";

/** The height of one row. */
const ROW_PX = 34;

/** What each input moves, longest first. */
export const SwayChart = ({ says, bars }: { readonly says: string; readonly bars: readonly SwayBar[] }): ReactNode => (
  <DrawnLate
    says={says}
    height={bars.length * ROW_PX}
    given={{ bars }}
    load={() => import("./sway-drawing").then(({ default: drawing }) => drawing)}
  />
);
