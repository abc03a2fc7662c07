"use client";

import { type ReactNode, useEffect, useRef, useState } from "react";
import { type Checked, checksOf } from "@/lib/domain/formula-book/checks";
import { expansionOf } from "@/lib/domain/formula-book/expansion";
import { type Pot, weighUpFromPots } from "@/lib/domain/formula-book/weigh-up-premixes";
import { addsUp, formulaTotal } from "@/lib/domain/formula-total";
import { whole } from "@/lib/domain/fraction";
import type { Micrograms } from "@/lib/domain/quantity";
import { massInFull } from "@/lib/edge/figures";
import { type FormValues, valuesOfForm } from "@/app/_ui/form-values";
import { countedFindings, FindingsList, WhoDecides } from "@/app/_ui/findings-list";
import { ExpansionTable } from "./expansion-table";
import { formulaAsTyped } from "./formula-as-typed";
import { linesNamed } from "./formula-total";
import { nameOfLine } from "@/app/_ui/name-of-line";
import { WeighUpTables } from "./weigh-up-tables";

/** What the checks of a form are made of, for the formula that it is of. */
export interface LiveChecked extends Checked {
  readonly formulaId: string;
  readonly pots: readonly Pot[];
  /** What is shown to be weighed: its usual batch, or 100 g where no product says one. */
  readonly weighed: Micrograms;
}

/** The checks and the weigh-up of the formula in the form. They follow what is typed where scripts run. */
export function LiveChecks({
  values,
  checked,
}: {
  readonly values: FormValues;
  readonly checked: LiveChecked;
}): ReactNode {
  const [typed, setTyped] = useState(values);
  const place = useRef<HTMLElement>(null);
  useEffect(() => {
    const form = place.current?.closest("form");
    const follow = (): void => {
      if (form) setTyped(valuesOfForm(new FormData(form)));
    };
    form?.addEventListener("input", follow);
    return () => form?.removeEventListener("input", follow);
  }, []);
  const { formula, unread } = formulaAsTyped(typed, checked.formulaId, checked);
  // What a line is, that cannot be read yet, is not known: no check is right without it.
  const isWaiting = unread.length > 0;
  const findings = isWaiting || formula.lines.length === 0 ? [] : checksOf(formula, checked);
  const about = {
    batch: checked.batch,
    today: checked.today,
    nameOf: nameOfLine({ ...checked, formulas: [...checked.formulas, formula] }),
  };
  return (
    <section className="matters live-checks" aria-labelledby="live-checks" ref={place}>
      <h2 id="live-checks">
        Checks{" "}
        <small role="status">
          {isWaiting
            ? `waiting for ${linesNamed(unread)}`
            : formula.lines.length === 0
              ? "once something goes in"
              : countedFindings(findings)}
        </small>
      </h2>
      <div>
        {isWaiting && <p>The checks wait for {linesNamed(unread)}: what goes in, and its percent.</p>}
        <FindingsList findings={findings} about={about} />
        <WhoDecides />
        {!isWaiting && (
          <ExpansionTable
            formula={formula}
            expanded={expansionOf(formula, checked.formulas)}
            formulas={checked.formulas}
            nameOf={about.nameOf}
          />
        )}
        {!isWaiting && addsUp(formulaTotal(formula)) && (
          <ToWeigh checked={checked} formula={formula} nameOf={about.nameOf} />
        )}
      </div>
    </section>
  );
}

function ToWeigh({
  checked,
  formula,
  nameOf,
}: {
  readonly checked: LiveChecked;
  readonly formula: ReturnType<typeof formulaAsTyped>["formula"];
  readonly nameOf: ReturnType<typeof nameOfLine>;
}): ReactNode {
  const formulas = [...checked.formulas.filter(({ id }) => id !== formula.id), formula];
  const ups = weighUpFromPots({ formulas, pots: checked.pots }, formula.id, whole(checked.weighed), checked.step);
  // As it is weighed: in whole steps of the balance.
  const batch = ups.sheets.find((sheet) => sheet.formula.id === formula.id)?.batch ?? checked.weighed;
  return (
    <details>
      <summary>
        What to weigh for {massInFull(batch)}
        {checked.batch === null ? "; no product says how much is usual" : ", its usual batch"}
      </summary>
      <WeighUpTables ups={ups} nameOf={nameOf} />
    </details>
  );
}
