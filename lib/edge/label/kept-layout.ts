/** A label laid out from what was kept of it, or from what is typed now: the same way. @rule LABEL-7, LABEL-10, BENCH-9 */
import type { KeptLabel, LabelSize } from "@/lib/domain/label/kept-label";
import { codeDrawing } from "./code-drawing";
import { type LabelLayout, labelLayout } from "./label-layout";

/** Without the size: a label is printed on whatever paper there is. */
export type LabelContent = Pick<KeptLabel, "market" | "parts" | "code">;

export function keptLayout({ market, parts, code }: LabelContent, { width, height }: LabelSize): LabelLayout {
  const drawing = code && codeDrawing(code.kind, code);
  const layout = labelLayout(parts, drawing, { width: Number(width), height: Number(height) }, market);
  return code !== null && drawing === null
    ? { ...layout, left: [...layout.left, `the drawn code, which cannot carry “${code.text}”`] }
    : layout;
}

/** All that stands on it, for whoever cannot see it. */
export const saidOnLabel = ({ parts }: Pick<KeptLabel, "parts">): string => parts.map(({ text }) => text).join(". ");
