"use client";

import { type ReactNode, startTransition, type SubmitEvent, useActionState, useState } from "react";
import { faultBeforeSending, isAtTheField } from "@/lib/edge/local-request";
import { countShown } from "@/lib/edge/figures";
import { Field } from "@/app/_ui/field";
import { NotOpened } from "@/app/_ui/not-opened";
import { Ledger } from "@/app/_ui/ledger";
import { openFile } from "@/app/book/files/actions";
import type { Holding, OpeningAnswer } from "./opening-answer";

const NOT_TRIED: OpeningAnswer = { kind: "not tried" };

/** A workshop file: looked into first, then opened in the place of the present one. It works without a script. */
export function OpenFile({ name, holds }: { readonly name: string; readonly holds: readonly Holding[] }): ReactNode {
  const [answer, send, waiting] = useActionState(openFile, NOT_TRIED);
  const [unsent, setUnsent] = useState<string | null>(null);
  const [called, setCalled] = useState("");
  const check = (event: SubmitEvent<HTMLFormElement>): void => {
    // Sent by hand, so that the browser keeps the file that was chosen.
    event.preventDefault();
    const form = new FormData(event.currentTarget, event.nativeEvent.submitter);
    const file = form.get("file");
    // One that was looked into before comes along, and need not be chosen again.
    const fault = file instanceof File && !form.has("carried") ? faultBeforeSending(file) : null;
    setUnsent(fault);
    setCalled(file instanceof File ? file.name : "");
    if (fault === null) startTransition(() => send(form));
  };
  const faults = unsent !== null ? [unsent] : answer.kind === "refused" ? answer.faults : [];
  const atField = faults.find(isAtTheField);
  return (
    <form action={send} onSubmit={check} className="open-file">
      <Field
        label="Workshop file"
        name="file"
        type="file"
        accept=".json,application/json"
        hint="JSON, at most 64 MiB. It is read on this computer and goes nowhere else."
        fault={atField}
      />
      <p>
        <button className="button" name="deed" value="look" aria-disabled={waiting ? true : undefined}>
          {waiting ? "Reading the file" : "Look into it"}
        </button>
      </p>
      {atField === undefined && faults.length > 0 && (
        <NotOpened faults={faults} called={called} again="look into the file again" />
      )}
      {answer.kind === "looked into" && unsent === null && <LookedInto answer={answer} present={{ name, holds }} />}
    </form>
  );
}

function LookedInto({
  answer,
  present,
}: {
  readonly answer: Extract<OpeningAnswer, { readonly kind: "looked into" }>;
  readonly present: { readonly name: string; readonly holds: readonly Holding[] };
}): ReactNode {
  const columns = [
    { name: "What", kind: "text" },
    { name: "Now open", kind: "number" },
    { name: "In the file", kind: "number" },
  ] as const;
  const countOf = (name: string): number => present.holds.find((holding) => holding.name === name)?.count ?? 0;
  return (
    <section className="block" role="status">
      <h2>
        {answer.name}, in the place of {present.name}
      </h2>
      <Ledger caption="What the file holds beside what is open now" columns={columns} className="book-ledger">
        {answer.holds.map(({ name, count }) => (
          <tr key={name}>
            <th scope="row">{name}</th>
            <td className="number" data-of={columns[1].name}>
              {countShown(countOf(name))}
            </td>
            <td className="number" data-of={columns[2].name}>
              {countShown(count)}
            </td>
          </tr>
        ))}
      </Ledger>
      <p className="foot label">
        All of the present workshop is replaced, with its drafts of formulas, what is retired, your bench hours, how
        often you count, how batches are called, how figures are written, and all that the shelf has been through; a
        copy of all that is kept in a file beside the store.
      </p>
      <input type="hidden" name="mark" value={answer.mark} readOnly />
      {answer.text === null ? (
        <p className="label">Choose the file again if the field above is empty.</p>
      ) : (
        <textarea hidden name="carried" value={answer.text} readOnly aria-label="The file that was looked into" />
      )}
      <p className="foot">
        <button className="button first" name="deed" value="open">
          Open {answer.name}
        </button>
      </p>
    </section>
  );
}
