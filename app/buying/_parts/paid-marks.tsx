/** The shapes of suppliers in a drawing of prices: told apart without their colour. */
import type { ReactNode } from "react";

/** Each around its own middle, about eleven pixels wide. */
const SHAPES = [
  "M-5 0a5 5 0 1 0 10 0a5 5 0 1 0 -10 0Z",
  "M-4.5 -4.5h9v9h-9Z",
  "M0 -5.8L5.8 4.4H-5.8Z",
  "M0 -6.4L5 0L0 6.4L-5 0Z",
  "M-2 -5.5h4v3.5h3.5v4H2v3.5h-4V2h-3.5v-4H-2Z",
  "M0 5.8L5.8 -4.4H-5.8Z",
] as const;

/** The shape of the supplier at this place; beyond so many shapes they begin again, hollow. */
export const Mark = ({ at }: { readonly at: number }): ReactNode => (
  <path
    className={`paid-mark paid-${String(at % SHAPES.length)}${at >= SHAPES.length ? " paid-hollow" : ""}`}
    d={SHAPES[at % SHAPES.length] ?? SHAPES[0]}
  />
);

/** Which shape is whose. */
export const MarksOf = ({ suppliers }: { readonly suppliers: readonly string[] }): ReactNode => (
  <ul className="paid-legend" aria-label="Whose shape is whose">
    {suppliers.map((supplier, at) => (
      <li key={supplier}>
        <svg width="16" height="16" viewBox="-8 -8 16 16" aria-hidden="true">
          <Mark at={at} />
        </svg>
        {supplier}
      </li>
    ))}
  </ul>
);
