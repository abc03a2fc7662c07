import type { ReactNode } from "react";

export interface SlipLine {
  readonly name: ReactNode;
  readonly figure: ReactNode;
  /** What the lines above come to. */
  readonly end?: boolean;
}

/** A short reckoning: names left, figures right, a double rule under what they come to. */
export function Slip({ lines }: { readonly lines: readonly SlipLine[] }): ReactNode {
  return (
    <dl className="slip">
      {lines.map(({ name, figure, end }, at) => (
        <div key={at} className={end ? "end" : undefined}>
          <dt>{name}</dt>
          <dd>{figure}</dd>
        </div>
      ))}
    </dl>
  );
}
