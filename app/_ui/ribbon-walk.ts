"use client";

import { type RefObject, useRef } from "react";
import type { RibbonStep } from "@/lib/edge/ribbon-steps";

/** A ribbon that is being walked along. */
interface Walked {
  readonly ribbon: SVGSVGElement;
  steps: Promise<readonly RibbonStep[]>;
  /** Which step is shown; -1 before the first. */
  at: number;
}

export interface RibbonWalk {
  /** Shows the next step of the ribbon in `row`, or the one before; false where there is no ribbon or no step that way. */
  readonly step: (row: HTMLElement, by: 1 | -1) => boolean;
  /** Takes what is shown away. */
  readonly leave: () => void;
}

/**
 * Walks along the ribbon of a row or a docket: each thing that it shows is marked on it, written beside it and read out.
 * @param said  where the words stand; a status, so that they are read
 */
export function useRibbonWalk(said: RefObject<HTMLElement | null>): RibbonWalk {
  const walked = useRef<Walked | null>(null);
  const leave = (): void => {
    walked.current?.ribbon.querySelector(".ribbon-step")?.remove();
    walked.current = null;
    said.current?.replaceChildren();
  };
  const show = async (walk: Walked): Promise<void> => {
    const steps = await walk.steps;
    walk.at = Math.min(walk.at, steps.length - 1);
    const step = steps[walk.at];
    if (walked.current !== walk || step === undefined || said.current === null) return;
    mark(walk.ribbon, step, said.current);
    // What could not be fetched is asked for again by the next key.
    if (steps === UNANSWERED) walk.steps = stepsOf(walk.ribbon);
  };
  const step = (row: HTMLElement, by: 1 | -1): boolean => {
    const ribbon = row.querySelector<SVGSVGElement>("svg.ribbon[data-of]");
    if (ribbon === null) return false;
    if (walked.current?.ribbon !== ribbon) {
      if (by === -1) return false;
      leave();
      walked.current = { ribbon, steps: stepsOf(ribbon), at: -1 };
    }
    walked.current.at += by;
    if (walked.current.at < 0) leave();
    else void show(walked.current);
    return true;
  };
  return { step, leave };
}

const UNANSWERED: readonly RibbonStep[] = [
  { at: "0%", says: "The ribbon cannot be read step by step now. Load the page again if this stays so." },
];

async function stepsOf(ribbon: SVGSVGElement): Promise<readonly RibbonStep[]> {
  try {
    const asked = new URLSearchParams({ material: ribbon.dataset.of ?? "" });
    const answer = await fetch(`/shelf/ribbon?${asked.toString()}`);
    return answer.ok ? ((await answer.json()) as readonly RibbonStep[]) : UNANSWERED;
  } catch {
    return UNANSWERED;
  }
}

const SVG = "http://www.w3.org/2000/svg";

/** An upright at the step's place, and its words under the ribbon. */
function mark(ribbon: SVGSVGElement, { at, says }: RibbonStep, said: HTMLElement): void {
  const upright = ribbon.querySelector(".ribbon-step") ?? ribbon.appendChild(document.createElementNS(SVG, "line"));
  for (const [name, value] of Object.entries({ class: "ribbon-step", x1: at, x2: at, y1: "-2", y2: "100%" }))
    upright.setAttribute(name, value);
  const [place, page] = [ribbon.getBoundingClientRect(), (said.offsetParent ?? document.body).getBoundingClientRect()];
  said.style.top = `${String(place.bottom - page.top + 4)}px`;
  said.style.left = `${String(place.left - page.left)}px`;
  said.style.maxWidth = `${String(place.width)}px`;
  said.replaceChildren(says);
}
