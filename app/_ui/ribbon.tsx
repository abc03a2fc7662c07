import type { ReactNode } from "react";
import type { RibbonAxis as Axis } from "@/lib/edge/ribbon-axis";
import type { Ribbon as Drawing } from "@/lib/edge/ribbon";
import { ribbonMarkup } from "@/lib/edge/ribbon-markup";
import { percentAcross } from "@/lib/edge/ribbon-time";
import "./ribbon.css";

/**
 * The ribbon: what is held and what is lacking, over time. It is as wide as its column: what is stretched (body,
 * weeks) stands in an inner drawing whose units are ticks; what must keep its shape (hatching, pins, words) stands at
 * a percentage. Needs one `RibbonInks` on the page.
 */
export const Ribbon = ({
  ribbon,
  weeks,
}: {
  readonly ribbon: Drawing;
  readonly weeks: readonly number[];
}): ReactNode => (
  <svg
    className="ribbon"
    role="img"
    aria-label={ribbon.sentence}
    data-of={ribbon.of}
    width="100%"
    height={ribbon.height}
    // One text in the place of some thirty elements; its words are escaped where it is made.
    dangerouslySetInnerHTML={{ __html: ribbonMarkup(ribbon, weeks) }}
  />
);

/** The days named above ribbons. `narrow` keeps to the few names that a narrow column has room for. */
export function RibbonAxis({ axis, narrow = false }: { readonly axis: Axis; readonly narrow?: boolean }): ReactNode {
  const marks = (named: Axis["wide"], width: string): ReactNode => (
    <g className={width}>
      {named.map(({ at, text }) => (
        <g key={at}>
          <line x1={percentAcross(at, axis.span)} x2={percentAcross(at, axis.span)} y1={5} y2={20} />
          <text x={percentAcross(at, axis.span)} dx={5} y={16}>
            {text}
          </text>
        </g>
      ))}
    </g>
  );
  return (
    <svg className="ribbon-axis" aria-hidden="true" width="100%" height={20}>
      <rect className="ribbon-today" x={-1} y={4} width={2} height={16} />
      <text className="ribbon-axis-today" x={0} dx={6} y={16}>
        {axis.today}
      </text>
      {!narrow && marks(axis.wide, "ribbon-axis-wide")}
      {marks(axis.narrow, narrow ? "ribbon-axis-always" : "ribbon-axis-narrow")}
    </svg>
  );
}

const NOTCH = <path className="ink-woad-solid" d="M-7 0H7M-5.5 0L0 10 5.5 0z" />;
const HALF_NOTCH = <path className="ink-woad-solid" d="M0 0H8L0 10z" />;
const PENNANT = <path className="ink-madder-solid" d="M0 0V11M0 .7L11 3.7 0 6.7z" />;
const HOURGLASS = <path className="ink-madder-hollow" d="M-4.5 .7H4.5L-4.5 10.3H4.5z" />;
const RING = <circle className="ink-woad-ring" r={4} />;

/** The patterns and pins that every ribbon of a page shares; once on a page that draws ribbons. */
export function RibbonInks(): ReactNode {
  return (
    <svg className="ribbon-inks" aria-hidden="true" width={0} height={0}>
      <defs>
        <pattern id="ribbon-lack-ink" width={5} height={5} patternUnits="userSpaceOnUse">
          <rect className="ink-madder-wash" width={5} height={5} />
          <path className="ink-madder-hatch" d="M-1 1l2-2M0 5l5-5M4 6l2-2" />
        </pattern>
        <pattern id="ribbon-waste-ink" width={5} height={5} patternUnits="userSpaceOnUse">
          <circle className="ink-madder-dot" cx={2.5} cy={2.5} r={1.1} />
        </pattern>
        <g id="ribbon-notch">{NOTCH}</g>
        <g id="ribbon-today">{HALF_NOTCH}</g>
        <g id="ribbon-gone">{PENNANT}</g>
        <g id="ribbon-hourglass">{HOURGLASS}</g>
        <g id="ribbon-ring">{RING}</g>
      </defs>
    </svg>
  );
}

const KEY: readonly { readonly words: string; readonly drawing: ReactNode }[] = [
  {
    words: "on the shelf, falling with each run",
    drawing: <path className="ribbon-body ribbon-edge" d="M0 13V1H12V6H24V13" />,
  },
  { words: "safety stock", drawing: <path className="ribbon-safety" d="M0 7H24" /> },
  { words: "order by", drawing: <use href="#ribbon-notch" x={12} y={1} /> },
  { words: "order day gone", drawing: <use href="#ribbon-gone" x={6} y={1} /> },
  {
    words: "runs short",
    drawing: (
      <>
        <rect width={24} height={13} fill="url(#ribbon-lack-ink)" />
        <rect className="ribbon-lack-top" width={24} height={2} />
      </>
    ),
  },
  {
    words: "goes out of date unused",
    drawing: (
      <>
        <rect width={18} y={3} height={10} fill="url(#ribbon-waste-ink)" />
        <line className="ribbon-loss" x1={18} x2={18} y1={0} y2={13} />
      </>
    ),
  },
  { words: "on the way", drawing: <use href="#ribbon-ring" x={12} y={7} /> },
];

/** How to read a ribbon. */
export function RibbonKey(): ReactNode {
  return (
    <ul className="ribbon-key" aria-label="How to read a ribbon">
      {KEY.map(({ words, drawing }) => (
        <li key={words}>
          <svg aria-hidden="true" width={24} height={13}>
            {drawing}
          </svg>
          {words}
        </li>
      ))}
      <li className="ribbon-key-how">
        With the keyboard, Right and Left step through a ribbon, and Enter opens its material.
      </li>
    </ul>
  );
}
