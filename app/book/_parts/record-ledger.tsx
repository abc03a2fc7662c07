import Link from "next/link";
import type { ReactNode } from "react";
import { Ledger } from "@/app/_ui/ledger";
import { Sign } from "@/app/_ui/sign";
import { recordPath, sectionPath } from "./addresses";
import type { Row } from "./record-rows";
import { type Column, NONE, QUIET } from "./row-view";
import { SECTION_WORDS, type Section } from "./sections";

/** A list of the book as a ledger; each name opens its record. */
export function RecordLedger({
  section,
  columns,
  rows,
  kept,
  sought,
}: {
  readonly section: Section;
  readonly columns: readonly Column[];
  readonly rows: readonly Row[];
  /** The id of the one that has just been kept; empty for none. */
  readonly kept: string;
  readonly sought: string;
}): ReactNode {
  const { title, many } = SECTION_WORDS[section];
  if (rows.length === 0)
    return sought === "" ? null : (
      <p>
        None of the {many} has “{sought}”. <Link href={sectionPath(section)}>Show all</Link>
      </p>
    );
  return (
    <Ledger caption={title} columns={columns} className="book-ledger">
      {rows.map(({ id, name, cells, isRetired, mark }) => (
        <tr key={id} id={`kept-${id}`} className={mark?.place === "last" ? "is-done" : undefined}>
          <th scope="row">
            <Link href={recordPath(section, id)} prefetch={false}>
              {name}
            </Link>
            {id === kept && (
              <span role="status">
                {" "}
                <Sign sign="tick" tone="open">
                  kept
                </Sign>
              </span>
            )}
            {mark !== null && mark.sign !== null && (
              <>
                {" "}
                <Sign sign={mark.sign} tone={mark.tone}>
                  {mark.says}
                </Sign>
              </>
            )}
            {isRetired && (
              <>
                {" "}
                <Sign sign="dash" tone="still">
                  retired
                </Sign>
              </>
            )}
          </th>
          <Cells id={id} columns={columns} cells={cells} />
        </tr>
      ))}
    </Ledger>
  );
}

/** What stands beside the name; what was worked out leads to its arithmetic. */
const Cells = ({
  id,
  columns,
  cells,
}: Pick<Row, "id" | "cells"> & { readonly columns: readonly Column[] }): ReactNode =>
  cells.map((cell, at) => {
    const column = columns[at + 1];
    const classes = [
      column?.kind === "number" && "number",
      column?.isMain === true && "main-figure",
      (cell === NONE || cell === "0") && "nothing",
      QUIET.has(cell) && "quiet",
    ];
    return (
      <td key={column?.name} className={classes.filter(Boolean).join(" ")} data-of={column?.name}>
        {column?.opensAt === undefined ? (
          cell
        ) : (
          <Link href={column.opensAt(id)} prefetch={false}>
            {cell}
          </Link>
        )}
      </td>
    );
  });
