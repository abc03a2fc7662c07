"use client";

import type { ReactNode } from "react";
import type { Notes } from "./use-notes";

/** Who writes, and when it was: folded, for it seldom changes, but told where nobody is named. */
export function WhoWrites({ notes }: { readonly notes: Notes }): ReactNode {
  const isNobody = notes.who.trim() === "";
  return (
    <details className="bench-who opens screen-only">
      <summary>
        {isNobody ? (
          <span className="warn">Write your name: nothing is written down without it</span>
        ) : (
          <>
            Written down by {notes.who}
            {notes.when !== "" && `, at ${notes.when}`}
          </>
        )}
      </summary>
      <div className="bench-who-fields">
        <div className="field">
          <label htmlFor="bench-who">Written down by</label>
          <input
            id="bench-who"
            value={notes.who}
            autoComplete="off"
            required
            aria-invalid={isNobody ? true : undefined}
            onChange={(event) => {
              notes.setWho(event.currentTarget.value);
            }}
          />
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
