import { onHandLine, signedStock, standingFigures, standingLines, type StandingView } from "@/app/_ui/standing-working";
import type { WorkingLine } from "@/app/_ui/working";
import { isBought } from "@/lib/domain/buying/keeping";
import type { Beyond, Lasting } from "@/lib/domain/buying/lasting";
import type { MaterialOutlook } from "@/lib/domain/plan-figures";
import { dayShown, daysShown, stockInFull } from "@/lib/edge/figures";
import type { BuyingView } from "./buying-view";

interface Enough {
  /** `Then enough until Wed 6 Jan 2027` */
  readonly says: string;
  readonly lines: readonly WorkingLine[];
  readonly notes: readonly string[];
}

/** For how long what is bought is then enough, and what happens until that day; null where it is not known. @rule BUY-19 */
export function thenEnough(material: MaterialOutlook["material"], view: BuyingView): Enough | null {
  const lasting = view.lasting.get(material.id);
  if (lasting === undefined) return null;
  const { lowOn, onHand, standing, beyond } = lasting;
  const of: StandingView = {
    material,
    today: view.today,
    productOf: view.productOf,
    called: (lot) => (isBought(lot) ? "bought here" : null),
    figure: standingFigures(onHand, [standing], material),
  };
  const safety = stockInFull(material.safetyStock?.quantity ?? 0n, material.measure);
  const end = dayShown(standing.day, view.today);
  const left =
    lowOn === null
      ? `left at the end of the plan, ${end}`
      : standing.left < 0n
        ? `owed to runs at the end of ${end}, the first day on which it is not enough`
        : `left at the end of ${end}, the first day below the safety stock of ${safety}`;
  return {
    says: enoughWords(lasting, view),
    lines: [
      onHandLine(onHand, of),
      ...standingLines(standing, left, of),
      ...(beyond === null ? [] : beyondLines(beyond, of, safety)),
    ],
    notes: ["If every run goes ahead, with everything that is bought here."],
  };
}

function enoughWords({ lowOn, beyond }: Lasting, { today, lastDay }: BuyingView): string {
  if (lowOn !== null) return `Then enough until ${dayShown(lowOn, today)}`;
  const plan = `Then enough to the plan’s end, ${dayShown(lastDay, today)}`;
  return beyond?.daysMore ? `${plan}, and about ${daysShown(beyond.daysMore)} more` : plan;
}

/** What is to spare at the plan's end, at the plan's pace. */
function beyondLines(
  { spare, taken, days, daysMore }: Beyond,
  of: StandingView,
  safety: string,
): readonly WorkingLine[] {
  if (daysMore === null) return [];
  return [
    { operator: "−", figure: safety, reason: "is to stay, the safety stock" },
    { figure: signedStock(spare, of), reason: "to spare", isResult: true },
    { operator: "÷", figure: signedStock(taken, of), reason: "that the runs of the plan need" },
    { operator: "×", figure: daysShown(days), reason: "of the plan" },
    { figure: daysShown(daysMore), reason: "more at that pace, rounded down", isResult: true },
  ];
}
