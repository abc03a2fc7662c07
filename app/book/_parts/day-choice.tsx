import Form from "next/form";
import type { Route } from "next";
import type { ReactNode } from "react";
import { Field } from "@/app/_ui/field";

interface Chosen {
  readonly action: Route;
  readonly fields: readonly { readonly name: string; readonly label: string; readonly value: string }[];
  readonly button: string;
}

/** Days that are asked of a page by its address, so that it works without scripts. */
export const DayChoice = ({ action, fields, button }: Chosen): ReactNode => (
  <Form action={action} className="asking day-choice">
    <div className="in-a-row">
      {fields.map(({ name, label, value }) => (
        <Field key={name} type="date" name={name} label={label} defaultValue={value} />
      ))}
      <button className="button">{button}</button>
    </div>
  </Form>
);
