"use client";

import type { ReactNode } from "react";
import { asSentence } from "@/app/_ui/sentence";

interface OneField {
  readonly name: string;
  readonly label: string;
  readonly fault: string | undefined;
  readonly typed: string | undefined;
  readonly className?: string;
  readonly inputMode?: "decimal";
}

/** A field in big type, with what is wrong under it. */
export function Field({ name, label, fault, typed, className = "", inputMode }: OneField): ReactNode {
  const id = `weigh-${name}`;
  return (
    <div className={`field ${className}${fault === undefined ? "" : " wrong"}`}>
      <label htmlFor={id}>{label}</label>
      <input
        id={id}
        name={name}
        defaultValue={typed}
        autoComplete="off"
        inputMode={inputMode}
        aria-invalid={fault === undefined ? undefined : true}
        aria-describedby={fault === undefined ? undefined : `${id}-fault`}
      />
      {fault !== undefined && (
        <p className="field-fault" id={`${id}-fault`}>
          {asSentence(fault)}
        </p>
      )}
    </div>
  );
}
