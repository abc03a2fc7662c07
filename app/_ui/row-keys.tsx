"use client";

import { type KeyboardEvent, type ReactNode, useRef } from "react";
import { useFollowed } from "./followed-links";
import { isHeldWith } from "./ribbon-keys";
import { type RibbonWalk, useRibbonWalk } from "./ribbon-walk";

interface Rows {
  readonly children: ReactNode;
  /** Whether the rows have ribbons. */
  readonly ribbons?: boolean;
}

/**
 * Up and Down walk through the rows. Right opens one that opens in its place, then walks along its ribbon; Left walks
 * back, then closes it. Enter and Space are the browser's own.
 */
export function RowKeys({ children, ribbons: hasRibbons = false }: Rows): ReactNode {
  const said = useRef<HTMLParagraphElement>(null);
  const ribbons = useRibbonWalk(said);
  return (
    <div
      className="ribbon-keys"
      data-rows
      onKeyDown={(event) => walk(event, ribbons)}
      onBlur={ribbons.leave}
      onClick={useFollowed()}
    >
      {children}
      {hasRibbons && <p className="ribbon-says" role="status" ref={said} />}
    </div>
  );
}

const ROWS = "summary, a[data-row]";

function walk(event: KeyboardEvent<HTMLElement>, ribbons: RibbonWalk): void {
  const { target, currentTarget, key } = event;
  if (!(target instanceof HTMLElement) || !target.matches(ROWS) || isHeldWith(event)) return;
  // Rows within a row are walked with all that are in sight, by those that hold them.
  if (currentTarget.parentElement?.closest("[data-rows]")) return;
  const rows = [...currentTarget.querySelectorAll<HTMLElement>(ROWS)].filter((row) => row.checkVisibility());
  const details = target.parentElement instanceof HTMLDetailsElement ? target.parentElement : null;
  switch (key) {
    case "ArrowDown":
      rows[rows.indexOf(target) + 1]?.focus();
      break;
    case "ArrowUp":
      rows[rows.indexOf(target) - 1]?.focus();
      break;
    case "ArrowRight":
      if (details?.open === false) details.open = true;
      else ribbons.step(target, 1);
      break;
    case "ArrowLeft":
      if (!ribbons.step(target, -1) && details !== null) details.open = false;
      break;
    case "Escape":
      ribbons.leave();
      return;
    default:
      return;
  }
  event.preventDefault();
}
