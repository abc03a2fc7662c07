import type { ReactNode } from "react";
import { type LabelPaper, PAGE_SIZES, placeOf } from "@/lib/domain/label/paper";
import type { Fraction } from "@/lib/domain/fraction";
import type { LabelLayout } from "@/lib/edge/label/label-layout";
import "./label-drawing.css";

/** Decimals that a printer cannot tell from the exact length. */
const mm = (length: number): number => Number(length.toFixed(3));
const exactly = ({ over, under }: Fraction): number => mm(Number(over) / Number(under));

interface Size {
  readonly width: number;
  readonly height: number;
}

/** One label at its true size. */
export const LabelDrawing = ({
  layout,
  size: { width, height },
  says,
}: {
  readonly layout: LabelLayout;
  readonly size: Size;
  readonly says: string;
}): ReactNode => (
  <svg
    className="label-drawing"
    role="img"
    aria-label={says}
    width={`${String(width)}mm`}
    height={`${String(height)}mm`}
    viewBox={`0 0 ${String(width)} ${String(height)}`}
  >
    <rect className="label-edge" width={width} height={height} />
    <OneLabel layout={layout} />
  </svg>
);

/** A sheet of them at its true size: the labels of these numbers, the others empty. */
export function SheetDrawing({
  layout,
  paper,
  numbers,
  says,
}: {
  readonly layout: LabelLayout;
  readonly paper: LabelPaper;
  readonly numbers: readonly number[];
  readonly says: string;
}): ReactNode {
  const { width, height } = PAGE_SIZES[paper.page];
  const [across, down] = [exactly(width), exactly(height)];
  const places = Array.from({ length: paper.columns * paper.rows }, (_, at) => ({
    number: at + 1,
    ...placeOf(paper, at + 1),
  }));
  return (
    <svg
      className={`label-sheet ${paper.page === "A4" ? "on-a4" : "on-letter"}`}
      role="img"
      aria-label={says}
      width={`${String(across)}mm`}
      height={`${String(down)}mm`}
      viewBox={`0 0 ${String(across)} ${String(down)}`}
      preserveAspectRatio="xMinYMin slice"
    >
      {places.map(({ number, left, top }) => (
        <g key={number} transform={`translate(${String(exactly(left))} ${String(exactly(top))})`}>
          <rect className="label-edge" width={paper.labelWidth} height={paper.labelHeight} />
          {numbers.includes(number) && <OneLabel layout={layout} />}
        </g>
      ))}
    </svg>
  );
}

const OneLabel = ({ layout: { lines, code } }: { readonly layout: LabelLayout }): ReactNode => (
  <>
    {lines.map(({ text, left, base, size, isBold }, at) => (
      <text key={at} x={mm(left)} y={mm(base)} fontSize={mm(size)} fontWeight={isBold ? 600 : 400}>
        {text}
      </text>
    ))}
    {code && (
      <path
        d={code.drawing.path}
        transform={`translate(${String(mm(code.left))} ${String(mm(code.top))}) scale(${String(code.drawing.module)})`}
        shapeRendering="crispEdges"
      />
    )}
  </>
);
