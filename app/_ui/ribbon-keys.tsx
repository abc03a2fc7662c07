"use client";

import { type KeyboardEvent, type ReactNode, useRef } from "react";
import { useRibbonWalk } from "./ribbon-walk";

/** Right and Left walk along the ribbon of the link that has the focus; Enter follows the link, which is the browser's own. */
export function RibbonKeys({ children }: { readonly children: ReactNode }): ReactNode {
  const said = useRef<HTMLParagraphElement>(null);
  const { step, leave } = useRibbonWalk(said);
  const walk = (event: KeyboardEvent<HTMLElement>): void => {
    const { target, key } = event;
    if (!(target instanceof HTMLElement) || isHeldWith(event)) return;
    if (key === "ArrowRight" && step(target, 1)) event.preventDefault();
    else if (key === "ArrowLeft" && step(target, -1)) event.preventDefault();
    else if (key === "Escape") leave();
  };
  return (
    <div className="ribbon-keys" onKeyDown={walk} onBlur={leave}>
      {children}
      <p className="ribbon-says" role="status" ref={said} />
    </div>
  );
}

/** With one of these a key is the browser's own. */
export const isHeldWith = ({ altKey, ctrlKey, metaKey, shiftKey }: KeyboardEvent): boolean =>
  altKey || ctrlKey || metaKey || shiftKey;
