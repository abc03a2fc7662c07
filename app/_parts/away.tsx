"use client";

import { useOffline } from "next/offline";
import type { ReactNode } from "react";

/**
 * Told at the top of the window while the app does not answer. What was asked of it meanwhile, a form as well as a
 * page, waits and is done as soon as it answers again: the page stays as it is, with all that is typed.
 */
export function Away(): ReactNode {
  const isAway = useOffline();
  return (
    <div className="away screen-only" aria-live="polite">
      {isAway && (
        <p className="fault">
          <b>Stillroom does not answer.</b> Leave this page open, and nothing that you typed is lost: the form that you
          sent or the link that you followed waits, and goes on as soon as it answers. Start it if it was stopped, or
          wait for the network.
        </p>
      )}
    </div>
  );
}
