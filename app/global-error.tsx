"use client";

import type { ReactNode } from "react";
import "./_css/fonts.css";
import "./_css/tokens.css";
import "./_css/ground.css";
import "./_css/controls.css";

/** What is shown where not even the head of the page could be worked out: the app was stopped, or cannot read its store. */
export default function AppFault({ retry }: { readonly retry: () => void }): ReactNode {
  return (
    <html lang="en-GB">
      <body>
        <title>Stillroom does not answer</title>
        <main className="page">
          <section className="fault" role="alert">
            <h1>Stillroom does not answer</h1>
            <p>
              It was stopped, or it could not open its store. The store file is as it was. Start it if it was stopped;
              the terminal in which it runs says what is wrong.
            </p>
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
