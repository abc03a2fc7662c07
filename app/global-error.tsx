"use client";

import type { ReactNode } from "react";
import "./_css/fonts.css";
import "./_css/tokens.css";
import "./_css/ground.css";
import "./_css/controls.css";

/** What is shown where not even the head of the page could be worked out, as when the store cannot be read. */
export default function AppFault({ retry }: { readonly retry: () => void }): ReactNode {
  return (
    <html lang="en-GB">
      <body>
        <title>Stillroom could not open its store</title>
        <main className="page">
          <section className="fault" role="alert">
            <h1>Stillroom could not open its store</h1>
            <p>The store file is as it was. The terminal in which Stillroom runs says what is wrong with it.</p>
            <p>
              <button className="button" onClick={retry}>
                Try again
              </button>
            </p>
          </section>
        </main>
      </body>
    </html>
  );
}
