import type { ReactNode } from "react";
import type { MonthAlone } from "@/lib/edge/forms/typed-day";
import { typedOf } from "@/lib/edge/forms/unchosen";
import type { Control, FormField } from "@/lib/edge/forms/form-fields";
import type { Choice } from "./choice-filter";
import { eitherName, eitherOf } from "./either";
import type { FormFault } from "./form-answer";
import type { FormValues } from "./form-values";
import { RecordChoice } from "./record-choice";
import { asSentence } from "./sentence";
import { valueForStyles } from "./value-for-styles";

/** What every field of one form is drawn with. */
export interface Drawing {
  readonly values: FormValues;
  readonly faults: readonly FormFault[];
  readonly notes: Readonly<Record<string, string>>;
  /** What can be chosen for a reference, by the list that it refers to. */
  readonly choices: Readonly<Record<string, readonly Choice[]>>;
  /** The sign of the currency, beside money. */
  readonly money: string;
  /** Fields that stay as they are. */
  readonly fixed: readonly string[];
  /** What stands under a row, besides its fields. */
  readonly underRow?: UnderRow | undefined;
}

/** @param row  under which the row's fields are sent, as `lines.4` */
export type UnderRow = (row: string, values: FormValues) => ReactNode;

export const fieldId = (name: string): string => `field-${name}`;

/** The parts that stand under a field, by their ids. */
export const describedBy = (...ids: readonly (string | false | undefined)[]): string | undefined =>
  ids.filter(Boolean).join(" ") || undefined;

export const faultOf = ({ faults }: Drawing, name: string): string | undefined =>
  faults.find((fault) => fault.name === name)?.message;

export const hintId = (name: string): string => `${fieldId(name)}-hint`;
export const faultId = (name: string): string => `${fieldId(name)}-fault`;

interface Named {
  /** Under which it is sent. */
  readonly name: string;
  readonly drawing: Drawing;
  /** Said in place of a label of its own. */
  readonly label?: string | undefined;
  readonly hasHint: boolean;
}

const INPUT_MODES: Partial<Readonly<Record<Control["kind"], "decimal" | "numeric">>> = {
  money: "decimal",
  percent: "decimal",
  number: "decimal",
  "whole number": "numeric",
};

/** A month alone can only be written down; half a date was sent marked, and cannot stand in a date field again. */
const dayInput = (monthAlone: MonthAlone, value: string) =>
  monthAlone === "refused"
    ? { type: "date", defaultValue: typedOf(value) === null ? value : "", onInput: valueForStyles }
    : { type: "text", defaultValue: value };

/** The control of one field alone: what is typed into, chosen from or ticked. */
export function FormControl({ field, ...named }: Named & { readonly field: FormField }): ReactNode {
  const { name, drawing, label, hasHint } = named;
  const { control } = field;
  const value = drawing.values[name] ?? "";
  const shared = {
    id: fieldId(name),
    name,
    "aria-label": label,
    "aria-required": field.required ? true : undefined,
    "aria-invalid": faultOf(drawing, name) === undefined ? undefined : true,
    "aria-describedby": describedBy(
      hasHint && hintId(name),
      (faultOf(drawing, name) ?? drawing.notes[name]) !== undefined && faultId(name),
    ),
  };
  // Of a record on paper, fields in which nothing is written are left out: a style sheet knows them by a placeholder.
  const written = { ...shared, defaultValue: value, placeholder: " " };
  if (drawing.fixed.includes(name)) return <input {...written} readOnly />;
  switch (control.kind) {
    case "choice":
      return (
        <select {...shared} defaultValue={value}>
          <Options options={control.options} value={value} isRequired={field.required} none={field.none} />
        </select>
      );
    case "reference":
      return (
        <RecordChoice
          {...shared}
          value={value}
          none={field.required ? "Choose one" : "None"}
          groups={[{ name: null, options: drawing.choices[control.to] ?? [] }]}
        />
      );
    case "yes or no":
      return <input {...shared} type="checkbox" value="yes" defaultChecked={value === "yes" || value === "on"} />;
    case "days":
      return <textarea {...written} rows={Math.max(3, value.split("\n").length)} />;
    case "day":
      return <input {...written} {...dayInput(control.monthAlone, value)} />;
    case "text":
      if (control.isLong) return <textarea {...written} rows={1} />;
      return <input {...written} />;
    case "hidden":
    case "amount":
    case "money":
    case "percent":
    case "percent or rest":
    case "number":
    case "temperature":
    case "whole number":
      return <input {...written} inputMode={INPUT_MODES[control.kind]} />;
    case "lines":
      throw new Error("rows are drawn by themselves");
  }
}

/** What can be chosen; what stands and is there no longer is said to be so. */
const Options = ({
  options,
  value,
  isRequired,
  none = "None",
}: {
  readonly none?: string | undefined;
  readonly options: readonly { readonly value: string; readonly label: string }[];
  readonly value: string;
  readonly isRequired: boolean;
}): ReactNode => (
  <>
    {(!isRequired || value === "") && <option value="">{isRequired ? "Choose one" : none}</option>}
    {options.map(({ value: each, label }) => (
      <option key={each} value={each}>
        {label}
      </option>
    ))}
    {value !== "" && options.every((each) => each.value !== value) && <option value={value}>No longer there</option>}
  </>
);

/** One choice for two references of which a row holds one. */
export function EitherControl({
  fields,
  row,
  drawing,
  label,
}: {
  readonly fields: readonly FormField[];
  readonly row: string;
  readonly drawing: Drawing;
  readonly label: string;
}): ReactNode {
  const name = eitherName(row);
  const value = drawing.values[name] ?? "";
  const groups = eitherOf(fields).map(({ name: field, label: group, control }) => ({
    name: group,
    options: (control.kind === "reference" ? (drawing.choices[control.to] ?? []) : []).map((option) => ({
      ...option,
      value: `${field} ${option.value}`,
    })),
  }));
  const note = faultOf(drawing, name) ?? drawing.notes[name];
  return (
    <RecordChoice
      id={fieldId(name)}
      name={name}
      aria-label={label}
      aria-invalid={faultOf(drawing, name) === undefined ? undefined : true}
      aria-describedby={describedBy(note !== undefined && faultId(name))}
      value={value}
      none="Choose one"
      groups={groups}
      either={eitherOf(fields)[0]?.name}
    />
  );
}

/** What is wrong with a field, or a remark; under it, and read with it. */
export function UnderField({ name, drawing }: { readonly name: string; readonly drawing: Drawing }): ReactNode {
  const fault = faultOf(drawing, name);
  const note = drawing.notes[name];
  if (fault === undefined && note === undefined) return null;
  return (
    <p className={fault === undefined ? "field-note" : "field-fault"} id={faultId(name)}>
      {asSentence(fault ?? note ?? "")}
    </p>
  );
}
