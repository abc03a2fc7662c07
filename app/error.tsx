"use client";

import type { ReactNode } from "react";

/** What is shown where a page could not be worked out. */
export default function PageFault({ retry }: { readonly retry: () => void }): ReactNode {
  return (
    <section className="fault" role="alert">
      <h1>This page could not be shown</h1>
      <p>Something in the app failed. What is in the store is as it was.</p>
      <p>
        <button className="button" onClick={retry}>
          Try again
        </button>
      </p>
    </section>
  );
}
