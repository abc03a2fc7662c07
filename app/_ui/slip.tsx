import type { ReactNode } from "react";
import { Was } from "./was";

export interface SlipLine {
  readonly name: string;
  readonly figure: string;
  readonly tone?: "soft" | "warn";
  /** What the lines above come to. */
  readonly end?: boolean;
  /** What the figure was before it changed. */
  readonly was?: string;
}

/** A short reckoning: names left, figures right, a double rule under what they come to. */
export function Slip({ lines }: { readonly lines: readonly SlipLine[] }): ReactNode {
  return (
    <dl className="slip">
      {lines.map(({ name, figure, tone, end, was }, at) => (
        <div key={at} className={end ? "end" : undefined}>
          <dt className={tone === "warn" ? "warn" : undefined}>{name}</dt>
          <dd className={tone}>
            {was !== undefined && <Was now={figure} before={was} />} {figure}
          </dd>
        </div>
      ))}
    </dl>
  );
}
