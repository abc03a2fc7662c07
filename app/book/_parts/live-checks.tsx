"use client";

import { type ReactNode, useEffect, useRef, useState } from "react";
import { type Checked, checksOf } from "@/lib/domain/formula-book/checks";
import { expansionOf } from "@/lib/domain/formula-book/expansion";
import { type Pot, weighUpFromPots } from "@/lib/domain/formula-book/weigh-up-premixes";
import { addsUp, formulaTotal } from "@/lib/domain/formula-total";
import { whole } from "@/lib/domain/fraction";
import type { Micrograms } from "@/lib/domain/quantity";
import { counted } from "@/lib/edge/counted";
import { massInFull } from "@/lib/edge/figures";
import { type FormValues, valuesOfForm } from "@/app/_ui/form-values";
import { countedFindings, FindingsList, WhoDecides } from "@/app/_ui/findings-list";
import { ExpansionTable } from "./expansion-table";
import { formulaAsTyped } from "./formula-as-typed";
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
  const findings = formula.lines.length === 0 ? [] : checksOf(formula, checked);
  const about = { today: checked.today, nameOf: nameOfLine({ ...checked, formulas: [...checked.formulas, formula] }) };
  return (
    <section className="matters live-checks" aria-labelledby="live-checks" ref={place}>
      <h2 id="live-checks">
        Checks{" "}
        <small role="status">
          {formula.lines.length === 0 ? "once something goes in" : countedFindings(findings)}
          {unread > 0 && `; ${counted(unread, "line", "lines")} could not be read yet`}
        </small>
      </h2>
      <div>
        <FindingsList findings={findings} about={about} />
        <WhoDecides />
        <ExpansionTable
          formula={formula}
          expanded={expansionOf(formula, checked.formulas)}
          formulas={checked.formulas}
          nameOf={about.nameOf}
        />
        {addsUp(formulaTotal(formula)) && <ToWeigh checked={checked} formula={formula} nameOf={about.nameOf} />}
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
  return (
    <details>
      <summary>
        What to weigh for {massInFull(checked.weighed)}
        {checked.batch === null ? "; no product says how much is usual" : ", its usual batch"}
      </summary>
      <WeighUpTables
        ups={weighUpFromPots({ formulas, pots: checked.pots }, formula.id, whole(checked.weighed), checked.step)}
        nameOf={nameOf}
      />
    </details>
  );
}
