/** Lots that a batch made today would draw, and sheets that are to be looked at again. @rule CHECK-10 */
import { type Day, daysAfter } from "@/lib/domain/calendar";
import { grouped } from "@/lib/domain/index-by-id";
import { byDrawOrder, isUsable } from "@/lib/domain/lots";
import type { Formula, Lot, Material } from "@/lib/domain/workshop";
import type { Finding } from "./findings";

interface Shelf {
  readonly lots: readonly Lot[];
  readonly today: Day;
}

export function lotFindings(formula: Formula, inIt: readonly Material[], { lots, today }: Shelf): readonly Finding[] {
  const lotsOf = grouped(
    lots.filter(({ remaining }) => remaining > 0n),
    (lot) => lot.material,
  );
  const bestBefore = formula.keepsDays === null ? null : daysAfter(today, formula.keepsDays);
  return inIt.flatMap((material) => [
    ...ofLots(material, lotsOf.get(material.id) ?? [], today, bestBefore),
    ...material.sheets.flatMap((sheet): readonly Finding[] =>
      sheet.reviewBy !== null && sheet.reviewBy < today
        ? [{ code: "sheet to review", material, sheet, reviewBy: sheet.reviewBy }]
        : [],
    ),
  ]);
}

function ofLots(material: Material, lots: readonly Lot[], today: Day, bestBefore: Day | null): readonly Finding[] {
  return lots.toSorted(byDrawOrder).flatMap((lot): readonly Finding[] => {
    const { expires } = lot;
    if (expires === null) return [];
    if (!isUsable(lot, today)) return [{ code: "lot is out of date", material, lot, expires }];
    if (bestBefore === null || expires >= bestBefore) return [];
    return [{ code: "lot expires before the product", material, lot, expires, bestBefore }];
  });
}
