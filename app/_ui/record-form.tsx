"use client";

import type { ReactNode } from "react";
import type { FormField } from "@/lib/edge/forms/form-fields";
import { ANEW, type FormAnswer, isGone } from "./form-answer";
import type { Choice } from "./choice-filter";
import type { Drawing, UnderRow } from "./form-control";
import { FormLines } from "./form-lines";
import { FormRow } from "./form-row";
import { FormShown } from "./form-shown";
import { FormSummary } from "./form-summary";
import type { Drawn, FormValues } from "./form-values";
import { type FormToState, useRecordForm } from "./record-form-state";
import "./record-form.css";

export interface RecordFormProps extends FormToState {
  readonly fields: readonly FormField[];
  readonly choices: Readonly<Record<string, readonly Choice[]>>;
  readonly money: string;
  readonly fixed?: readonly string[];
  /** The buttons that send the form, the first of which Enter presses. */
  readonly buttons: readonly { readonly deed: string; readonly label: string }[];
  /** What stands under a field, by the field's name. */
  readonly under?: Readonly<Record<string, (values: FormValues, notes: Drawn["notes"]) => ReactNode>>;
  readonly underRow?: UnderRow | undefined;
}

/**
 * The form of any record, drawn from its fields as data. It works without scripts: every button sends it, and what
 * was typed comes back with the answer. With scripts, rows are rearranged at once and the fields keep what was typed.
 */
export function RecordForm(props: RecordFormProps): ReactNode {
  const { answer, dispatch, waiting, drawn, version, formRef, summaryRef, ...state } = useRecordForm(props);
  const buttons = isGone(answer) ? KEEP_ANEW : props.buttons;
  return (
    <>
      <FormSummary answer={answer} fields={props.fields} choices={props.choices} money={props.money} ref={summaryRef} />
      {state.hasReturned && (
        <p className="label typing-back" role="status">
          What you had typed here before is back.{" "}
          <button type="button" className="button plain" onClick={state.beginAfresh}>
            Clear what I typed
          </button>
        </p>
      )}
      <form
        className="record-form"
        action={dispatch}
        onSubmit={state.submit}
        onClick={state.press}
        ref={formRef}
        noValidate
      >
        <button hidden name="deed" value={buttons[0]?.deed} />
        <input type="hidden" name="seen" value={state.seen} readOnly />
        <FormBody key={version} props={props} drawn={drawn} answer={answer} />
        <FormShown answer={answer} ref={summaryRef} />
        <p className="form-buttons">
          {buttons.map(({ deed, label }, at) => (
            <button
              key={deed}
              className={at === 0 ? "button first" : "button"}
              name="deed"
              value={deed}
              aria-disabled={waiting ? true : undefined}
            >
              {label}
            </button>
          ))}
        </p>
      </form>
    </>
  );
}

const KEEP_ANEW = [{ deed: ANEW, label: "Keep it as a new one" }];

interface Body {
  readonly props: RecordFormProps;
  readonly drawn: Drawn;
  readonly answer: FormAnswer;
}

function FormBody({ props, drawn, answer }: Body): ReactNode {
  const { fields, choices, money, fixed = [], under = {}, underRow } = props;
  const drawing: Drawing = {
    values: drawn.values,
    notes: drawn.notes,
    faults: answer.kind === "refused" ? answer.faults : [],
    choices,
    money,
    fixed,
    underRow,
  };
  return fields.map((field) => {
    const { name, control } = field;
    const below = under[name]?.(drawn.values, drawn.notes);
    if (control.kind === "hidden")
      return <input key={name} type="hidden" name={name} value={drawn.values[name] ?? ""} readOnly />;
    if (control.kind === "lines")
      return (
        <FormLines key={name} field={field} fields={control.fields} called={control.called} drawing={drawing}>
          {below}
        </FormLines>
      );
    return (
      <FormRow key={name} field={field} drawing={drawing}>
        {below}
      </FormRow>
    );
  });
}
