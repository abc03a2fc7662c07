import Form from "next/form";
import type { ReactNode } from "react";
import { Field } from "@/app/_ui/field";
import { type Asked, carriedBy, productPath } from "./basis";

/** A question to the page of one product: it is sent by address, so that it works without scripts, and what else is asked stays. */
export function AskingForm({
  product,
  asked,
  name,
  label,
  button,
  fault,
}: {
  readonly product: string;
  readonly asked: Asked;
  readonly name: "margin" | "month";
  readonly label: string;
  readonly button: string;
  readonly fault: string | null;
}): ReactNode {
  return (
    <Form action={productPath(product)} scroll={false} prefetch={false} className="asking">
      {carriedBy(asked)
        .filter(([key]) => key !== name)
        .map(([key, value]) => (
          <input key={key} type="hidden" name={key} value={value} />
        ))}
      <div className="in-a-row">
        <Field
          label={label}
          name={name}
          inputMode="decimal"
          autoComplete="off"
          defaultValue={asked[name] ?? ""}
          fault={fault ?? undefined}
        />
        <button className="button">{button}</button>
      </div>
    </Form>
  );
}
