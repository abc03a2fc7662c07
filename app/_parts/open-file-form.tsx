"use client";

import { type ReactNode, type SubmitEvent, useActionState, useState } from "react";
import { faultBeforeSending, isAtTheField } from "@/lib/edge/local-request";
import { Field } from "@/app/_ui/field";
import { NotOpened } from "@/app/_ui/not-opened";
import { openFile } from "../actions";
import { NOT_TRIED, type Over } from "./opening-state";

/** Sends a workshop file. It works without a script; with one, a file that cannot be read is told before it is sent. */
export function OpenFileForm({ over }: { readonly over: Over }): ReactNode {
  const [opening, open, waiting] = useActionState(openFile, NOT_TRIED);
  const [checked, setChecked] = useState<{ readonly fault: string | null; readonly called: string } | null>(null);
  const check = (event: SubmitEvent<HTMLFormElement>): void => {
    const file = new FormData(event.currentTarget).get("file");
    if (!(file instanceof File)) return;
    const fault = faultBeforeSending(file);
    setChecked({ fault, called: file.name });
    if (fault !== null) event.preventDefault();
  };
  const told = checked?.fault ? [checked.fault] : opening.kind === "refused" ? opening.faults : [];
  const atField = told.find(isAtTheField);
  return (
    <>
      <form action={open} onSubmit={check} noValidate>
        <input type="hidden" name="over" value={over} readOnly />
        <Field
          label="Workshop file"
          name="file"
          type="file"
          accept=".json,application/json"
          required
          hint="JSON, at most 64 MiB. It is read on this computer and goes nowhere else."
          fault={atField}
        />
        <button className="button" aria-disabled={waiting ? true : undefined}>
          {waiting ? "Reading the file" : "Open this file"}
        </button>
      </form>
      {atField === undefined && told.length > 0 && (
        <NotOpened faults={told} called={checked?.called} again="open the file again" />
      )}
    </>
  );
}
