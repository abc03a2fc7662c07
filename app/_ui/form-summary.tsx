import type { ReactNode, Ref } from "react";
import type { FormField } from "@/lib/edge/forms/form-fields";
import { NOTHING } from "@/lib/edge/forms/nothing-typed";
import { NO_BREAK } from "@/lib/edge/shown-digits";
import { type Choice, choiceWords } from "./choice-filter";
import { eitherOf } from "./either";
import { type FormAnswer, isGone, type Meanwhile } from "./form-answer";
import { fieldId } from "./form-control";
import { afterItsName, asSentence } from "./sentence";

/** How a field is called in a sentence: `What goes in, line 3, percent by weight`. */
export function calledField(name: string, fields: readonly FormField[]): string {
  const [list = "", at, inner] = name.split(".");
  const field = fields.find((one) => one.name === list);
  if (field === undefined) return "";
  if (at === undefined || field.control.kind !== "lines") return field.label;
  const of = field.control.fields.find((one) => one.name === inner) ?? eitherOf(field.control.fields)[0];
  return `${field.label}, line ${String(Number(at) + 1)}${of === undefined ? "" : `, ${of.label.toLowerCase()}`}`;
}

/** Why a form was not kept: each fault with a way to its field, and what the change would break elsewhere. */
export function FormSummary({
  answer,
  fields,
  choices = {},
  money = "",
  ref,
  hasTyped = true,
}: {
  readonly answer: FormAnswer;
  /** Whether anything was written that could have been lost. */
  readonly hasTyped?: boolean;
  readonly fields: readonly FormField[];
  readonly choices?: Readonly<Record<string, readonly Choice[]>>;
  readonly money?: string;
  readonly ref: Ref<HTMLElement>;
}): ReactNode {
  switch (answer.kind) {
    case "not sent":
    case "rearrange":
    case "shown":
      return null;
    case "refused":
      return (
        <section className="fault form-summary" role="alert" ref={ref} tabIndex={-1} autoFocus>
          <h2>Not kept yet</h2>
          <p>{hasTyped && "What you wrote is still here. "}Mend what is listed and keep it again.</p>
          <ul className="fault-list">
            {answer.faults.map(({ name, message }, at) => (
              <li key={at}>
                <Fault name={name} called={name === null ? "" : calledField(name, fields)} message={message} />
              </li>
            ))}
            {answer.breaks.map((sentence) => (
              <li key={sentence}>{asSentence(sentence)}</li>
            ))}
          </ul>
        </section>
      );
    case "changed meanwhile":
      return (
        <section className="fault form-summary" role="alert" ref={ref} tabIndex={-1} autoFocus>
          <h2>Changed meanwhile, in another tab or window</h2>
          {isGone(answer) ? (
            <p>It was removed there. What you wrote is still here: keep it as a new one, or leave it.</p>
          ) : (
            <>
              <p>
                Nothing was overwritten, and what you wrote is still here. Keep it again to put it in the place of what
                was kept there.
              </p>
              <ul className="fault-list">
                {answer.changes.map((change) => (
                  <Changed key={change.label} change={change} fields={fields} choices={choices} money={money} />
                ))}
              </ul>
            </>
          )}
        </section>
      );
  }
}

function Changed({
  change: { label, here, there },
  fields,
  choices,
  money,
}: {
  readonly change: Meanwhile;
  readonly fields: readonly FormField[];
  readonly choices: Readonly<Record<string, readonly Choice[]>>;
  readonly money: string;
}): ReactNode {
  const shown = shownAs(
    fields.find((field) => field.label === label),
    choices,
    money,
  );
  return (
    <li>
      <b>{label}</b>: kept in the other window: <b>{shown(there)}</b>; yours: <b>{shown(here)}</b>
    </li>
  );
}

/** A value as its field shows it: money with its sign, a figure with its unit, what was chosen by its name. */
function shownAs(
  field: FormField | undefined,
  choices: Readonly<Record<string, readonly Choice[]>>,
  money: string,
): (value: string) => string {
  if (field === undefined) return (value) => value;
  const { control, unit } = field;
  return (value) => {
    if (value === NOTHING) return value;
    switch (control.kind) {
      case "money":
        return `${money}${value}`;
      case "choice":
        return control.options.find((option) => option.value === value)?.label ?? value;
      case "reference": {
        const chosen = choices[control.to]?.find((choice) => choice.value === value);
        return chosen === undefined ? value : choiceWords(chosen);
      }
      case "hidden":
      case "text":
      case "amount":
      case "percent":
      case "percent or rest":
      case "number":
      case "temperature":
      case "whole number":
      case "day":
      case "days":
      case "yes or no":
      case "lines":
        return unit === undefined ? value : `${value}${NO_BREAK}${unit}`;
    }
  };
}

function Fault({
  name,
  called,
  message,
}: {
  readonly name: string | null;
  readonly called: string;
  readonly message: string;
}): ReactNode {
  if (name === null || called === "") return asSentence(message);
  return (
    <>
      <a href={`#${fieldId(name)}`}>{called}</a>
      {afterItsName(message)}
    </>
  );
}
