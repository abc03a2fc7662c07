"use client";

import type { ReactNode } from "react";

/** What is shown where a page could not be worked out. */
export default function PageFault({ retry }: { readonly retry: () => void }): ReactNode {
  return (
    <section className="fault" role="alert">
      <h1>This page could not be shown</h1>
      <p>
        Something in the app failed. If you were keeping something, it may not be kept yet. What you typed into a form
        stays in this window: try again. Where that fails too, the terminal in which the app runs says what is wrong.
      </p>
      <p>
        <button className="button" onClick={retry}>
          Try again
        </button>
      </p>
    </section>
  );
}
