/** A sheet of labels: its geometry as the maker measured it, in millimetres, and where each label lies. @rule LABEL-9 */
import { compare, type Fraction, minus, plus, times, whole } from "@/lib/domain/fraction";
import { type DecimalText, decimalValue } from "@/lib/domain/quantity";

export const PAGES = ["A4", "Letter"] as const;
export type Page = (typeof PAGES)[number];

export interface LabelPaper {
  readonly id: string;
  readonly name: string;
  readonly page: Page;
  readonly columns: number;
  readonly rows: number;
  readonly labelWidth: DecimalText;
  readonly labelHeight: DecimalText;
  /** From the upper edge, and from the left edge, to the first label. */
  readonly top: DecimalText;
  readonly left: DecimalText;
  /** Between two labels side by side, and one above the other. */
  readonly gapAcross: DecimalText;
  readonly gapDown: DecimalText;
}

/** Millimetres: ISO 216 for A4; Letter is 8.5 in by 11 in of 25.4 mm. */
export const PAGE_SIZES: Readonly<Record<Page, { readonly width: Fraction; readonly height: Fraction }>> = {
  A4: { width: whole(210n), height: whole(297n) },
  Letter: { width: { over: 2159n, under: 10n }, height: { over: 2794n, under: 10n } },
};

export const labelsOnASheet = ({ columns, rows }: Pick<LabelPaper, "columns" | "rows">): number => columns * rows;

type Geometry = Omit<LabelPaper, "id" | "name">;

/** By how many millimetres the labels go over the page, to the right and below; below zero where there is room left. */
export function overhang(paper: Geometry): { readonly across: Fraction; readonly down: Fraction } {
  const { width, height } = PAGE_SIZES[paper.page];
  const across = reach(paper.left, paper.labelWidth, paper.gapAcross, paper.columns);
  const down = reach(paper.top, paper.labelHeight, paper.gapDown, paper.rows);
  return { across: minus(across, width), down: minus(down, height) };
}

export const fitsPage = (paper: Geometry): boolean => {
  const { across, down } = overhang(paper);
  return compare(across, whole(0n)) <= 0 && compare(down, whole(0n)) <= 0;
};

const reach = (from: DecimalText, size: DecimalText, gap: DecimalText, count: number): Fraction =>
  plus(decimalValue(from), plus(timesOf(size, count), timesOf(gap, count - 1)));

const timesOf = (text: DecimalText, count: number): Fraction => times(decimalValue(text), whole(BigInt(count)));

export interface LabelPlace {
  /** Millimetres from the left and the upper edge of the page. */
  readonly left: Fraction;
  readonly top: Fraction;
}

/** Where the label of that number lies, row by row from 1 on. */
export function placeOf(paper: LabelPaper, number: number): LabelPlace {
  const at = number - 1;
  const step = (size: DecimalText, gap: DecimalText): Fraction => plus(decimalValue(size), decimalValue(gap));
  const [column, row] = [at % paper.columns, Math.floor(at / paper.columns)];
  return {
    left: plus(decimalValue(paper.left), times(step(paper.labelWidth, paper.gapAcross), whole(BigInt(column)))),
    top: plus(decimalValue(paper.top), times(step(paper.labelHeight, paper.gapDown), whole(BigInt(row)))),
  };
}

/** The places to print on, sheet by sheet: so many labels, the first one at `startAt`. */
export function sheetsOf(paper: LabelPaper, startAt: number, count: number): readonly (readonly number[])[] {
  const onOne = labelsOnASheet(paper);
  const sheets: number[][] = [];
  for (let printed = 0; printed < count; printed++) {
    const at = startAt - 1 + printed;
    const sheet = Math.floor(at / onOne);
    (sheets[sheet] ??= []).push((at % onOne) + 1);
  }
  return sheets;
}
