import type { ReactNode } from "react";
import { HowItComes } from "@/app/_ui/how-it-comes";
import { onDay, runOn } from "@/app/_ui/standing-working";
import type { WorkingLine } from "@/app/_ui/working";
import { isUsable } from "@/lib/domain/lots";
import { type LotUse, type UsedLot, usedLots } from "@/lib/domain/lot-uses";
import { dayShown } from "@/lib/edge/figures";
import { figuresThatAdd, type Sum } from "@/lib/edge/figures-that-add";
import type { MaterialPart } from "./shelf";

/** Which runs use which lot, and how much each, down to what is lost and what is left. @rule PLAN-10, LOT-1 */
export function LotsUsed({ outlook, shelf }: MaterialPart): ReactNode {
  const lots = usedLots(outlook).filter(({ lot }) => isUsable(lot, shelf.today));
  if (lots.every(({ uses, lot }) => uses.length === 0 && lot.lost === 0n)) return null;
  const figure = figuresThatAdd(lots.map(sumOf), outlook.material.measure);
  return (
    <HowItComes
      says="Which runs use which lot"
      lines={lots.flatMap((used) => linesOf(used, { shelf, figure }))}
      notes={["If every run goes ahead: first expired, first out."]}
    />
  );
}

interface Lines extends Pick<MaterialPart, "shelf"> {
  readonly figure: (held: bigint) => string;
}

/** What is there of it, less each use, down to what is then lost or left. */
const sumOf = ({ lot, uses, left }: UsedLot): Sum => [
  lot.quantity,
  ...uses.map(({ taken }) => -taken),
  lot.lost > 0n ? lot.lost : left,
];

function linesOf({ lot, uses, left }: UsedLot, { shelf, figure }: Lines): readonly WorkingLine[] {
  return [
    { figure: figure(lot.quantity), reason: calledLot(lot, shelf) },
    ...uses.map((use): WorkingLine => ({
      operator: "−",
      figure: figure(use.taken),
      reason: takenWords(use, shelf),
    })),
    { figure: figure(lot.lost > 0n ? lot.lost : left), reason: endWords(lot, shelf), isResult: true },
  ];
}

function endWords({ lost, expires }: UsedLot["lot"], { today, lastDay }: MaterialPart["shelf"]): string {
  if (lost === 0n || expires === null) return `left at the plan’s end, ${dayShown(lastDay, today)}`;
  return `goes out of date: not used by ${dayShown(expires, today, { year: true })}, its last day`;
}

const calledLot = ({ lot, order, received }: UsedLot["lot"], { today }: MaterialPart["shelf"]): string =>
  order === null ? `of lot ${lot}` : `of order ${order}, which comes in ${onDay(received, today)}`;

function takenWords({ run, day, owedSince }: LotUse, shelf: MaterialPart["shelf"]): string {
  const words = runOn(run, owedSince ?? day, shelf);
  return owedSince === null ? words : `${words}: owed, and taken on ${dayShown(day, shelf.today)}`;
}
