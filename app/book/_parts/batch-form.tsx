import type { ReactNode } from "react";
import type { BatchField, TypedBatch } from "@/lib/edge/forms/batch-size";
import { asSentence } from "@/app/_ui/sentence";
import { batchPath } from "./addresses";

interface Chosen {
  readonly id: string;
  readonly name: string;
}

export interface AskedBatch extends TypedBatch {
  readonly product: string;
}

/** How large the batch is to be; asked by address, so that it needs no script. */
export function BatchForm({
  formula,
  products,
  materials,
  asked,
  fault,
}: {
  readonly formula: string;
  readonly products: readonly Chosen[];
  readonly materials: readonly Chosen[];
  readonly asked: AskedBatch;
  readonly fault: { readonly field: BatchField; readonly message: string } | null;
}): ReactNode {
  const typed = (name: BatchField, label: string, hint: string): ReactNode => (
    <div className="field" key={name}>
      <label htmlFor={`batch-${name}`}>{label}</label>
      <input
        id={`batch-${name}`}
        name={name}
        defaultValue={asked[name]}
        autoComplete="off"
        aria-describedby={`batch-${name}-hint`}
        aria-invalid={fault?.field === name ? true : undefined}
      />
      <p className={fault?.field === name ? "field-fault" : "label"} id={`batch-${name}-hint`}>
        {fault?.field === name ? asSentence(fault.message) : hint}
      </p>
    </div>
  );
  return (
    <form action={batchPath(formula)} method="get" className="batch-form">
      {products.length > 0 && (
        <Choose name="product" label="Filled as" of={products} chosen={asked.product} none={null} />
      )}
      {typed("size", "Size", products.length > 0 ? "Units, as 24, or a weight, as 5 kg." : "A weight, as 5 kg.")}
      <Choose name="of" label="Or as far as this goes" of={materials} chosen={asked.of} none="Nothing chosen" />
      {typed("left", "Of which is left", "As 250 g; then the size above is left out.")}
      {typed("most", "The vessel holds", "As 3 kg; more than that becomes several batches.")}
      {typed("least", "And no less than", "As 500 g, what its stirrer needs.")}
      <button className="button first">Work it out</button>
    </form>
  );
}

const Choose = ({
  name,
  label,
  of,
  chosen,
  none,
}: {
  readonly name: string;
  readonly label: string;
  readonly of: readonly Chosen[];
  readonly chosen: string;
  readonly none: string | null;
}): ReactNode => (
  <div className="field">
    <label htmlFor={`batch-${name}`}>{label}</label>
    <select id={`batch-${name}`} name={name} defaultValue={chosen}>
      {none !== null && <option value="">{none}</option>}
      {of.map(({ id, name: called }) => (
        <option key={id} value={id}>
          {called}
        </option>
      ))}
    </select>
  </div>
);
