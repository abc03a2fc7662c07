import type { ReactNode } from "react";

export interface Layer {
  readonly name: string;
  /** Its share of the whole, 0 to 1: for drawing only, the words beside it are exact. */
  readonly share: number;
  readonly figure: string;
  readonly shareShown: string;
}

const TOP = 44;
const BOTTOM = 234;
const [LEFT, RIGHT] = [18, 178];
const LABEL_EVERY = 19;
const OUTLINE = "M30 40h136c7 0 12 6 12 13v169c0 7-6 12-13 12H31c-7 0-13-5-13-12V53c0-7 5-13 12-13z";
/** Five fills that differ without colour, the heaviest for what costs most. */
const FILLS = ["solid", "wash", "diagonal", "dots", "lines"] as const;

/** A jar cut open: what it costs lies in it in layers, the largest at the bottom, each led to its name and figures. */
export function JarSection({
  whole,
  layers,
}: {
  readonly whole: string;
  readonly layers: readonly Layer[];
}): ReactNode {
  const ordered = [...layers].sort((a, b) => b.share - a.share).slice(0, FILLS.length);
  const drawn = placed(ordered);
  const labels = spread(drawn.map(({ middle }) => middle));
  const sentence = ordered.map(({ name, figure, shareShown }) => `${name} ${figure}, ${shareShown}`).join("; ");
  return (
    <svg className="jar" viewBox="17 6 388 240" role="img" aria-label={sentence}>
      <Fills />
      <rect className="lid" x="26" y="12" width="144" height="22" rx="3" />
      <text className="whole" x="98" y="29" textAnchor="middle">
        {whole}
      </text>
      <g clipPath="url(#jar-inside)">
        {drawn.map(({ layer, top, height }, at) => (
          <g key={layer.name}>
            <rect className="ground" x={LEFT} y={top} width={RIGHT - LEFT} height={height} />
            <rect x={LEFT} y={top} width={RIGHT - LEFT} height={height} {...fillOf(at)} />
            <path className="layer-line" d={`M${String(LEFT)} ${String(top)}H${String(RIGHT)}`} />
          </g>
        ))}
      </g>
      <path className="glass" d={`${OUTLINE}M36 34v6M160 34v6`} />
      {drawn.map(({ layer, middle }, at) => {
        const label = labels[at] ?? middle;
        return (
          <g key={layer.name}>
            <path className="leader" d={`M179 ${String(middle)}L192 ${String(label)}H202`} />
            <text x="208" y={label + 5}>
              {layer.name}
            </text>
            <text x="344" y={label + 5} textAnchor="end">
              {layer.figure}
            </text>
            <text className="share" x="402" y={label + 5} textAnchor="end">
              {layer.shareShown}
            </text>
          </g>
        );
      })}
    </svg>
  );
}

const fillOf = (at: number) => {
  const fill = FILLS[at] ?? "lines";
  return fill === "solid" || fill === "wash" ? { className: fill } : { fill: `url(#jar-${fill})` };
};

/** From the bottom up, each as high as its share. */
function placed(layers: readonly Layer[]) {
  let bottom = BOTTOM;
  return layers.map((layer) => {
    const height = tenths(layer.share * (BOTTOM - TOP));
    bottom = tenths(bottom - height);
    return { layer, top: bottom, height, middle: tenths(bottom + height / 2) };
  });
}

/** The same number in every browser and on the server. */
const tenths = (value: number): number => Math.round(value * 10) / 10;

/** Labels from the bottom up keep a line's height between them, then are let down again where they left the drawing. */
function spread(middles: readonly number[]): readonly number[] {
  let above = Infinity;
  const raised = middles.map((middle) => (above = Math.min(middle, above - LABEL_EVERY, BOTTOM)));
  let below = 12 - LABEL_EVERY;
  return raised
    .toReversed()
    .map((label) => (below = Math.max(label, below + LABEL_EVERY)))
    .toReversed();
}

function Fills(): ReactNode {
  return (
    <defs>
      <clipPath id="jar-inside">
        <path d={OUTLINE} />
      </clipPath>
      <pattern id="jar-diagonal" width="5" height="5" patternUnits="userSpaceOnUse" patternTransform="rotate(45)">
        <path className="line" d="M0 0V5" />
      </pattern>
      <pattern id="jar-dots" width="5" height="5" patternUnits="userSpaceOnUse">
        <circle className="solid" cx="2.5" cy="2.5" r="1" />
      </pattern>
      <pattern id="jar-lines" width="4" height="4" patternUnits="userSpaceOnUse">
        <path className="line" d="M0 2H4" />
      </pattern>
    </defs>
  );
}
