"use client";

import { type ReactNode, useSyncExternalStore } from "react";

const never = (): (() => void) => () => undefined;

/** Opens the browser's own print; where no scripts run, the browser's menu does. */
export function PrintLabels({ count }: { readonly count: number }): ReactNode {
  const hasScripts = useSyncExternalStore(
    never,
    () => true,
    () => false,
  );
  if (!hasScripts) return <p className="label print-labels">Print them with the print of your browser.</p>;
  return (
    <p className="print-labels">
      <button
        type="button"
        className="button first"
        onClick={() => {
          window.print();
        }}
      >
        Print {count} {count === 1 ? "label" : "labels"}
      </button>
    </p>
  );
}
