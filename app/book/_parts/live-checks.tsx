"use client";

import { type ReactNode, useEffect, useRef, useState } from "react";
import { type Checked, checksOf } from "@/lib/domain/formula-book/checks";
import { weighUpWithPremixes } from "@/lib/domain/formula-book/weigh-up";
import { addsUp, formulaTotal } from "@/lib/domain/formula-total";
import { whole } from "@/lib/domain/fraction";
import type { Micrograms } from "@/lib/domain/quantity";
import { counted } from "@/lib/edge/counted";
import { massInFull } from "@/lib/edge/figures";
import { type FormValues, valuesOfForm } from "@/app/_ui/form-values";
import { countedFindings, FindingsList, WhoDecides } from "@/app/_ui/findings-list";
import { formulaAsTyped } from "./formula-as-typed";
import { nameOfLine } from "@/app/_ui/name-of-line";
import { WeighUpTables } from "./weigh-up-tables";

/** What the checks of a form are made of, for the formula that it is of. */
export interface LiveChecked extends Checked {
  readonly formulaId: string;
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
        {checked.batch !== null && formula.lines.length > 0 && addsUp(formulaTotal(formula)) && (
          <ToWeigh checked={checked} batch={checked.batch} formula={formula} nameOf={about.nameOf} />
        )}
      </div>
    </section>
  );
}

function ToWeigh({
  checked,
  batch,
  formula,
  nameOf,
}: {
  readonly checked: LiveChecked;
  readonly batch: Micrograms;
  readonly formula: ReturnType<typeof formulaAsTyped>["formula"];
  readonly nameOf: ReturnType<typeof nameOfLine>;
}): ReactNode {
  const formulas = [...checked.formulas.filter(({ id }) => id !== formula.id), formula];
  return (
    <details>
      <summary>What to weigh for {massInFull(batch)}, its usual batch</summary>
      <WeighUpTables sheets={weighUpWithPremixes(formulas, formula.id, whole(batch), checked.step)} nameOf={nameOf} />
    </details>
  );
}
