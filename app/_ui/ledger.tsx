import type { ReactNode } from "react";
import { RowKeys } from "./row-keys";

export interface LedgerColumn {
  readonly name: string;
  readonly kind?: "number" | "text";
  /** Further classes of the head cell. */
  readonly className?: string;
}

/** A table of rules and right-hand figures. `opens` where its rows open; arrow keys then walk through them. */
export function Ledger({
  caption,
  columns,
  opens = false,
  className = "",
  children,
}: {
  /** What the table holds, for those who cannot see its place on the page. */
  readonly caption: string;
  readonly columns: readonly LedgerColumn[];
  readonly opens?: boolean;
  readonly className?: string;
  readonly children: ReactNode;
}): ReactNode {
  const table = (
    <table className={`ledger ${opens ? "opening-rows" : ""} ${className}`}>
      <caption className="unseen">{caption}</caption>
      <thead>
        <tr>
          {columns.map(({ name, kind, className: further = "" }) => (
            <th key={name} scope="col" className={`${kind === "number" ? "number" : ""} ${further}`}>
              {name}
            </th>
          ))}
        </tr>
      </thead>
      <tbody>{children}</tbody>
    </table>
  );
  return opens ? <RowKeys>{table}</RowKeys> : table;
}

/**
 * A row that opens by its name to the row below it. The name is a disclosure of the browser's own, which needs no
 * script; what is shown of the row below follows it in the style sheet.
 */
export function OpeningRow({
  id,
  name,
  cells,
  across,
  children,
}: {
  readonly id: string;
  readonly name: ReactNode;
  /** The other cells of the row. */
  readonly cells: ReactNode;
  /** How many columns the table has. */
  readonly across: number;
  readonly children: ReactNode;
}): ReactNode {
  return (
    <>
      <tr>
        {/* A name is not taken from inside a disclosure unless it is pointed to. */}
        <th scope="row" aria-labelledby={`${id}-name`}>
          <details className="opens">
            <summary id={`${id}-name`} aria-controls={id}>
              {name}
            </summary>
          </details>
        </th>
        {cells}
      </tr>
      <tr className="opened" id={id}>
        <td colSpan={across}>{children}</td>
      </tr>
    </>
  );
}
