"use client";

import { type DragEvent, type RefObject, startTransition, useRef } from "react";

const CARRIED = ["run", "product", "from", "units", "stood", "of"] as const;

interface Dragging {
  readonly onDragStart: (event: DragEvent) => void;
  readonly onDragOver: (event: DragEvent) => void;
  readonly onDragEnd: () => void;
  readonly onDrop: (event: DragEvent) => void;
}

/** A run is dragged to another day, or onto another run to go before it. What it carries stands on its slip. */
export function useDragging(
  board: RefObject<HTMLElement | null>,
  put: (form: FormData) => Promise<void>,
  say: (words: string) => void,
): Dragging {
  const dragged = useRef<HTMLElement | null>(null);
  const mark = (day: Element | null): void => {
    for (const marked of board.current?.querySelectorAll(".drop-here") ?? []) marked.classList.remove("drop-here");
    day?.classList.add("drop-here");
  };
  const onDragStart = (event: DragEvent): void => {
    const slip = closest(event.target, "[data-run]");
    if (slip === null) return;
    dragged.current = slip;
    event.dataTransfer.effectAllowed = "move";
    event.dataTransfer.setData("text/plain", nameOf(slip));
    slip.classList.add("dragged");
    say(`Moving ${nameOf(slip)}. Drop it on a day.`);
  };
  const onDragOver = (event: DragEvent): void => {
    const day = closest(event.target, "[data-day]");
    if (dragged.current === null || day === null) return;
    event.preventDefault();
    event.dataTransfer.dropEffect = "move";
    mark(day);
  };
  const onDragEnd = (): void => {
    dragged.current?.classList.remove("dragged");
    dragged.current = null;
    mark(null);
  };
  const onDrop = (event: DragEvent): void => {
    const [day, slip, next] = [
      closest(event.target, "[data-day]"),
      dragged.current,
      closest(event.target, "[data-run]"),
    ];
    onDragEnd();
    if (day === null || slip === null) return;
    event.preventDefault();
    if (next === slip) return;
    say(`Putting ${nameOf(slip)} on ${day.dataset.called ?? "that day"}.`);
    startTransition(() => put(sentFor(slip, day, next)));
  };
  return { onDragStart, onDragOver, onDragEnd, onDrop };
}

const closest = (target: EventTarget | null, selector: string): HTMLElement | null =>
  target instanceof Element ? target.closest<HTMLElement>(selector) : null;

const nameOf = ({ dataset }: HTMLElement): string => dataset.name ?? "the run";

function sentFor(slip: HTMLElement, day: HTMLElement, next: HTMLElement | null): FormData {
  const form = new FormData();
  for (const name of CARRIED) form.set(name, slip.dataset[name] ?? "");
  form.set("to", day.dataset.day ?? "");
  form.set("before", next?.dataset.run ?? "");
  return form;
}
