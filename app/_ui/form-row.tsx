import type { ReactNode } from "react";
import type { FormField } from "@/lib/edge/forms/form-fields";
import { type Drawing, faultOf, fieldId, FormControl, hintId, UnderField } from "./form-control";

/** One field as a line of the form: its name left, the field, what helps to fill it right, what is wrong under it. */
export function FormRow({
  field,
  drawing,
  children,
}: {
  readonly field: FormField;
  readonly drawing: Drawing;
  /** What else stands under the field. */
  readonly children?: ReactNode;
}): ReactNode {
  const { name, label, control, hint, required } = field;
  const wrong = faultOf(drawing, name) !== undefined;
  const unit = control.kind === "money" ? drawing.money : undefined;
  return (
    <div className={`form-row kind-${control.kind.replaceAll(" ", "-")}${wrong ? " wrong" : ""}`}>
      <label htmlFor={fieldId(name)}>
        {label}
        {!required && control.kind !== "yes or no" && <small>optional</small>}
      </label>
      <div className="form-field">
        <div className="with-unit">
          {unit !== undefined && <span aria-hidden="true">{unit}</span>}
          <FormControl field={field} name={name} drawing={drawing} hasHint={hint !== undefined} />
          {field.unit !== undefined && <span>{field.unit}</span>}
        </div>
        <UnderField name={name} drawing={drawing} />
        {children}
      </div>
      {hint !== undefined && (
        <p className="label form-hint" id={hintId(name)}>
          {hint}
        </p>
      )}
    </div>
  );
}
