import { type InputHTMLAttributes, type ReactNode, useId } from "react";

/** A labelled field; what is wrong with it stands under it and is read with it. */
export function Field({
  label,
  fault,
  hint,
  ...input
}: {
  readonly label: string;
  readonly fault?: string | undefined;
  readonly hint?: string;
} & InputHTMLAttributes<HTMLInputElement>): ReactNode {
  const id = useId();
  const [hintId, faultId] = [`${id}hint`, `${id}fault`];
  const describedBy = [hint && hintId, fault && faultId].filter(Boolean).join(" ");
  return (
    <div className={fault ? "field wrong" : "field"}>
      <label htmlFor={id}>{label}</label>
      <input id={id} {...input} aria-invalid={fault ? true : undefined} aria-describedby={describedBy || undefined} />
      {hint && (
        <p className="label" id={hintId}>
          {hint}
        </p>
      )}
      {fault && (
        <p className="field-fault" id={faultId}>
          {fault}
        </p>
      )}
    </div>
  );
}
