"use client";

import type { ReactNode } from "react";
import { isMeasured } from "@/lib/domain/bench/asked-checks";
import type { FormulaCheck } from "@/lib/domain/formula-book/facts";
import { askedInWords } from "@/lib/edge/bench-words";
import type { BenchOnPage } from "./bench-view";
import { type SmallField, SmallForm } from "./small-form";
import type { Notes } from "./use-notes";

/** What the formula asks to be looked at, each with its limits. @rule BENCH-11 */
export const CheckForms = ({ view, notes }: { readonly view: BenchOnPage; readonly notes: Notes }): ReactNode =>
  view.checks.map((check) => (
    <details key={check.what}>
      <summary>
        {check.what}: {askedInWords(check)}
      </summary>
      <SmallForm
        view={view}
        notes={notes}
        carried={carriedBy(check)}
        fields={fieldsOf(check)}
        button={`Write down the ${check.what}`}
      />
    </details>
  ));

const carriedBy = (check: FormulaCheck): Readonly<Record<string, string>> => ({
  kind: "checked",
  what: check.what,
  asked: askedInWords(check),
  from: check.from ?? "",
  to: check.to ?? "",
});

/** A figure is judged by its limits; what is seen is judged by whoever sees it. */
const fieldsOf = (check: FormulaCheck): readonly SmallField[] => [
  ...(isMeasured(check) ? [] : [{ name: "within", label: "Is it as asked?", options: YES_OR_NO }]),
  { name: "found", label: `What was found${check.unit === null ? "" : `, ${check.unit}`}` },
  { name: "why", label: "Why it is kept, where it is not as asked" },
];

const YES_OR_NO = [
  { value: "yes", label: "Yes" },
  { value: "no", label: "No" },
];
