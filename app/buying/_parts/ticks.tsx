import type { ReactNode } from "react";

interface TicksOf {
  readonly legend: string;
  readonly name: string;
  readonly all: readonly { readonly id: string; readonly name: string }[];
  readonly ticked: readonly string[];
}

/** Any of a few, each ticked by itself. */
export const Ticks = ({ legend, name, all, ticked }: TicksOf): ReactNode => (
  <fieldset className="buying-ticks">
    <legend>{legend}</legend>
    {all.map((each) => (
      <label key={each.id}>
        <input type="checkbox" name={name} value={each.id} defaultChecked={ticked.includes(each.id)} />
        {each.name}
      </label>
    ))}
  </fieldset>
);
