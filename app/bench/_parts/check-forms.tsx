"use client";

import type { ReactNode } from "react";
import { Sign } from "@/app/_ui/sign";
import { type CheckFound, isMeasured } from "@/lib/domain/bench/asked-checks";
import type { FormulaCheck } from "@/lib/domain/formula-book/facts";
import { askedInWords } from "@/lib/edge/bench-words";
import type { BenchOnPage } from "./bench-view";
import { type SmallField, SmallForm } from "./small-form";
import type { Notes } from "./use-notes";

interface Checks {
  readonly checks: readonly CheckFound[];
  readonly view: BenchOnPage;
  readonly notes: Notes;
}

/** What the formula asks to be looked at, each with its limits and what was found. @rule BENCH-11 */
export function CheckForms({ checks, view, notes }: Checks): ReactNode {
  if (checks.length === 0) return null;
  return (
    <section className="bench-notes" aria-labelledby="bench-checks">
      <h2 id="bench-checks">Checks</h2>
      {checks.map(({ check, note, isAnswered }) => (
        <details key={check.what} className="opens">
          <summary>
            <span>
              {check.what}: {askedInWords(check)}
              {note !== null && <FoundSoFar note={note} isAnswered={isAnswered} />}
            </span>
          </summary>
          <SmallForm
            view={view}
            notes={notes}
            carried={carriedBy(check)}
            fields={fieldsOf(check)}
            button={`Write down the ${check.what}`}
          />
        </details>
      ))}
    </section>
  );
}

function FoundSoFar({
  note,
  isAnswered,
}: {
  readonly note: NonNullable<CheckFound["note"]>;
  readonly isAnswered: boolean;
}): ReactNode {
  const isWithin = note.kind === "checked" ? note.within : isAnswered;
  return (
    <span className="bench-found">
      <Sign sign={isWithin ? "tick" : "triangle"} tone={isWithin ? "open" : "wrong"}>
        {note.kind === "checked" ? note.found : note.ph}
        {!isWithin && ", outside"}
      </Sign>
    </span>
  );
}

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
