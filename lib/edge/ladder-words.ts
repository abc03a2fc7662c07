/** What the lots of a material's ladder are called: those that are on the way have no number of their own yet. */
import type { MaterialOutlook } from "@/lib/domain/plan-figures";

/** `lot L22`, or `order po-1` for what is on its way. */
export function calledLot({ ladder }: Pick<MaterialOutlook, "ladder">, lot: string): string {
  const order = ladder.find((each) => each.lot === lot)?.order ?? null;
  return order === null ? `lot ${lot}` : `order ${order}`;
}
