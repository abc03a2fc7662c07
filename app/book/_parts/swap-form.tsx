import type { ReactNode } from "react";
import type { TypedSwap } from "@/lib/edge/forms/swap-form";
import { asSentence } from "@/app/_ui/sentence";
import { swapPath } from "./addresses";

interface Chosen {
  readonly id: string;
  readonly name: string;
}

interface Fault {
  readonly field: keyof TypedSwap;
  readonly message: string;
}

/** What is swapped for what; asked by address, so that it needs no script. */
export function SwapForm({
  formula,
  held,
  materials,
  typed,
  fault,
}: {
  readonly formula: string;
  /** Those that stand in the formula itself. */
  readonly held: readonly Chosen[];
  readonly materials: readonly Chosen[];
  readonly typed: TypedSwap;
  readonly fault: Fault | null;
}): ReactNode {
  return (
    <form action={swapPath(formula)} method="get" className="batch-form">
      <Field name="from" label="Take out" hint={null} fault={fault}>
        <Choices name="from" of={held} chosen={typed.from} />
      </Field>
      <Field name="to" label="Put in" hint={null} fault={fault}>
        <Choices name="to" of={materials} chosen={typed.to} />
      </Field>
      <Field name="percent" label="At, %" hint="Empty for what its use range proposes." fault={fault}>
        <input id="swap-percent" name="percent" defaultValue={typed.percent} inputMode="decimal" autoComplete="off" />
      </Field>
      <Field name="phase" label="In phase" hint="Empty for one that is cool enough." fault={fault}>
        <input id="swap-phase" name="phase" defaultValue={typed.phase} autoComplete="off" />
      </Field>
      <button className="button first">Look at it</button>
    </form>
  );
}

const Field = ({
  name,
  label,
  hint,
  fault,
  children,
}: {
  readonly name: keyof TypedSwap;
  readonly label: string;
  readonly hint: string | null;
  readonly fault: Fault | null;
  readonly children: ReactNode;
}): ReactNode => (
  <div className="field">
    <label htmlFor={`swap-${name}`}>{label}</label>
    {children}
    {fault?.field === name ? (
      <p className="field-fault">{asSentence(fault.message)}</p>
    ) : (
      hint !== null && <p className="label">{hint}</p>
    )}
  </div>
);

const Choices = ({
  name,
  of,
  chosen,
}: {
  readonly name: string;
  readonly of: readonly Chosen[];
  readonly chosen: string;
}): ReactNode => (
  <select id={`swap-${name}`} name={name} defaultValue={chosen}>
    <option value="">Choose one</option>
    {of.map(({ id, name: called }) => (
      <option key={id} value={id}>
        {called}
      </option>
    ))}
  </select>
);
