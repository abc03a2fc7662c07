/**
 * A label laid out at its true size: lines of text by the widths of the font's letters, the drawn code in the lower right
 * corner, in the largest of a few sizes in which all of it fits. Millimetres throughout. @rule LABEL-10
 */
import type { LabelPart } from "@/lib/domain/label/kept-label";
import type { LabelMarket } from "@/lib/domain/label/label";
import type { CodeDrawing } from "./code-drawing";
import { widthOf } from "./letter-widths";

export interface LaidLine {
  readonly text: string;
  readonly left: number;
  /** Of its foot. */
  readonly base: number;
  readonly size: number;
  readonly isBold: boolean;
}

export interface LaidCode {
  readonly drawing: CodeDrawing;
  readonly left: number;
  readonly top: number;
}

export interface LabelLayout {
  readonly lines: readonly LaidLine[];
  readonly code: LaidCode | null;
  /** Points of the smallest letters. */
  readonly points: number;
  /** What there is no room for, by name; empty where all of it fits. */
  readonly left: readonly string[];
}

export const MILLIMETRES_A_POINT = 25.4 / 72;
/** No letters are smaller; 21 CFR 701.3(b) asks for 1/16 inch, which capitals of seven points have. */
const SMALLEST: Readonly<Record<LabelMarket, number>> = { EU: 6, GB: 6, US: 7 };
const SIZES = [10, 9, 8, 7.5, 7, 6.5, 6];
const EDGE = 1.5;
const LEADING = 1.18;
const NAME_SIZE = 1.35;

interface Space {
  readonly width: number;
  readonly height: number;
  readonly code: LaidCode | null;
}

/** @param code  null where none is wanted */
export function labelLayout(
  parts: readonly LabelPart[],
  code: CodeDrawing | null,
  { width, height }: { readonly width: number; readonly height: number },
  market: LabelMarket,
): LabelLayout {
  const laidCode = code && placed(code, width, height);
  const space = { width, height, code: laidCode };
  const sizes = SIZES.filter((points) => points >= SMALLEST[market]);
  const tries = sizes.map((points) => ({ points, ...laid(parts, points * MILLIMETRES_A_POINT, space) }));
  const best = tries.find(({ left }) => left.length === 0) ?? tries.at(-1);
  if (best === undefined) throw new Error("there is a size for every market");
  const withoutRoom = code !== null && laidCode === null ? ["the drawn code"] : [];
  return { ...best, code: laidCode, left: [...best.left, ...withoutRoom] };
}

/** In the lower right corner, or null where it is larger than the label. */
function placed(drawing: CodeDrawing, width: number, height: number): LaidCode | null {
  const [across, down] = [drawing.width * drawing.module, drawing.height * drawing.module];
  if (across > width - 2 * EDGE || down > height - 2 * EDGE) return null;
  return { drawing, left: width - EDGE - across, top: height - EDGE - down };
}

/** Parts one below the other; one that does not fit is left out whole, and so is what comes after it. */
function laid(parts: readonly LabelPart[], size: number, space: Space): Pick<LabelLayout, "lines" | "left"> {
  const lines: LaidLine[] = [];
  let foot = EDGE;
  for (const [at, part] of parts.entries()) {
    const own = linesOf(part, at === 0 ? size * NAME_SIZE : size, foot, space);
    if (own === null) return { lines, left: parts.slice(at).map(({ called }) => called) };
    lines.push(...own.lines);
    foot = own.foot;
  }
  return { lines, left: [] };
}

function linesOf(
  { text, isBold }: LabelPart,
  size: number,
  from: number,
  space: Space,
): { readonly lines: readonly LaidLine[]; readonly foot: number } | null {
  const lines: LaidLine[] = [];
  let foot = from;
  let rest = text.split(" ");
  while (rest.length > 0) {
    foot += size * LEADING;
    if (foot > space.height - EDGE) return null;
    const [line, others] = fill(rest, roomAt(foot, space), size, isBold);
    // Beside the code there may be no room for a word; further down there is none at all.
    if (line === "") return null;
    lines.push({ text: line, left: EDGE, base: foot - size * 0.25, size, isBold });
    rest = others;
  }
  return { lines, foot };
}

const GAP = 1;

const roomAt = (foot: number, { width, code }: Space): number =>
  code === null || foot <= code.top ? width - 2 * EDGE : Math.max(0, code.left - EDGE - GAP);

/** As many words as fit; a word that is wider than the line alone is broken in it. */
function fill(words: readonly string[], room: number, size: number, isBold: boolean): readonly [string, string[]] {
  let count = 0;
  while (count < words.length && widthOf(words.slice(0, count + 1).join(" "), size, isBold) <= room) count++;
  if (count > 0) return [words.slice(0, count).join(" "), words.slice(count)];
  const letters = [...(words[0] ?? "")];
  let fitting = 0;
  while (fitting < letters.length && widthOf(letters.slice(0, fitting + 1).join(""), size, isBold) <= room) fitting++;
  const [head, tail] = [letters.slice(0, fitting).join(""), letters.slice(fitting).join("")];
  return fitting < 4 ? ["", [...words]] : [head, [tail, ...words.slice(1)]];
}
