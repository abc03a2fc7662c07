import type { ReactNode } from "react";
import { isWithinTolerance } from "@/lib/domain/bench/weights";
import { PLUMB, plumbAt } from "@/lib/edge/plumb";

const { width, height, middle, bracket } = PLUMB;
const LINE = `M1 ${String(height / 2)}H${String(width - 1)}`;
const TICK = `M${String(middle)} 7v${String(height - 14)}`;
const BRACKETS = `M${String(middle - bracket + 5)} 4h-5v${String(height - 8)}h5M${String(middle + bracket - 5)} 4h5v${String(height - 8)}h-5`;

/**
 * A line with its middle marked and two brackets at the tolerance; a diamond hangs where the weight is, solid inside and
 * hollow outside. The words beside it say the same. @param off  weighed less target, µg; null where nothing is weighed
 */
export const Plumb = ({ off, tolerance }: { readonly off: bigint | null; readonly tolerance: bigint }): ReactNode => (
  <svg className="plumb" viewBox={`0 0 ${String(width)} ${String(height)}`} width={width} height={height} aria-hidden>
    <path className="plumb-line" d={LINE} />
    <path className="plumb-mark" d={TICK} />
    <path className="plumb-mark" d={BRACKETS} />
    {off !== null && (
      <path
        className={isWithinTolerance(off, tolerance) ? "plumb-inside" : "plumb-outside"}
        d={`M${String(middle + plumbAt(off, tolerance))} 6l6 6-6 6-6-6z`}
      />
    )}
  </svg>
);
