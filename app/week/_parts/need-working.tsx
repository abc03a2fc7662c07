import type { ReactNode } from "react";
import { Working, type WorkingLine } from "@/app/_ui/working";
import { type Fraction, whole } from "@/lib/domain/fraction";
import { quantity } from "@/lib/domain/quantity";
import type { NeedParts, PremixPart } from "@/lib/domain/need-parts";
import type { RunOutlook } from "@/lib/domain/plan-figures";
import { countShown, gramsShown, rateShown, stockInFull } from "@/lib/edge/figures";
import { shareWords } from "./draw-working";

interface Needs {
  readonly outlook: RunOutlook;
  readonly needs: NeedParts;
}

/** How a run's needs come about, from units to batch, and what of its premixes stands made ahead. @rule NEED-1 to NEED-3 */
export const NeedWorking = ({ outlook, needs }: Needs): ReactNode => (
  <div className="run-working">
    <h3>What the vessel must hold</h3>
    <Working lines={bulkLines(outlook, needs.bulk)} />
    {needs.premixes.map((part) => (
      <section key={part.premix.id}>
        <h3>{part.premix.name}, made ahead</h3>
        <Working lines={premixLines(part)} notes={potNotes(part)} />
      </section>
    ))}
    <p className="small soft">
      Each material opens to its share of that, its amounts and the lots that it is taken from. All uses of a material
      are added up, then rounded up to a whole microgram or piece.
    </p>
  </div>
);

function bulkLines({ run, product }: RunOutlook, bulk: Fraction): readonly WorkingLine[] {
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
            figure: rateShown(quantity(1_000_000n - product.processLoss)),
            reason: `of it is left; ${rateShown(product.processLoss)} is lost on the way`,
          },
        ]
      : []),
    { figure: gramsShown(bulk), reason: "in the vessel", isResult: true },
  ];
}

/** What the run needs of a premix, less what the shelf has of it made ahead: the rest is made new. @rule AHEAD-3 */
function premixLines({ shares, need, given, anew, material }: PremixPart): readonly WorkingLine[] {
  return [
    ...shares.map((share, at): WorkingLine => ({
      ...(at > 0 && { operator: "+" }),
      figure: gramsShown(share.quantity),
      reason: shareWords(share),
    })),
    ...(shares.length > 1 ? [{ figure: gramsShown(need), reason: "needed", isResult: true }] : []),
    { operator: "−", figure: gramsShown(given), reason: `taken of ${material.name}, which is made of it` },
    { figure: gramsShown(anew), reason: "made new on the way", isResult: true },
  ];
}

function potNotes({ there, ownNeed, material }: PremixPart): readonly string[] {
  const stands = `${stockInFull(there, "mass")} of ${material.name} ${there === 0n ? "are" : "stand"} there at its turn`;
  return [
    ownNeed.over > 0n
      ? `${stands}, less ${gramsShown(ownNeed)} that the run needs of it anyway.`
      : `${stands}, so much is taken as is there and needed.`,
  ];
}
