"use client";

import { Fragment, type ReactNode } from "react";
import type { FormAnswer } from "@/app/_ui/form-answer";
import { type Drawing, FormControl, UnderField } from "@/app/_ui/form-control";
import { FormRow } from "@/app/_ui/form-row";
import { FormShown } from "@/app/_ui/form-shown";
import { FormSummary } from "@/app/_ui/form-summary";
import { type FormValues, rowsOf, withRows } from "@/app/_ui/form-values";
import { useRecordForm } from "@/app/_ui/record-form-state";
import { Sign } from "@/app/_ui/sign";
import { counted } from "@/lib/edge/counted";
import { COUNT_FORM, COUNT_REASON, COUNTED, GROSS, TARE } from "@/lib/edge/forms/count-fields";
import type { CountedLot } from "./lots-to-count";
import type { FormField } from "@/lib/edge/forms/form-fields";
import "@/app/_ui/record-form.css";

interface Counting {
  readonly id: string;
  readonly day: string;
  readonly lots: readonly CountedLot[];
  readonly send: (before: FormAnswer, form: FormData) => Promise<FormAnswer>;
}

/** Every lot with room for what the balance shows; lots left empty are not counted. */
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
  const numbered = lots.map((lot, at) => ({ lot, row: `lines.${String(at)}` }));
  const carried = { id: drawn.values.id ?? id, day: drawn.values.day ?? day };
  return (
    <>
      <FormSummary
        answer={answer}
        fields={COUNT_FORM}
        ref={summaryRef}
        hasTyped={answer.kind === "refused" && lotsTyped(answer.values) > 0}
      />
      <form className="record-form count-form" action={dispatch} onSubmit={submit} ref={formRef} noValidate>
        <button hidden name="deed" value="look" />
        {Object.entries(carried).map(([name, value]) => (
          <input key={name} type="hidden" name={name} value={value} readOnly />
        ))}
        <FormShown answer={answer} ref={summaryRef} />
        {answer.kind === "shown" && (
          <p className="form-buttons">
            <button className="button first" name="deed" value="post" aria-disabled={waiting ? true : undefined}>
              Keep the count of {counted(lotsTyped(answer.values), "lot", "lots")}
            </button>
          </p>
        )}
        <Fragment key={version}>
          {KINDS.map(({ kind, ...of }) => {
            const rows = numbered.filter(({ lot }) => lot.kind === kind);
            return rows.length > 0 && <CountLedger key={kind} rows={rows} drawing={drawing} {...of} />;
          })}
          <FormRow field={COUNT_REASON} drawing={drawing} />
        </Fragment>
        <Buttons isShown={answer.kind === "shown"} waiting={waiting} />
      </form>
    </>
  );
}

/** Where the differences stand above, keeping them stands beside them. */
const Buttons = ({ isShown, waiting }: { readonly isShown: boolean; readonly waiting: boolean }): ReactNode => (
  <p className="form-buttons">
    <button
      className={isShown ? "button" : "button first"}
      name="deed"
      value="look"
      aria-disabled={waiting ? true : undefined}
    >
      Show the differences
    </button>
    {!isShown && (
      <button className="button" name="deed" value="post" aria-disabled={waiting ? true : undefined}>
        Keep the count
      </button>
    )}
  </p>
);

const KINDS = [
  { kind: "weighed", caption: "Lots that are weighed", columns: [GROSS, TARE] },
  { kind: "counted", caption: "Lots that are counted", columns: [COUNTED] },
  { kind: "units", caption: "Finished units", columns: [COUNTED] },
] as const;

/** The lots of which something was written. */
const lotsTyped = (values: FormValues): number =>
  rowsOf(values, "lines").filter(({ gross = "" }) => gross.trim() !== "").length;

/** What was typed, at its lot: after a reload there may be other lots, in other rows. */
function byLot(values: FormValues, lots: readonly CountedLot[]): FormValues {
  const rows = new Map(rowsOf(values, "lines").map((row) => [`${row.kind ?? ""} ${row.lot ?? ""}`, row]));
  return withRows(
    values,
    "lines",
    lots.map(({ of, lot }) => rows.get(`${of} ${lot}`) ?? {}),
  );
}

interface Kind {
  readonly caption: string;
  readonly columns: readonly FormField[];
  readonly drawing: Drawing;
}

interface Row {
  readonly lot: CountedLot;
  readonly row: string;
}

function CountLedger({ rows, caption, columns, drawing }: Kind & { readonly rows: readonly Row[] }): ReactNode {
  return (
    <>
      <h2>{caption}</h2>
      <table className="ledger count-lots">
        <caption className="unseen">{caption}, with room for what was counted</caption>
        <thead>
          <tr>
            <th scope="col">Lot</th>
            <th scope="col" className="number">
              Written down
            </th>
            {columns.map(({ label }) => (
              <th key={label} scope="col">
                {label}
              </th>
            ))}
          </tr>
        </thead>
        <tbody>
          {rows.map((each) => (
            <CountRow key={each.row} {...each} columns={columns} drawing={drawing} />
          ))}
        </tbody>
      </table>
    </>
  );
}

function CountRow({
  lot: { of, lot, name, bestBefore, gone, held, there, expected, unit },
  row,
  columns,
  drawing,
}: Row & Omit<Kind, "caption">): ReactNode {
  return (
    <tr>
      <th scope="row">
        {name}, <span className="whole-words">lot {lot}</span>
        {gone !== "" && (
          <small>
            <Sign sign="hourglass" tone="wrong">
              {gone}
            </Sign>
          </small>
        )}
        {[bestBefore, held].map((says) => says !== "" && <small key={says}>{says}</small>)}
        {Object.entries({ kind: of, lot, expected }).map(([field, value]) => (
          <input key={field} type="hidden" name={`${row}.${field}`} value={value} readOnly />
        ))}
      </th>
      <td className="number end">
        <span className="phone-only">Written down </span>
        {there}
      </td>
      {columns.map((field) => {
        const sent = `${row}.${field.name}`;
        return (
          <td key={field.name} className="count-field">
            <span className="label phone-only" aria-hidden="true">
              {field.label}
            </span>
            <span className="with-unit">
              <FormControl
                field={field}
                name={sent}
                drawing={drawing}
                label={`${field.label}, ${unit}, ${name}, lot ${lot}`}
                hasHint={false}
              />
              <span aria-hidden="true">{unit}</span>
            </span>
            <UnderField name={sent} drawing={drawing} />
          </td>
        );
      })}
    </tr>
  );
}
