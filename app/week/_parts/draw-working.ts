/** What a run needs of a material, use by use, and the lots that it takes it from. @rule NEED-2, NEED-3, LOT-1 */
import type { WorkingLine } from "@/app/_ui/working";
import type { Day } from "@/lib/domain/calendar";
import type { NeedPart, SharePart } from "@/lib/domain/need-parts";
import type { RunDraw } from "@/lib/domain/plan-figures";
import { quantity, type Units } from "@/lib/domain/quantity";
import {
  amountShown,
  countShown,
  gramsShown,
  massInFull,
  piecesShown,
  rateShown,
  stockInFull,
} from "@/lib/edge/figures";
import { fractionShown } from "@/lib/edge/path-words";
import { lotsTaken } from "./lot-lines";
import type { OpenedRun } from "./opened-runs";

interface Drawing {
  readonly draw: RunDraw;
  readonly opened: OpenedRun;
  readonly units: Units;
  readonly today: Day;
}

interface Lines {
  readonly lines: readonly WorkingLine[];
  readonly notes: readonly string[];
}

/** From its uses to what is needed, and from there to what is taken of which lot. */
export function drawLines({ draw, opened, units, today }: Drawing): Lines {
  const { material, need, least, there, drawn } = draw;
  const { measure } = material;
  const parts = opened.needs.partsOf(material);
  const taken = lotsTaken({ lots: opened.lots.drawn.get(material.id) ?? [], measure, today });
  return {
    lines: [
      ...parts.map((part, at): WorkingLine => ({
        ...(at > 0 && { operator: "+" }),
        figure: measure === "mass" ? gramsShown(part.quantity) : piecesShown(part.quantity, "nearest"),
        reason: partWords(part, units),
      })),
      {
        figure: stockInFull(need, measure),
        reason: `needed, rounded up to a whole ${measure === "mass" ? "microgram" : "piece"}`,
        isResult: true,
      },
      ...taken,
      {
        figure: stockInFull(drawn, measure),
        reason: drawn === 0n ? "taken" : "taken, first expired first out",
        isResult: true,
      },
    ],
    notes: [
      ...opened.pathsTo(material),
      ...(least < need ? [`${stockInFull(least, measure)} are enough where nothing is spoilt.`] : []),
      ...(there < least
        ? [`${stockInFull(there, measure)} are there at its turn: ${stockInFull(least - there, measure)} too little.`]
        : drawn < need && drawn > 0n
          ? [`${stockInFull(there, measure)} are there at its turn, and all of it is taken.`]
          : []),
      ...(drawn === 0n && there >= least
        ? ["It takes nothing, because something else that it needs is not there."]
        : []),
    ],
  };
}

function partWords(part: NeedPart, units: Units): string {
  switch (part.kind) {
    case "share":
      return shareWords(part);
    case "instead":
      return `taken as it stands, instead of making ${part.premix.name}`;
    case "packaging": {
      const { amount, spoilage } = part.item;
      const good =
        spoilage > 0n ? ` ÷ ${rateShown(quantity(1_000_000n - spoilage))}, since ${rateShown(spoilage)} is spoilt` : "";
      return `${countShown(units)} × ${amountShown(amount.typed)}${good}`;
    }
    case "per run":
      return `${amountShown(part.item.amount.typed)} for a run of any size`;
    case "still to weigh":
      return `still to weigh at the bench; ${massInFull(part.weighed)} stand in its batch`;
  }
}

/** A share of what the vessel holds, or of what is made new of a premix. */
export const shareWords = ({ of, mass, fraction }: SharePart): string =>
  `${fractionShown(fraction)} of the ${gramsShown(mass)} ${of === null ? "in the vessel" : `of ${of.name} that are made new`}`;
