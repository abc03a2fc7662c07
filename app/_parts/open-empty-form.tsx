"use client";

import { type ReactNode, useActionState } from "react";
import { Field } from "@/app/_ui/field";
import { openNothing } from "../actions";
import { FaultList } from "./fault-list";
import { FIRST_PRODUCT, NOT_TRIED, type Over } from "./opening-state";

/** Until it is given another, in the book. */
const CALLED = "My workshop";

/**
 * A name and a currency are all that an empty workshop needs, and it goes on to its first product where that is wanted.
 * What was typed stays where it is wrong.
 */
export function OpenEmptyForm({ over }: { readonly over: Over }): ReactNode {
  const [opening, open, waiting] = useActionState(openNothing, NOT_TRIED);
  const typed = opening.kind === "refused" ? opening.typed : undefined;
  const faults = opening.kind === "refused" ? opening.faults : [];
  const about = (key: string) =>
    faults
      .find((fault) => fault.startsWith(`workshop.${key}: `))
      ?.split(": ")
      .slice(1)
      .join(": ");
  const [name, currency] = [about("name"), about("currency")];
  return (
    <form action={open}>
      <input type="hidden" name="over" value={over} readOnly />
      <div className="in-a-row">
        <Field label="Name of the workshop" name="name" required defaultValue={typed?.name ?? CALLED} fault={name} />
        <Field
          label="Currency, three letters"
          name="currency"
          required
          defaultValue={typed?.currency ?? "GBP"}
          fault={currency}
        />
      </div>
      <button className="button" name="then" value={FIRST_PRODUCT} aria-disabled={waiting ? true : undefined}>
        Begin with the first product
      </button>
      <button className="button" aria-disabled={waiting ? true : undefined}>
        Begin with an empty workshop
      </button>
      {faults.length > 0 && !name && !currency && <FaultList faults={faults} />}
    </form>
  );
}
