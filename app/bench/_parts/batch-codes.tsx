import type { ReactNode } from "react";
import { AskingForm } from "@/app/_ui/asking-form";
import { type BatchCodeScheme, DATINGS } from "@/lib/domain/bench/batch-code";
import { keepBatchCodes } from "../actions";

/** How the codes of batches are made: set once, so it is folded. */
export const BatchCodes = ({
  scheme,
  next,
}: {
  readonly scheme: BatchCodeScheme | null;
  readonly next: string | null;
}): ReactNode => (
  <details className="bench-list bench-codes opens">
    <summary>
      <b>Batch codes</b> {scheme === null ? "You write each one yourself." : `The next batch is called ${next ?? ""}.`}
    </summary>
    <p className="label">For example OC-261125-01: the text OC-, the date, the text - and a number of two digits.</p>
    <AskingForm
      act={keepBatchCodes}
      carried={{}}
      button="Call batches like this"
      fields={[
        { name: "before", label: "Text before (optional)", type: "text", value: scheme?.before ?? "" },
        {
          name: "dating",
          label: "Date in the code",
          type: "choice",
          value: scheme?.dating ?? DATINGS[1],
          options: DATINGS.map((value) => ({ value, label: DATING_WORDS[value] })),
        },
        { name: "between", label: "Text before the number (optional)", type: "text", value: scheme?.between ?? "-" },
        { name: "digits", label: "Digits of the number", type: "text", value: String(scheme?.digits ?? 2) },
      ]}
    />
  </details>
);

const DATING_WORDS = {
  none: "No date",
  "year, month and day": "Year, month and day, as 261125",
  "year and day of the year": "Year and day of the year, as 26329",
} as const;
