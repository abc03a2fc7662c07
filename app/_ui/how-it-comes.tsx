import type { ReactNode } from "react";
import { Working, type WorkingLine } from "./working";

/** A figure's arithmetic behind a word that opens it, where the figure has no row of its own to open. */
export const HowItComes = ({
  lines,
  notes = [],
  says,
  about,
  isOpen = false,
}: {
  readonly lines: readonly WorkingLine[];
  readonly notes?: readonly ReactNode[];
  /** What opens it: the figure itself, where it can be; else a word. */
  readonly says?: ReactNode;
  /** What the figure is of, for those who hear the word alone. */
  readonly about?: string;
  /** Whether it was asked for already. */
  readonly isOpen?: boolean;
}): ReactNode => (
  // A word beside a figure is no part of what is printed while it is closed; the figure itself is.
  <details className={isWord(says) ? "as-table how-it-comes in-words" : "as-table how-it-comes"} open={isOpen}>
    <summary>
      {says ?? "How it comes about"}
      {about !== undefined && <span className="unseen">, {about}</span>}
    </summary>
    <Working lines={lines} notes={notes} />
  </details>
);

const isWord = (says: ReactNode): boolean => says === undefined || (typeof says === "string" && !/\d/.test(says));
