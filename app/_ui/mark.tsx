import type { ReactNode } from "react";

/** The mark: a shelf that falls in steps, the order notch above it, and what it lacks below the line. */
export function Mark(): ReactNode {
  return (
    <svg viewBox="0 0 34 20" aria-hidden="true">
      <path className="mark-body" d="M1 14.5V4h8v4h8v3.5h8v3z" />
      <path className="mark-edge" d="M1 4h8v4h8v3.5h8v3" />
      <path className="mark-water" d="M0 14.5h34" />
      <path className="mark-lack" d="M25 15.2h8v3.8h-8zM25 18.5l3-3.3M29 19l3.6-3.8" />
      <path className="mark-notch" d="M15.5 0h6l-3 5z" />
    </svg>
  );
}
