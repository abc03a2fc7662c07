"use client";

import { type ReactNode, useMemo } from "react";
import type { FormKind } from "@/lib/edge/forms/record-forms";
import { RecordForm, type RecordFormProps } from "@/app/_ui/record-form";
import { DensityOffers } from "./density-offers";
import { FormulaTotal } from "./formula-total";
import { type LiveChecked, LiveChecks } from "./live-checks";
import { askedUnder, knownFrom, PasteLines, pasteInto } from "./pasted-lines";

type Given = Omit<RecordFormProps, "further" | "under" | "underRow">;

/** The form of a record of the book, with what its kind has besides the fields. */
export function BookForm({
  kind,
  checked,
  ...form
}: Given & {
  readonly kind: FormKind;
  /** For a formula: what its checks are made of. */
  readonly checked?: LiveChecked | undefined;
}): ReactNode {
  switch (kind) {
    case "formulas":
      return <FormulaForm {...form} checked={checked} />;
    case "materials":
      return <RecordForm {...form} under={{ density: (values) => <DensityOffers values={values} /> }} />;
    case "settings":
    case "suppliers":
    case "offers":
    case "lots":
    case "orders":
    case "products":
    case "runs":
    case "labels":
    case "papers":
      return <RecordForm {...form} />;
  }
}

function FormulaForm({ checked, ...form }: Given & { readonly checked: LiveChecked | undefined }): ReactNode {
  const { choices } = form;
  const { known, further, underRow } = useMemo(() => {
    const known = knownFrom(choices);
    return { known, further: { paste: pasteInto(known) }, underRow: askedUnder(known) };
  }, [choices]);
  return (
    <RecordForm
      {...form}
      further={further}
      underRow={underRow}
      under={{
        lines: (values, notes) => (
          <>
            <FormulaTotal values={values} />
            <PasteLines values={values} known={known} note={notes.pasted} />
          </>
        ),
        steps: (values) => checked && <LiveChecks values={values} checked={checked} />,
      }}
    />
  );
}
