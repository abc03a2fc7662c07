"use client";

import { type ReactNode, useState } from "react";
import type { Notes } from "./use-notes";

const WHO_ID = "bench-who";

/** Opens the field and goes to it, where something was to be written down and nobody was named. */
export function askWho(): void {
  const field = document.getElementById(WHO_ID);
  const folded = field?.closest("details");
  if (folded) folded.open = true;
  field?.focus();
}

/** Who writes, and when it was: folded, for it seldom changes, but open and told where nobody is named. */
export function WhoWrites({ notes }: { readonly notes: Notes }): ReactNode {
  const isNobody = notes.who.trim() === "";
  // It stays open while a name is typed, which somebody is from the first letter on.
  const [isOpen, setOpen] = useState(false);
  return (
    <details
      className="bench-who opens screen-only"
      open={isOpen || isNobody}
      onToggle={(event) => {
        setOpen(event.currentTarget.open);
      }}
    >
      <summary>
        {isNobody ? (
          <span className="warn">Nobody is named</span>
        ) : (
          <>
            Written down by {notes.who}
            {notes.when !== "" && `, at ${notes.when}`}
          </>
        )}
      </summary>
      <div className="bench-who-fields">
        <div className={isNobody ? "field wrong" : "field"}>
          <label htmlFor={WHO_ID}>Written down by</label>
          <input
            id={WHO_ID}
            value={notes.who}
            autoComplete="off"
            required
            aria-invalid={isNobody ? true : undefined}
            aria-describedby={isNobody ? `${WHO_ID}-fault` : undefined}
            onChange={(event) => {
              notes.setWho(event.currentTarget.value);
            }}
          />
          {isNobody && (
            <p className="field-fault" id={`${WHO_ID}-fault`}>
              Write your name: nothing is written down without it
            </p>
          )}
        </div>
        <div className="field">
          <label htmlFor="bench-when">Time, if it was on paper before (empty: now)</label>
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
    </details>
  );
}
