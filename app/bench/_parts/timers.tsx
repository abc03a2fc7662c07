"use client";

import { type ReactNode, useEffect, useRef, useState, useSyncExternalStore } from "react";
import type { StepOnPage } from "./bench-view";

interface Timed {
  readonly batch: string;
  readonly steps: readonly StepOnPage[];
  readonly write: (fields: Readonly<Record<string, string>>) => void;
}

/** The steps of the formula. One with minutes has a timer, which stays in sight, sounds, and never ends any work. */
export function Timers({ batch, steps, write }: Timed): ReactNode {
  if (steps.length === 0) return null;
  return (
    <section className="bench-steps" aria-labelledby="bench-steps">
      <h2 id="bench-steps">Steps</h2>
      <ol>
        {steps.map((step, at) => (
          <li key={at}>
            <p>
              {step.phase !== null && <b>{step.phase} </b>}
              {step.text}
              {step.celsius !== null && `, ${step.celsius} °C`}
              {step.minutes !== null && `, ${String(step.minutes)} min`}
            </p>
            {step.caution !== null && <p className="bench-caution">{step.caution}</p>}
            {step.minutes !== null && (
              <Timer place={`bench timer ${batch} ${String(at)}`} minutes={step.minutes} step={step} write={write} />
            )}
          </li>
        ))}
      </ol>
    </section>
  );
}

interface OneTimer {
  readonly place: string;
  readonly minutes: number;
  readonly step: StepOnPage;
  readonly write: Timed["write"];
}

function Timer({ place, minutes, step, write }: OneTimer): ReactNode {
  const [began, setBegan] = useState<number | null>(null);
  const kept = useSyncExternalStore(
    neverAgain,
    () => keptAt(place),
    () => null,
  );
  const since = began ?? kept;
  const now = useNow(since !== null);
  const left = since === null ? null : Math.max(0, Math.ceil(minutes * 60 - (now - since) / 1000));
  const isOver = left === 0;
  const audio = useRef<AudioContext | null>(null);
  useEffect(() => {
    if (isOver) sound(audio.current);
  }, [isOver]);
  if (since === null)
    return (
      <button
        type="button"
        className="button"
        onClick={() => {
          // A browser gives sound only to who was touched: here, not when the time is up.
          audio.current = openSound();
          const at = Date.now();
          keepAt(place, at);
          setBegan(at);
        }}
      >
        Start {minutes} min
      </button>
    );
  return (
    <div className={isOver ? "bench-timer over" : "bench-timer"} role="timer" aria-label={step.text}>
      <b role={isOver ? "alert" : undefined}>{isOver ? "Time is up" : clock(left ?? 0)}</b>
      <button
        type="button"
        className="button"
        onClick={() => {
          const timed = Math.round((Date.now() - since) / 60_000);
          write({ kind: "seen", what: "Timed", found: `${step.text}: ${String(timed)} min` });
          keepAt(place, null);
          setBegan(null);
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

const neverAgain = (): (() => void) => () => undefined;

function keptAt(place: string): number | null {
  try {
    const at = Number(localStorage.getItem(place));
    return at > 0 ? at : null;
  } catch {
    return null;
  }
}

function keepAt(place: string, at: number | null): void {
  try {
    if (at === null) localStorage.removeItem(place);
    else localStorage.setItem(place, String(at));
  } catch {
    // A browser that keeps nothing: the timer runs as long as the page is open.
  }
}

function openSound(): AudioContext | null {
  try {
    return new AudioContext();
  } catch {
    // A browser without sound: the words say it too.
    return null;
  }
}

/** Three short tones, made by the browser itself. */
function sound(given: AudioContext | null): void {
  const audio = given ?? openSound();
  if (audio === null) return;
  for (const at of [0, 0.4, 0.8]) {
    const tone = audio.createOscillator();
    tone.frequency.value = 880;
    tone.connect(audio.destination);
    tone.start(audio.currentTime + at);
    tone.stop(audio.currentTime + at + 0.2);
  }
}
