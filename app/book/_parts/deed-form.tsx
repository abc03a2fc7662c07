"use client";

import { type ReactNode, useActionState } from "react";
import { asSentence } from "@/app/_ui/sentence";
import { type DeedAnswer, NOT_DONE } from "./deed-answer";

/** One button that does one thing with a whole record, and why it was not done. */
export function DeedForm({
  act,
  label,
  children,
}: {
  readonly act: (before: DeedAnswer, form: FormData) => Promise<DeedAnswer>;
  readonly label: string;
  readonly children?: ReactNode;
}): ReactNode {
  const [answer, send, waiting] = useActionState(act, NOT_DONE);
  return (
    <form action={send} className="deed">
      {children}
      <button className="button" aria-disabled={waiting ? true : undefined}>
        {label}
      </button>
      {answer.kind === "refused" && (
        <div className="fault" role="alert">
          <p>{asSentence(answer.says)}.</p>
          {answer.names.length > 0 && (
            <ul className="fault-list">
              {answer.names.map((name) => (
                <li key={name}>{asSentence(name)}</li>
              ))}
            </ul>
          )}
        </div>
      )}
    </form>
  );
}
