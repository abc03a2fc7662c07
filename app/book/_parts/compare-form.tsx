import type { ReactNode } from "react";
import type { Basis } from "@/lib/domain/plan-figures";
import type { Workshop } from "@/lib/domain/workshop";
import { comparePath } from "./addresses";

interface Asked {
  readonly first: string | undefined;
  readonly second: string | undefined;
  readonly product: string | undefined;
  readonly basis: Basis;
}

const BASIS_WORDS: Readonly<Record<Basis, string>> = {
  replacement: "If bought now",
  shelf: "From the shelf",
  average: "Average paid",
};

/** Which two, in which product, at which prices; asked by address, so that it needs no script. */
export function CompareForm({ workshop, asked }: { readonly workshop: Workshop; readonly asked: Asked }): ReactNode {
  const { formulas, products } = workshop;
  const choices = [
    { name: "first", label: "The first", of: formulas, chosen: asked.first },
    { name: "second", label: "The second", of: formulas, chosen: asked.second ?? formulas[1]?.id },
    { name: "product", label: "In one of", of: products, chosen: asked.product },
  ];
  return (
    <form action={comparePath()} method="get" className="compare-form in-a-row">
      {choices.map(({ name, label, of, chosen }) => (
        <div className="field" key={name}>
          <label htmlFor={`compare-${name}`}>{label}</label>
          <select id={`compare-${name}`} name={name} defaultValue={chosen}>
            {of.map(({ id, name: called }) => (
              <option key={id} value={id}>
                {called}
              </option>
            ))}
          </select>
        </div>
      ))}
      <div className="field">
        <label htmlFor="compare-basis">Prices</label>
        <select id="compare-basis" name="basis" defaultValue={asked.basis}>
          {Object.entries(BASIS_WORDS).map(([basis, words]) => (
            <option key={basis} value={basis}>
              {words}
            </option>
          ))}
        </select>
      </div>
      <button className="button">Compare</button>
    </form>
  );
}
