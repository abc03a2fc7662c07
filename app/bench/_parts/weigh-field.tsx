"use client";

import type { ReactNode } from "react";
import { asSentence } from "@/app/_ui/sentence";

interface OneField {
  readonly name: string;
  readonly label: string;
  readonly fault: string | undefined;
  readonly typed: string | undefined;
  readonly className?: string;
  /** Whether it is a mass: its unit stands in it. */
  readonly isGrams?: boolean;
  /** What else is said of it. */
  readonly describedBy?: string;
}

/** A field in big type, with what is wrong under it. */
export function Field({
  name,
  label,
  fault,
  typed,
  className = "",
  isGrams = false,
  describedBy,
}: OneField): ReactNode {
  const id = `weigh-${name}`;
  const described = [describedBy, fault && `${id}-fault`].filter(Boolean).join(" ") || undefined;
  return (
    <div className={`field ${className}${fault === undefined ? "" : " wrong"}`}>
      <label htmlFor={id}>
        {label}
        {isGrams && <span className="unseen">, in grams</span>}
      </label>
      <div className={isGrams ? "weigh-grams" : ""}>
        <input
          id={id}
          name={name}
          defaultValue={typed}
          autoComplete="off"
          inputMode={isGrams ? "decimal" : undefined}
          aria-invalid={fault === undefined ? undefined : true}
          aria-describedby={described}
        />
        {isGrams && <span aria-hidden="true">g</span>}
      </div>
      {fault !== undefined && (
        <p className="field-fault" id={`${id}-fault`}>
          {asSentence(fault)}
        </p>
      )}
    </div>
  );
}
