import { Fragment, type ReactNode } from "react";

/** One line of opened arithmetic. */
export interface WorkingLine {
  readonly figure: string;
  /** Why this figure, or what it is. */
  readonly reason: ReactNode;
  /** What is done with it to what stands above. */
  readonly operator?: "+" | "−" | "×" | "÷";
  /** It is what the lines above come to: a rule is drawn over it. */
  readonly isResult?: boolean;
}

/** A figure opened to its arithmetic: figures right, operators left, reasons beside them. */
export function Working({
  lines,
  notes = [],
}: {
  readonly lines: readonly WorkingLine[];
  readonly notes?: readonly ReactNode[];
}): ReactNode {
  return (
    <>
      {lines.length > 0 && (
        <dl className="working">
          {lines.map(({ figure, reason, operator, isResult }, at) => (
            <Fragment key={at}>
              <dt className={isResult ? "result" : undefined}>
                {operator && <span className="operator">{operator}</span>}
                {figure}
              </dt>
              <dd className={isResult ? "result" : undefined}>{reason}</dd>
            </Fragment>
          ))}
        </dl>
      )}
      {notes.length > 0 && (
        <div className="working-note">
          {notes.map((note, at) => (
            <p key={at}>{note}</p>
          ))}
        </div>
      )}
    </>
  );
}
