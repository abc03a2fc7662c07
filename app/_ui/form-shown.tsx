import type { ReactNode, Ref } from "react";
import type { FormAnswer } from "./form-answer";
import { Ledger } from "./ledger";

/** What a form would come to if it were kept as it was sent. */
export function FormShown({ answer, ref }: { readonly answer: FormAnswer; readonly ref: Ref<HTMLElement> }): ReactNode {
  if (answer.kind !== "shown") return null;
  const { says, columns, rows, total } = answer.shown;
  return (
    <section className="form-shown" ref={ref} tabIndex={-1} role="status">
      <p>{says}</p>
      <Ledger
        caption={says}
        columns={columns.map((name, at) => ({ name, kind: at === 0 ? ("text" as const) : ("number" as const) }))}
      >
        {rows.map((cells, at) => (
          <ShownRow key={at} cells={cells} columns={columns} />
        ))}
        {total !== null && <ShownRow cells={total} columns={columns} isTotal />}
      </Ledger>
    </section>
  );
}

function ShownRow({
  cells: [name, ...figures],
  columns,
  isTotal = false,
}: {
  readonly cells: readonly string[];
  readonly columns: readonly string[];
  readonly isTotal?: boolean;
}): ReactNode {
  const last = figures.length - 1;
  return (
    <tr className={isTotal ? "sum" : undefined}>
      <th scope="row">
        {name}
        {/* On a phone the last figure stands beside the name, and the others under it with their words. */}
        <small className="phone-only">
          {figures
            .slice(0, last)
            .flatMap((figure, at) => (figure === "" ? [] : [`${columns[at + 1] ?? ""} ${figure}`]))
            .join(", ")}
        </small>
      </th>
      {figures.map((figure, at) => (
        <td key={at} className={at === last ? "number end" : "number not-on-phone"}>
          {figure}
        </td>
      ))}
    </tr>
  );
}
