"use client";

import type { KeyboardEvent, ReactNode } from "react";
import { useFollowed } from "./followed-links";

/** Up and Down walk through the rows that open, Right opens one, Left closes it. Enter and Space are the browser's own. */
export function RowKeys({ children }: { readonly children: ReactNode }): ReactNode {
  return (
    <div data-rows onKeyDown={walk} onClick={useFollowed()}>
      {children}
    </div>
  );
}

function walk(event: KeyboardEvent<HTMLElement>): void {
  const { target, currentTarget, key } = event;
  if (!(target instanceof HTMLElement) || target.tagName !== "SUMMARY") return;
  if (event.altKey || event.ctrlKey || event.metaKey || event.shiftKey) return;
  // Rows within a row are walked with all that are in sight, by those that hold them.
  if (currentTarget.parentElement?.closest("[data-rows]")) return;
  const rows = [...currentTarget.querySelectorAll("summary")].filter((row) => row.checkVisibility());
  const details = target.parentElement;
  if (key === "ArrowDown") rows[rows.indexOf(target) + 1]?.focus();
  else if (key === "ArrowUp") rows[rows.indexOf(target) - 1]?.focus();
  else if (key === "ArrowRight" && details instanceof HTMLDetailsElement) details.open = true;
  else if (key === "ArrowLeft" && details instanceof HTMLDetailsElement) details.open = false;
  else return;
  event.preventDefault();
}
