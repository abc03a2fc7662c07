"use client";

import type { ReactNode } from "react";
import type { QueuedNote } from "./note-queue";

/** What the app would not take: it stays until somebody has looked at it. */
export function Refused({
  refused,
  drop,
}: {
  readonly refused: readonly QueuedNote[];
  readonly drop: (key: string) => void;
}): ReactNode {
  if (refused.length === 0) return null;
  return (
    <ul className="bench-refused" role="alert">
      {refused.map(({ key, fields, refused: why }) => (
        <li key={key}>
          <p>
            <b>Not written down</b>: {contentOf(fields)}. {whyIn(why)}
          </p>
          <button
            type="button"
            className="button"
            onClick={() => {
              drop(key);
            }}
          >
            I have seen it; write it anew
          </button>
        </li>
      ))}
    </ul>
  );
}

/** All that was typed into it, so that it can be written anew. */
const contentOf = (fields: QueuedNote["fields"]): string =>
  ["called", "weight", "vessel", "lot", "scanned", "celsius", "ph", "what", "found", "why"]
    .flatMap((field) => (fields[field] ? [fields[field]] : []))
    .join(", ");

const whyIn = (why: QueuedNote["refused"]): string =>
  [why?.says, ...Object.entries(why?.faults ?? {}).map(([field, fault]) => `${FIELD_WORDS[field] ?? field} ${fault}.`)]
    .filter(Boolean)
    .join(" ");

const FIELD_WORDS: Readonly<Record<string, string>> = {
  lot: "The lot",
  weight: "The weight",
  vessel: "The vessel",
  why: "A reason",
  who: "A name",
  celsius: "The temperature",
  ph: "The pH",
};
