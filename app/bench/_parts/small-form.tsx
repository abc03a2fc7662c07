"use client";

import { type ReactNode, type SubmitEvent, useActionState, useId, useState } from "react";
import { NOT_SENT } from "@/app/_ui/asking-answer";
import { asSentence } from "@/app/_ui/sentence";
import type { Instant } from "@/lib/domain/bench/batch";
import { readBenchNote } from "@/lib/edge/forms/bench-note";
import type { Faults } from "@/lib/edge/forms/posting-forms";
import { writeANote } from "../actions";
import { Hidden } from "./hidden";
import { fieldsAsForm } from "./line-at-hand";
import type { BenchOnPage } from "./bench-view";
import type { Notes } from "./use-notes";
import { askWho } from "./who-writes";

export interface SmallField {
  readonly name: string;
  readonly label: string;
  readonly options?: readonly { readonly value: string; readonly label: string }[];
}

interface Small {
  readonly view: BenchOnPage;
  readonly notes: Notes;
  readonly carried: Readonly<Record<string, string>>;
  readonly fields: readonly SmallField[];
  readonly button: string;
}

/** A note of a few fields. With scripts it goes through the device's queue, without them it is sent as a form. */
export function SmallForm({ view, notes, carried, fields, button }: Small): ReactNode {
  const [answer, send] = useActionState(writeANote, NOT_SENT);
  const [faults, setFaults] = useState<Faults>({});
  const told: Faults = answer.kind === "refused" ? answer.faults : faults;
  const submit = (event: SubmitEvent<HTMLFormElement>): void => {
    event.preventDefault();
    const form = event.currentTarget;
    const sent: Record<string, string> = {};
    for (const [name, value] of new FormData(form)) if (typeof value === "string") sent[name] = value;
    const read = readBenchNote(fieldsAsForm({ ...sent, who: notes.who, key: "new" }), "" as Instant);
    const found = read !== null && "faults" in read ? read.faults : {};
    setFaults(found);
    if (found.who !== undefined) askWho();
    if (Object.keys(found).length > 0) return;
    notes.write(sent);
    form.reset();
  };
  return (
    <form className="small-note" action={send} onSubmit={submit} noValidate>
      <Hidden
        values={{
          ...carried,
          batch: view.batch,
          key: `${view.newKeys[1] ?? ""} ${carried.kind ?? ""} ${carried.strikes ?? carried.what ?? ""}`.trim(),
          who: notes.who,
        }}
      />
      {answer.kind === "refused" && answer.says !== null && (
        <p className="fault" role="alert">
          {answer.says}
        </p>
      )}
      {fields.map((field) => (
        <SmallInput
          key={field.name}
          field={field}
          fault={told[field.name]}
          typed={answer.kind === "refused" ? answer.typed[field.name] : ""}
        />
      ))}
      <button className="button">{button}</button>
    </form>
  );
}

interface Input {
  readonly field: SmallField;
  readonly fault: string | undefined;
  readonly typed: string | undefined;
}

function SmallInput({ field: { name, label, options }, fault, typed }: Input): ReactNode {
  const id = useId();
  const shared = {
    id,
    name,
    defaultValue: typed,
    "aria-invalid": fault === undefined ? undefined : (true as const),
    "aria-describedby": fault === undefined ? undefined : `${id}fault`,
  };
  return (
    <div className={fault === undefined ? "field" : "field wrong"}>
      <label htmlFor={id}>{label}</label>
      {options ? (
        <select {...shared}>
          <option value="">Choose one</option>
          {options.map((option) => (
            <option key={option.value} value={option.value}>
              {option.label}
            </option>
          ))}
        </select>
      ) : (
        <input {...shared} autoComplete="off" />
      )}
      {fault !== undefined && (
        <p className="field-fault" id={`${id}fault`}>
          {asSentence(fault)}
        </p>
      )}
    </div>
  );
}
