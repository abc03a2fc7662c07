import Form from "next/form";
import type { Route } from "next";
import type { ReactNode } from "react";
import { Field } from "./field";
import "./asking-form.css";

interface Chosen {
  readonly action: Route;
  readonly fields: readonly { readonly name: string; readonly label: string; readonly value: string }[];
  readonly button: string;
  /** What else the address says. */
  readonly carried?: Readonly<Record<string, string>>;
}

/** Days that are asked of a page by its address, so that it works without scripts. */
export const DayChoice = ({ action, fields, button, carried = {} }: Chosen): ReactNode => (
  <Form action={action} className="asking day-choice">
    {Object.entries(carried).map(([name, value]) => (
      <input key={name} type="hidden" name={name} value={value} />
    ))}
    <div className="in-a-row">
      {fields.map(({ name, label, value }) => (
        <Field key={name} type="date" name={name} label={label} defaultValue={value} />
      ))}
      <button className="button">{button}</button>
    </div>
  </Form>
);
