"use client";

import { useRouter } from "next/navigation";
import { type KeyboardEvent, type ReactNode, useEffect, useRef, useState } from "react";
import { useDragging } from "./dragging";

interface Board {
  readonly put: (form: FormData) => Promise<void>;
  /** The address without the run that is being moved; null where none is. */
  readonly leave: `/week?${string}` | null;
  /** The run that was just put somewhere, which takes the focus where nothing has it. */
  readonly settled: string | null;
  readonly children: ReactNode;
}

/**
 * The days, whose runs can be dragged to another day or before another run; and where a run is being moved by its
 * button, arrow keys that walk through its places. Without scripts the places are buttons all the same.
 */
export function WeekBoard({ put, leave, settled, children }: Board): ReactNode {
  const board = useRef<HTMLDivElement>(null);
  const [said, say] = useState("");
  const router = useRouter();
  const dragging = useDragging(board, put, say);

  useEffect(() => {
    if (leave === null) return;
    const places = placesIn(board.current);
    (places.find((place) => place.closest(".from-here")) ?? places[0])?.focus();
  }, [leave]);
  useEffect(() => {
    if (settled === null || (document.activeElement ?? document.body) !== document.body) return;
    board.current
      ?.querySelector<HTMLElement>(`[data-run="${CSS.escape(settled)}"] .run-link`)
      ?.focus({ preventScroll: true });
  }, [settled]);

  const walk = (event: KeyboardEvent<HTMLDivElement>): void => {
    if (leave === null || event.altKey || event.ctrlKey || event.metaKey) return;
    if (event.key === "Escape") return router.push(leave, { scroll: false });
    const to = placeFrom(placesIn(board.current), event.target, event.key);
    if (to === null) return;
    event.preventDefault();
    to.focus();
  };
  return (
    <div className="week-board" ref={board} {...dragging} onKeyDown={walk}>
      <p className="unseen" role="status">
        {said}
      </p>
      {children}
    </div>
  );
}

const placesIn = (board: HTMLElement | null): readonly HTMLElement[] => [
  ...(board?.querySelectorAll<HTMLElement>("[data-place]") ?? []),
];

/** Up and down walk through all places, left and right go to the same place of the next day, or to its last. */
function placeFrom(places: readonly HTMLElement[], from: EventTarget, key: string): HTMLElement | null {
  const at = places.findIndex((place) => place === from);
  if (at < 0) return null;
  if (key === "ArrowDown") return places[at + 1] ?? null;
  if (key === "ArrowUp") return places[at - 1] ?? null;
  const by = key === "ArrowRight" ? 1 : key === "ArrowLeft" ? -1 : 0;
  if (by === 0) return null;
  const days = [...new Set(places.map((place) => place.dataset.place))];
  const [here, there] = [days.indexOf(places[at]?.dataset.place), days.indexOf(places[at]?.dataset.place) + by];
  const inDay = (day: string | undefined) => places.filter((place) => place.dataset.place === day);
  const [own, others] = [inDay(days[here]), inDay(there < 0 ? "" : days[there])];
  return others[own.findIndex((place) => place === from)] ?? others.at(-1) ?? null;
}
