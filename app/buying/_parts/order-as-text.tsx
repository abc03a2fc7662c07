import type { ReactNode } from "react";

/** An order as text, to paste into a letter. @param supplier  by name, where several orders stand on the page */
export const OrderAsText = ({
  text,
  supplier,
  isOneOfMany = false,
}: {
  readonly text: string;
  readonly supplier: string;
  readonly isOneOfMany?: boolean;
}): ReactNode => (
  <details className="order-text">
    <summary>The order as text{isOneOfMany && <span className="unseen">, {supplier}</span>}</summary>
    <textarea readOnly aria-label={`The order from ${supplier} as text`} value={text} rows={text.split("\n").length} />
  </details>
);
