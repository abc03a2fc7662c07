import type { ReactNode } from "react";
import type { Basis } from "@/lib/domain/plan-figures";
import type { Workshop } from "@/lib/domain/workshop";
import { namedChoices } from "@/lib/edge/record-choices";
import { RecordChoice } from "@/app/_ui/record-choice";
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
  const [formulaChoices, productChoices] = [
    namedChoices(workshop, "formulas", formulas),
    namedChoices(workshop, "products", products),
  ];
  const [one, other] = formulaChoices;
  const choices = [
    { name: "first", label: "The first", of: formulaChoices, chosen: asked.first ?? one?.value },
    { name: "second", label: "The second", of: formulaChoices, chosen: asked.second ?? other?.value },
    { name: "product", label: "In one of", of: productChoices, chosen: asked.product ?? productChoices[0]?.value },
  ];
  return (
    <form action={comparePath()} method="get" className="compare-form">
      {choices.map(({ name, label, of, chosen }) => (
        <div className="field" key={name}>
          <label htmlFor={`compare-${name}`}>{label}</label>
          <RecordChoice
            id={`compare-${name}`}
            name={name}
            value={chosen ?? ""}
            none="Choose one"
            groups={[{ name: null, options: of }]}
          />
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
