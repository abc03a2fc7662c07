"use client";

import { Fragment, type ReactNode } from "react";
import type { FormAnswer } from "@/app/_ui/form-answer";
import { type Drawing, FormControl, UnderField } from "@/app/_ui/form-control";
import { FormRow } from "@/app/_ui/form-row";
import { FormShown } from "@/app/_ui/form-shown";
import { FormSummary } from "@/app/_ui/form-summary";
import { type FormValues, rowsOf, withRows } from "@/app/_ui/form-values";
import { useRecordForm } from "@/app/_ui/record-form-state";
import { COUNT_FORM, COUNT_REASON, GROSS, TARE } from "@/lib/edge/forms/count-form";
import "@/app/_ui/record-form.css";

export interface CountedLot {
  readonly lot: string;
  readonly material: string;
  readonly bestBefore: string;
  /** What is written down, as it is shown and as the form sends it. */
  readonly there: string;
  readonly expected: string;
  readonly unit: string;
}

interface Counting {
  readonly id: string;
  readonly day: string;
  readonly lots: readonly CountedLot[];
  readonly send: (before: FormAnswer, form: FormData) => Promise<FormAnswer>;
}

/** Every lot with room for what the scale says; lots left empty are not counted. */
export function CountForm({ id, day, lots, send }: Counting): ReactNode {
  const { answer, drawn, version, waiting, dispatch, submit, formRef, summaryRef } = useRecordForm({
    values: { id, day },
    seen: "",
    send,
  });
  const drawing: Drawing = {
    values: byLot(drawn.values, lots),
    notes: drawn.notes,
    faults: answer.kind === "refused" ? answer.faults : [],
    choices: {},
    money: "",
    fixed: [],
  };
  const carried = { id: drawn.values.id ?? id, day: drawn.values.day ?? day };
  return (
    <>
      <FormSummary answer={answer} fields={COUNT_FORM} ref={summaryRef} />
      <form className="record-form count-form" action={dispatch} onSubmit={submit} ref={formRef} noValidate>
        <button hidden name="deed" value="look" />
        {Object.entries(carried).map(([name, value]) => (
          <input key={name} type="hidden" name={name} value={value} readOnly />
        ))}
        <Fragment key={version}>
          <CountLedger lots={lots} drawing={drawing} />
          <FormRow field={COUNT_REASON} drawing={drawing} />
        </Fragment>
        <FormShown answer={answer} ref={summaryRef} />
        <p className="form-buttons">
          <button className="button first" name="deed" value="look" aria-disabled={waiting ? true : undefined}>
            Show the differences
          </button>
          <button className="button" name="deed" value="post" aria-disabled={waiting ? true : undefined}>
            Post the count
          </button>
        </p>
      </form>
    </>
  );
}

/** What was typed, at its lot: after a reload there may be other lots, in other rows. */
function byLot(values: FormValues, lots: readonly CountedLot[]): FormValues {
  const rows = new Map(rowsOf(values, "lines").map((row) => [row.lot, row]));
  return withRows(
    values,
    "lines",
    lots.map(({ lot }) => rows.get(lot) ?? {}),
  );
}

function CountLedger({
  lots,
  drawing,
}: {
  readonly lots: readonly CountedLot[];
  readonly drawing: Drawing;
}): ReactNode {
  return (
    <table className="ledger count-lots">
      <caption className="unseen">The lots, with room for what the scale says</caption>
      <thead>
        <tr>
          <th scope="col">Lot</th>
          <th scope="col" className="number">
            Written down
          </th>
          <th scope="col">Scale says</th>
          <th scope="col">Less the vessel</th>
        </tr>
      </thead>
      <tbody>
        {lots.map((lot, at) => (
          <CountRow key={lot.lot} lot={lot} row={`lines.${String(at)}`} drawing={drawing} />
        ))}
      </tbody>
    </table>
  );
}

function CountRow({
  lot: { lot, material, bestBefore, there, expected, unit },
  row,
  drawing,
}: {
  readonly lot: CountedLot;
  readonly row: string;
  readonly drawing: Drawing;
}): ReactNode {
  return (
    <tr>
      <th scope="row">
        {material}, lot {lot}
        <small>{bestBefore}</small>
        <input type="hidden" name={`${row}.lot`} value={lot} readOnly />
        <input type="hidden" name={`${row}.expected`} value={expected} readOnly />
      </th>
      <td className="number end">{there}</td>
      {[GROSS, TARE].map((field) => {
        const name = `${row}.${field.name}`;
        return (
          <td key={field.name} className="count-field">
            <span className="label phone-only" aria-hidden="true">
              {field.label}
            </span>
            <span className="with-unit">
              <FormControl
                field={field}
                name={name}
                drawing={drawing}
                label={`${field.label}, ${unit}, ${material}, lot ${lot}`}
                hasHint={false}
              />
              <span aria-hidden="true">{unit}</span>
            </span>
            <UnderField name={name} drawing={drawing} />
          </td>
        );
      })}
    </tr>
  );
}
