import type { ReactNode } from "react";
import { Working, type WorkingLine } from "./working";

/** A figure's arithmetic behind a word that opens it, where the figure has no row of its own to open. */
export const HowItComes = ({
  lines,
  notes = [],
  says = "How it comes about",
  isOpen = false,
}: {
  readonly lines: readonly WorkingLine[];
  readonly notes?: readonly ReactNode[];
  /** The word that opens it, which may be the figure itself. */
  readonly says?: string;
  /** Whether it was asked for already. */
  readonly isOpen?: boolean;
}): ReactNode => (
  // Words that stand beside the figure are no part of what is printed; the figure itself is.
  <details className={/\d/.test(says) ? "as-table how-it-comes" : "as-table how-it-comes in-words"} open={isOpen}>
    <summary>{says}</summary>
    <Working lines={lines} notes={notes} />
  </details>
);
