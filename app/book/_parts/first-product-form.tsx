"use client";

import { type ReactNode, useEffect } from "react";
import { fieldId } from "@/app/_ui/form-control";
import { RecordForm, type RecordFormProps } from "@/app/_ui/record-form";
import { type Rearrange, isWritten, rowsOf, withRows } from "@/app/_ui/form-values";
import { DensityOfRow } from "./density-offers";
import { FormulaTotal } from "./formula-total";
import { hasComeFromPasting, linesOfText, PasteLines } from "./pasted-lines";

/** Nothing is known yet: every pasted name is taken as it is written. */
const NOTHING_KNOWN = { materials: [], formulas: [] };

const paste: Rearrange = (values, [as]) => {
  const { lines, notes } = linesOfText(values, NOTHING_KNOWN, as);
  const before = rowsOf(values, "lines").filter((row) => isWritten(row) && !hasComeFromPasting(row));
  const rows = lines.map(({ name, percent }) => ({ material: name, percent: percent ?? "", pasted: name }));
  return { values: withRows(values, "lines", [...before, ...rows]), notes, focus: "lines" };
};

interface FirstProduct extends RecordFormProps {
  /** The names of the materials that there are already. */
  readonly known: readonly string[];
}

/** A product with all that goes into it, in one form, which is all that the page is for: one begins to type at once. */
export function FirstProductForm({ known, ...form }: FirstProduct): ReactNode {
  useEffect(() => {
    if (document.activeElement === document.body) document.getElementById(fieldId("name"))?.focus();
  }, []);
  return (
    <RecordForm
      {...form}
      further={{ paste }}
      underRow={(row, values) => row.startsWith("lines.") && <DensityOfRow row={row} values={values} known={known} />}
      under={{
        lines: (values, notes) => (
          <>
            <FormulaTotal values={values} />
            <p className="label">
              A density is needed only where the pack is a volume, as 1 L; the supplier’s data sheet says it. Where a
              published one is known, it is offered under the row.
            </p>
            <PasteLines values={values} known={NOTHING_KNOWN} note={notes.pasted} />
          </>
        ),
      }}
    />
  );
}
