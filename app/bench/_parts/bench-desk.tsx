"use client";

import type { ReactNode } from "react";
import { counted } from "@/lib/edge/counted";
import type { BenchOnPage } from "./bench-view";
import { atHand } from "./line-at-hand";
import type { QueuedNote } from "./note-queue";
import { NoteForms } from "./note-forms";
import { OtherNotes } from "./other-notes";
import { Refused } from "./refused-notes";
import { Timers } from "./timers";
import { useNotes } from "./use-notes";
import { WeighForm } from "./weigh-form";
import { WeighedLines } from "./weighed-lines";

/** One line at a time in big type; below it what was weighed, and whatever else is written down. */
export function BenchDesk({ view }: { readonly view: BenchOnPage }): ReactNode {
  const notes = useNotes(view);
  const waiting = notes.notes.filter(({ refused }) => refused === null);
  const lines = view.lines.map((line) => atHand(line, waiting));
  const open = lines.find(({ isDone }) => !isDone) ?? null;
  return (
    <div className="bench-desk">
      <div className="bench-who">
        <div className="field">
          <label htmlFor="bench-who">Written down by</label>
          <input
            id="bench-who"
            value={notes.who}
            autoComplete="off"
            required
            aria-invalid={notes.who.trim() === "" ? true : undefined}
            aria-describedby={notes.who.trim() === "" ? "bench-who-fault" : undefined}
            onChange={(event) => {
              notes.setWho(event.currentTarget.value);
            }}
          />
          {notes.who.trim() === "" && (
            <p className="field-fault" id="bench-who-fault">
              Write your name: nothing is written down without it
            </p>
          )}
        </div>
        <div className="field">
          <label htmlFor="bench-when">Time, if it was written on paper before (empty: now)</label>
          <input
            id="bench-when"
            type="time"
            value={notes.when}
            onChange={(event) => {
              notes.setWhen(event.currentTarget.value);
            }}
          />
        </div>
      </div>
      <p className={notes.isOffline ? "bench-status offline" : "bench-status"} role="status">
        {statusOf(waiting, notes.isOffline)}
      </p>
      <Refused refused={notes.notes.filter(({ refused }) => refused !== null)} drop={notes.drop} />
      <Timers batch={view.batch} steps={view.steps} write={notes.write} />
      {open === null ? (
        <p className="bench-done">
          <b>Every line is weighed.</b> Write down what else there is, then close the batch.
        </p>
      ) : (
        <WeighForm key={`${open.line.key} ${String(open.all.length)}`} line={open} view={view} notes={notes} />
      )}
      <WeighedLines lines={lines} open={open?.line.key ?? null} view={view} notes={notes} />
      <OtherNotes view={view} notes={notes} />
      <NoteForms view={view} notes={notes} />
    </div>
  );
}

function statusOf(waiting: readonly QueuedNote[], isOffline: boolean): string {
  if (isOffline)
    return `No connection to the app: ${counted(waiting.length, "note waits", "notes wait")} on this device. What waits is sent as soon as the app answers again; a reload does not lose it.`;
  return waiting.some(({ isSent }) => !isSent) ? "Sending what was written down." : "Everything is written down.";
}
