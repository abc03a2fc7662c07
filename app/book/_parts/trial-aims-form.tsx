import type { ReactNode } from "react";
import type { Formula, FormulaLine } from "@/lib/domain/workshop";
import type { TypedAims } from "@/lib/edge/forms/trial-aims";
import { asSentence } from "@/app/_ui/sentence";
import { newTrialPath } from "./addresses";

interface Aims {
  readonly formula: Formula;
  readonly nameOf: (of: FormulaLine["of"]) => string;
  readonly typed: TypedAims;
  readonly fault: { readonly field: keyof TypedAims; readonly message: string } | null;
}

/** How large the trial is, and what is varied in it; asked by address, so that it needs no script. */
export const TrialAims = ({ formula, nameOf, typed, fault }: Aims): ReactNode => (
  <form action={newTrialPath(formula.id)} method="get" className="batch-form">
    <Typed name="size" label="Size" hint="As 100 g." typed={typed} fault={fault} />
    <div className="field">
      <label htmlFor="trial-line">Vary</label>
      <select id="trial-line" name="line" defaultValue={typed.line}>
        <option value="">Nothing: the formula as it stands</option>
        {formula.lines.map((line, at) => (
          <option key={at} value={String(at)}>
            {nameOf(line.of)}
          </option>
        ))}
      </select>
    </div>
    <Typed name="percent" label="to, %" hint="As 6; what takes the rest gives way." typed={typed} fault={fault} />
    <button className="button first">Work out what to weigh</button>
  </form>
);

const Typed = ({
  name,
  label,
  hint,
  typed,
  fault,
}: Pick<Aims, "typed" | "fault"> & {
  readonly name: "size" | "percent";
  readonly label: string;
  readonly hint: string;
}): ReactNode => (
  <div className="field">
    <label htmlFor={`trial-${name}`}>{label}</label>
    <input
      id={`trial-${name}`}
      name={name}
      defaultValue={typed[name]}
      autoComplete="off"
      aria-describedby={`trial-${name}-hint`}
      aria-invalid={fault?.field === name ? true : undefined}
    />
    <p className={fault?.field === name ? "field-fault" : "label"} id={`trial-${name}-hint`}>
      {fault?.field === name ? asSentence(fault.message) : hint}
    </p>
  </div>
);
