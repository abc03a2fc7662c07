/** Labels and the papers they are printed on, as their records in the file hold them. @rule FILE-4 */
import type { Label } from "@/lib/domain/label/label";
import type { LabelPaper } from "@/lib/domain/label/paper";

type WrittenRecord = Readonly<Record<string, string | number | boolean | undefined>>;

const unlessNoGap = (gap: string): string | undefined => (gap === "0" ? undefined : gap);

export const labelWritten = (label: Label): WrittenRecord => ({
  id: label.id,
  product: label.product,
  market: label.market,
  title: label.title ?? undefined,
  function: label.function ?? undefined,
  cautions: label.cautions ?? undefined,
  responsible: label.responsible ?? undefined,
  address: label.address ?? undefined,
  contact: label.contact ?? undefined,
  madeIn: label.madeIn ?? undefined,
  monthsOpen: label.monthsOpen ?? undefined,
  gtin: label.gtin ?? undefined,
  code: label.code ?? undefined,
  showsPh: label.showsPh || undefined,
  showsMade: label.showsMade || undefined,
});

export const paperWritten = ({ gapAcross, gapDown, ...paper }: LabelPaper): WrittenRecord => ({
  id: paper.id,
  name: paper.name,
  page: paper.page,
  columns: paper.columns,
  rows: paper.rows,
  labelWidth: paper.labelWidth,
  labelHeight: paper.labelHeight,
  top: paper.top,
  left: paper.left,
  gapAcross: unlessNoGap(gapAcross),
  gapDown: unlessNoGap(gapDown),
});
