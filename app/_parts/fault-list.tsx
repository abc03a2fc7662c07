import type { ReactNode } from "react";

/** Why a file was not opened: each fault with where it stands and what would be right. */
export function FaultList({ faults }: { readonly faults: readonly string[] }): ReactNode {
  return (
    <section className="fault wide" role="alert">
      <h2>Not opened</h2>
      <p>Nothing has changed. Mend what is listed and open the file again.</p>
      <ul className="fault-list">
        {faults.map((fault, at) => (
          <li key={at}>{fault}</li>
        ))}
      </ul>
    </section>
  );
}
