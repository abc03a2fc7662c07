"use client";

import { type ReactNode, useEffect, useState, useSyncExternalStore } from "react";
import { heatOf } from "@/lib/edge/bench-words";
import type { StepOnPage } from "./bench-view";
import { beganAt, onTimers, openSound, setTimer, sound, timerPlace } from "./timer-store";

const useBegan = (place: string): number | null =>
  useSyncExternalStore(
    onTimers,
    () => beganAt(place),
    () => null,
  );

/** Steps of the formula, each with its heat and time; one with minutes has a timer to be started. */
export function Steps({
  batch,
  steps,
  isHeatAbove = false,
}: {
  readonly batch: string;
  readonly steps: readonly StepOnPage[];
  /** Whether the head of the phase says it. */
  readonly isHeatAbove?: boolean;
}): ReactNode {
  if (steps.length === 0) return null;
  return (
    <ol className="bench-steps">
      {steps.map((step) => (
        <li key={step.at}>
          <span>
            {step.text}
            {!isHeatAbove && heatOf(step) !== null && (
              <>
                {" "}
                <b>{heatOf(step)}</b>
              </>
            )}
          </span>
          {step.minutes !== null && <StartTimer place={timerPlace(batch, step.at)} minutes={step.minutes} />}
        </li>
      ))}
    </ol>
  );
}

function StartTimer({ place, minutes }: { readonly place: string; readonly minutes: number }): ReactNode {
  if (useBegan(place) !== null) return null;
  return (
    <button
      type="button"
      className="button"
      onClick={() => {
        openSound();
        setTimer(place, Date.now());
      }}
    >
      Start {minutes} min
    </button>
  );
}

interface Timed {
  readonly batch: string;
  readonly steps: readonly StepOnPage[];
  readonly write: (fields: Readonly<Record<string, string>>) => void;
}

/** Every timer that runs, pinned to the top of the page: it stays in sight, sounds, and never ends any work. */
export const RunningTimers = ({ batch, steps, write }: Timed): ReactNode => (
  <div className="bench-pinned screen-only">
    {steps.map(
      (step) =>
        step.minutes !== null && (
          <Running
            key={step.at}
            place={timerPlace(batch, step.at)}
            minutes={step.minutes}
            text={step.text}
            write={write}
          />
        ),
    )}
  </div>
);

interface OneTimer {
  readonly place: string;
  readonly minutes: number;
  readonly text: string;
  readonly write: Timed["write"];
}

function Running({ place, minutes, text, write }: OneTimer): ReactNode {
  const since = useBegan(place);
  const now = useNow(since !== null);
  const left = since === null ? null : Math.max(0, Math.ceil(minutes * 60 - (now - since) / 1000));
  const isOver = left === 0;
  useEffect(() => {
    if (isOver) sound();
  }, [isOver]);
  if (since === null) return null;
  return (
    <div className={isOver ? "bench-timer over" : "bench-timer"} role="timer" aria-label={text}>
      <b role={isOver ? "alert" : undefined}>{isOver ? "Time is up" : clock(left ?? 0)}</b>
      <span>{text}</span>
      <button
        type="button"
        className="button"
        onClick={() => {
          const timed = Math.round((Date.now() - since) / 60_000);
          write({ kind: "seen", what: "Timed", found: `${text}: ${String(timed)} min` });
          setTimer(place, null);
        }}
      >
        End it and write it down
      </button>
    </div>
  );
}

const clock = (seconds: number): string =>
  `${String(Math.floor(seconds / 60))}:${String(seconds % 60).padStart(2, "0")}`;

function useNow(isRunning: boolean): number {
  const [now, setNow] = useState(() => Date.now());
  useEffect(() => {
    if (!isRunning) return;
    const timer = setInterval(() => {
      setNow(Date.now());
    }, 500);
    return () => {
      clearInterval(timer);
    };
  }, [isRunning]);
  return now;
}
