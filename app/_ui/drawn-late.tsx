"use client";

import { type ComponentType, type ReactNode, useEffect, useEffectEvent, useRef, useState } from "react";

interface DrawnLateOf<Given> {
  /** What the drawing shows, in words. */
  readonly says: string;
  /** Its room is kept before it is there, so that nothing moves when it comes. */
  readonly height: number;
  readonly given: Given;
  /** Fetches the drawing with its library. */
  readonly load: () => Promise<ComponentType<Given & { readonly width: number; readonly height: number }>>;
}

/**
 * A drawing beside the table that says the same. Its library is large, so that it is fetched only when the reader comes
 * near; where no script runs there is the table alone.
 */
export function DrawnLate<Given extends object>({ says, height, given, load }: DrawnLateOf<Given>): ReactNode {
  const room = useRef<HTMLDivElement>(null);
  const [Drawn, setDrawn] = useState<Awaited<ReturnType<typeof load>> | null>(null);
  const [width, setWidth] = useState(0);
  const fetchDrawing = useEffectEvent(() => {
    load().then(
      (drawing) => setDrawn(() => drawing),
      // Without the drawing there is the table.
      () => undefined,
    );
  });
  useEffect(() => {
    const element = room.current;
    if (element === null) return;
    const near = new IntersectionObserver(
      (entries) => {
        if (!entries.some(({ isIntersecting }) => isIntersecting)) return;
        near.disconnect();
        fetchDrawing();
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
          <Drawn {...given} width={width} height={height} />
        </div>
      )}
    </div>
  );
}
