import type { ReactNode } from "react";
import { compositions } from "@/lib/domain/formula";
import type { Expanded } from "@/lib/domain/formula-book/expansion";
import { addsUp, formulaTotal } from "@/lib/domain/formula-total";
import { formulaPaths } from "@/lib/domain/formula-paths";
import { times, whole } from "@/lib/domain/fraction";
import { WHOLE } from "@/lib/domain/quantity";
import type { Formula, FormulaLine } from "@/lib/domain/workshop";
import { counted } from "@/lib/edge/counted";
import { percentShown } from "@/lib/edge/figures";
import { pathsTold } from "@/lib/edge/path-words";
import { Ledger } from "@/app/_ui/ledger";
import { asSentence } from "@/app/_ui/sentence";

const MOST_PATHS = 6;

const COLUMNS = [{ name: "Material" }, { name: "Of the finished mass", kind: "number" }] as const;

/** Everything in a formula, premixes opened, the most first. @rule FORMULA-4 */
export function ExpansionTable({
  formula,
  expanded,
  formulas,
  nameOf,
}: {
  readonly formula: Formula;
  readonly expanded: readonly Expanded[];
  /** Those of the workshop; one with the id of the formula is taken for an earlier state of it. */
  readonly formulas: readonly Formula[];
  readonly nameOf: (of: FormulaLine["of"]) => string;
}): ReactNode {
  if (expanded.length === 0) return null;
  const all = [...formulas.filter(({ id }) => id !== formula.id), formula];
  const compositionOf = compositions(all);
  const pathsTo = (material: string): readonly string[] =>
    pathsTold(formulaPaths(all, formula.id, material, compositionOf, MOST_PATHS));
  return (
    <details className="expansion">
      <summary>
        {asSentence(counted(expanded.length, "material", "materials"))}{" "}
        {addsUp(formulaTotal(formula)) ? "in all" : "so far"}, premixes opened
      </summary>
      <Ledger caption="Every material of the formula, premixes opened" columns={COLUMNS} className="book-ledger">
        {expanded.map(({ material, fraction }) => (
          <tr key={material}>
            <th scope="row">
              {nameOf({ kind: "material", id: material })}
              {pathsTo(material).map((path) => (
                <small key={path}>{path}</small>
              ))}
            </th>
            <td className="number">{percentShown(times(fraction, whole(WHOLE)))}</td>
          </tr>
        ))}
      </Ledger>
    </details>
  );
}
