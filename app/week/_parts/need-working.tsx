import type { ReactNode } from "react";
import { Working, type WorkingLine } from "@/app/_ui/working";
import { type Fraction, whole } from "@/lib/domain/fraction";
import { bulkOf, exactFor, type MaterialUse } from "@/lib/domain/needs";
import type { RunOutlook } from "@/lib/domain/plan-figures";
import { countShown, gramsShown, rateShown, stockInFull } from "@/lib/edge/figures";

/** How a run's needs come about, from units to batch. @rule NEED-1 to NEED-3 */
export function NeedWorking({
  outlook,
  uses,
}: {
  readonly outlook: RunOutlook;
  readonly uses: readonly MaterialUse[];
}): ReactNode {
  const { product } = outlook;
  const spoilt = product.packaging.filter(({ spoilage }) => spoilage > 0n);
  const isAhead = outlook.draws.some(({ insteadOf }) => insteadOf !== null);
  const nameOf = (id: string): string => uses.find(({ material }) => material.id === id)?.material.name ?? id;
  return (
    <div className="run-working">
      <h3>What the vessel must hold</h3>
      <Working lines={bulkLines(outlook)} />
      <p className="small soft">
        Each ingredient is its share of that. Packaging is its amount for each unit
        {spoilt.length > 0 &&
          `, and more for what is spoilt (${spoilt.map(({ material, spoilage }) => `${nameOf(material)} ${rateShown(spoilage)}`).join(", ")})`}
        ; a per-run item is its amount once.
        {isAhead && " What the shelf has made ahead is taken off its premix first, and the rest is opened."} All uses of
        a material are added up, then rounded up to a whole microgram or piece.
      </p>
    </div>
  );
}

function bulkLines({ run, product }: RunOutlook): readonly WorkingLine[] {
  const fill = product.fill.quantity;
  const over = product.overfill?.quantity ?? 0n;
  const heel = product.heel?.quantity ?? 0n;
  const filled: Fraction = whole(run.units * (fill + over));
  const each =
    over > 0n
      ? `(${stockInFull(fill, "mass")} fill + ${stockInFull(over, "mass")} overfill)`
      : `${stockInFull(fill, "mass")} fill`;
  return [
    { figure: gramsShown(filled), reason: `${countShown(run.units)} × ${each}` },
    ...(heel > 0n ? [{ operator: "+" as const, figure: gramsShown(heel), reason: "stays in the vessel" }] : []),
    ...(product.processLoss > 0n
      ? [
          {
            operator: "÷" as const,
            figure: `1 − ${rateShown(product.processLoss)}`,
            reason: "for what is lost in proportion",
          },
        ]
      : []),
    { figure: gramsShown(exactFor(bulkOf(product), run.units)), reason: "in the vessel", isResult: true },
  ];
}
