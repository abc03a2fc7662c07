"use client";

import { type ReactNode, useId } from "react";
import {
  Bar,
  BarChart,
  LabelList,
  type LabelProps,
  ReferenceLine,
  XAxis,
  YAxis,
  type YAxisTickContentProps,
} from "recharts";

/** One input of a sway chart: how far what it moves goes down and up, as lengths and as words. */
export interface SwayBar {
  readonly name: string;
  /** Not above zero. */
  readonly worse: number;
  /** Not below zero. */
  readonly better: number;
  readonly worseShown: string;
  readonly betterShown: string;
}

const BAR_PX = 14;
/** Room beside the longest bar for its label. */
const LABEL_PX = 56;
const NAMES = { most: 240, share: 0.42 } as const;
const LETTER_PX = 6.7;

/** Bars either side of one line, in the order given: hatched worse, solid better, each end labelled. */
export default function SwayDrawing({
  bars,
  width,
  height,
}: {
  readonly bars: readonly SwayBar[];
  readonly width: number;
  readonly height: number;
}): ReactNode {
  const hatch = useId();
  const longest = Math.max(...bars.flatMap(({ worse, better }) => [-worse, better]), 1);
  const namesWidth = Math.min(NAMES.most, Math.round(width * NAMES.share));
  return (
    <BarChart
      className="sway-bars"
      width={width}
      height={height}
      data={[...bars]}
      layout="vertical"
      stackOffset="sign"
      barSize={BAR_PX}
      margin={{ top: 0, right: 0, bottom: 0, left: 0 }}
      accessibilityLayer={false}
    >
      <defs>
        <pattern id={hatch} width="5" height="5" patternUnits="userSpaceOnUse" patternTransform="rotate(45)">
          <path className="sway-hatch" d="M0 0v5" />
        </pattern>
      </defs>
      <XAxis
        type="number"
        hide
        domain={[-longest, longest]}
        padding={{ left: LABEL_PX, right: LABEL_PX }}
        allowDataOverflow
      />
      <YAxis
        type="category"
        dataKey="name"
        width={namesWidth}
        interval={0}
        axisLine={false}
        tickLine={false}
        tick={(tick: YAxisTickContentProps) => <Name tick={tick} lettersInALine={Math.floor(namesWidth / LETTER_PX)} />}
      />
      <Bar dataKey="worse" stackId="sway" className="worse" fill={`url(#${hatch})`} isAnimationActive={false}>
        <LabelList dataKey="worseShown" content={(label: LabelProps) => <End label={label} side="worse" />} />
      </Bar>
      <Bar dataKey="better" stackId="sway" className="better" isAnimationActive={false}>
        <LabelList dataKey="betterShown" content={(label: LabelProps) => <End label={label} side="better" />} />
      </Bar>
      <ReferenceLine x={0} className="sway-line" />
    </BarChart>
  );
}

/** The name of an input, on two lines where it is long. */
function Name({
  tick,
  lettersInALine,
}: {
  readonly tick: YAxisTickContentProps;
  readonly lettersInALine: number;
}): ReactNode {
  const lines = inLines(String(tick.payload.value), lettersInALine);
  return (
    <text className="sway-name">
      {lines.map((line, at) => (
        <tspan key={at} x={0} y={Number(tick.y) + 4.5 + (at - (lines.length - 1) / 2) * 15}>
          {line}
        </tspan>
      ))}
    </text>
  );
}

/** At most two lines of so many letters; what does not fit ends in three dots, and the table has it whole. */
function inLines(name: string, letters: number): readonly string[] {
  if (name.length <= letters) return [name];
  const gap = name.lastIndexOf(" ", letters);
  const [first, rest] =
    gap > 0 ? [name.slice(0, gap), name.slice(gap + 1)] : [name.slice(0, letters), name.slice(letters)];
  return [first, rest.length > letters ? `${rest.slice(0, letters - 1).trimEnd()}…` : rest];
}

/** What stands at the end of a bar. A bar to the left may be given as a width below zero. */
function End({ label, side }: { readonly label: LabelProps; readonly side: "worse" | "better" }): ReactNode {
  const [x, y, width, height] = [label.x, label.y, label.width, label.height].map(Number);
  if (x === undefined || y === undefined || width === undefined || height === undefined) return null;
  const [left, right] = [Math.min(x, x + width), Math.max(x, x + width)];
  return (
    <text
      className={`sway-end ${side}`}
      x={side === "worse" ? left - 5 : right + 5}
      y={y + height / 2 + 4.5}
      textAnchor={side === "worse" ? "end" : "start"}
    >
      {label.value}
    </text>
  );
}
