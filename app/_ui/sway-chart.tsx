"use client";

import { type ComponentType, type ReactNode, useEffect, useRef, useState } from "react";
import type { SwayBar } from "./sway-drawing";

/** The height of one row. The drawing's room is kept before it is there, so that nothing moves when it comes. */
const ROW_PX = 34;

type Drawing = ComponentType<{
  readonly bars: readonly SwayBar[];
  readonly width: number;
  readonly height: number;
}>;

/**
 * A drawing beside the table that says the same. Its library is large, so that it is fetched only when the reader comes
 * near; where no script runs there is the table alone.
 */
export function SwayChart({ says, bars }: { readonly says: string; readonly bars: readonly SwayBar[] }): ReactNode {
  const room = useRef<HTMLDivElement>(null);
  const [Drawn, setDrawn] = useState<Drawing | null>(null);
  const [width, setWidth] = useState(0);
  const height = bars.length * ROW_PX;
  useEffect(() => {
    const element = room.current;
    if (element === null) return;
    const near = new IntersectionObserver(
      (entries) => {
        if (!entries.some(({ isIntersecting }) => isIntersecting)) return;
        near.disconnect();
        import("./sway-drawing").then(
          ({ default: drawing }) => setDrawn(() => drawing),
          // Without the drawing there is the table.
          () => undefined,
        );
      },
      { rootMargin: "600px" },
    );
    const size = new ResizeObserver(([entry]) => setWidth(Math.floor(entry?.contentRect.width ?? 0)));
    near.observe(element);
    size.observe(element);
    return () => {
      near.disconnect();
      size.disconnect();
    };
  }, []);
  return (
    <div className="sway-chart" role="img" aria-label={says} ref={room}>
      <svg width="1" height={height} aria-hidden="true" />
      {Drawn && width > 0 && (
        <div className="sway-drawn">
          <Drawn bars={bars} width={width} height={height} />
        </div>
      )}
    </div>
  );
}
