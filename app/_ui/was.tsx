import type { ReactNode } from "react";

/** What a figure was before the last change, beside what it is now; nothing where it is the same or was not shown. */
export function Was({ now, before }: { readonly now: string; readonly before: string | null }): ReactNode {
  return before === null || before === now ? null : <small className="was">was {before}</small>;
}
