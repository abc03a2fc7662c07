"use client";

import { type ReactNode, type SubmitEvent, useActionState, useState } from "react";
import { TOO_LARGE, UPLOAD_LIMIT_BYTES } from "@/lib/edge/local-request";
import { Field } from "@/app/_ui/field";
import { openFile } from "../actions";
import { FaultList } from "./fault-list";
import { NOT_TRIED, type Over } from "./opening-state";

/** Sends a workshop file. It works without a script; with one, a file that is too large is told before it is sent. */
export function OpenFileForm({ over }: { readonly over: Over }): ReactNode {
  const [opening, open, waiting] = useActionState(openFile, NOT_TRIED);
  const [tooLarge, setTooLarge] = useState(false);
  const check = (event: SubmitEvent<HTMLFormElement>): void => {
    const file = new FormData(event.currentTarget).get("file");
    const isTooLarge = file instanceof File && file.size > UPLOAD_LIMIT_BYTES;
    setTooLarge(isTooLarge);
    if (isTooLarge) event.preventDefault();
  };
  return (
    <>
      <form action={open} onSubmit={check}>
        <input type="hidden" name="over" value={over} readOnly />
        <Field
          label="Workshop file"
          name="file"
          type="file"
          accept=".json,application/json"
          required
          hint="JSON, at most 64 MiB. It is read on this computer and goes nowhere else."
        />
        <button className="button" aria-disabled={waiting ? true : undefined}>
          {waiting ? "Reading the file" : "Open this file"}
        </button>
      </form>
      {tooLarge && <FaultList faults={[TOO_LARGE]} />}
      {!tooLarge && opening.kind === "refused" && <FaultList faults={opening.faults} />}
    </>
  );
}
