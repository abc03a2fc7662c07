import type { ReactNode } from "react";
import type { Expanded } from "@/lib/domain/formula-book/expansion";
import { times, whole } from "@/lib/domain/fraction";
import { WHOLE } from "@/lib/domain/quantity";
import type { Formula, FormulaLine } from "@/lib/domain/workshop";
import { counted } from "@/lib/edge/counted";
import { percentShown } from "@/lib/edge/figures";
import { Ledger } from "@/app/_ui/ledger";
import { asSentence } from "@/app/_ui/sentence";

const COLUMNS = [{ name: "Material" }, { name: "Of the finished mass", kind: "number" }] as const;

/** Everything in a formula, premixes opened, the most first. It stands open where a premix is in it. @rule FORMULA-4 */
export function ExpansionTable({
  formula,
  expanded,
  nameOf,
}: {
  readonly formula: Formula;
  readonly expanded: readonly Expanded[];
  readonly nameOf: (of: FormulaLine["of"]) => string;
}): ReactNode {
  if (expanded.length === 0) return null;
  return (
    <details className="expansion" open={formula.lines.some(({ of }) => of.kind === "formula")}>
      <summary>{asSentence(counted(expanded.length, "material", "materials"))} in all, premixes opened</summary>
      <Ledger caption="Every material of the formula, premixes opened" columns={COLUMNS} className="book-ledger">
        {expanded.map(({ material, fraction }) => (
          <tr key={material}>
            <th scope="row">{nameOf({ kind: "material", id: material })}</th>
            <td className="number">{percentShown(times(fraction, whole(WHOLE)))}</td>
          </tr>
        ))}
      </Ledger>
    </details>
  );
}
