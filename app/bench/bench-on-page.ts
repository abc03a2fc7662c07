import "server-only";
import { newId } from "@/app/_ui/new-id";
import { checksAsked } from "@/lib/domain/bench/asked-checks";
import { type Batch, codeOf } from "@/lib/domain/bench/batch";
import { formulaAsStarted, formulaCalled, startedAs } from "@/lib/domain/bench/started-as";
import { linesWeighed } from "@/lib/domain/bench/weights";
import type { Day } from "@/lib/domain/calendar";
import type { Desk } from "@/lib/domain/desk";
import { byDrawOrder, isUsable } from "@/lib/domain/lots";
import type { Lot, Workshop } from "@/lib/domain/workshop";
import { dayShown, massInFull } from "@/lib/edge/figures";
import { ofAsText } from "@/lib/edge/forms/bench-note";
import type { BenchOnPage, LotToWeigh } from "./_parts/bench-view";

interface Found {
  readonly workshop: Workshop;
  readonly desk: Desk;
  readonly today: Day;
  readonly batch: Batch;
}

/** What the device needs to weigh a batch, also where it loses the network afterwards. */
export function benchOnPage({ workshop, desk, today, batch }: Found): BenchOnPage {
  const formula = formulaAsStarted({ workshop, desk }, batch);
  return {
    batch: batch.run.id,
    code: codeOf(batch),
    startedBy: batch.startedBy,
    lines: linesWeighed(batch).map(({ line, weights }) => ({
      line,
      premix: line.part === formula.id ? null : formulaCalled(batch, workshop, line.part),
      lots: line.of.kind === "formula" ? [] : lotsOf(workshop, line.of.id).map((lot) => lotToWeigh(lot, today)),
      weights,
    })),
    phases: [...new Set(batch.lines.flatMap(({ phase }) => (phase === null ? [] : [phase])))],
    steps: formula.steps.map(({ text, phase, temperature, minutes, caution }) => ({
      text,
      phase,
      celsius: temperature,
      minutes: minutes === null ? null : Number(minutes),
      caution,
    })),
    stock: workshop.materials
      .filter(({ measure }) => measure === "mass")
      .flatMap(({ id, name }) =>
        lotsOf(workshop, id).map((lot) => ({
          value: ofAsText(id, lot.id),
          label: `${name}, lot ${lot.id}, ${lotToWeigh(lot, today).says}`,
        })),
      ),
    notes: batch.notes,
    checks: checksAsked(formula),
    decimals: decimalsOf(startedAs(batch, workshop).step),
    newKeys: [newId(), newId()],
  };
}

const lotsOf = ({ lots }: Workshop, material: string): readonly Lot[] =>
  lots.filter((lot) => lot.material === material && lot.remaining > 0n).toSorted(byDrawOrder);

function lotToWeigh(lot: Lot, today: Day): LotToWeigh {
  const isOutOfDate = !isUsable(lot, today);
  const there = `${massInFull(lot.remaining)} there`;
  if (lot.expires === null) return { id: lot.id, says: there, isOutOfDate };
  const day = dayShown(lot.expires, today, { weekday: false });
  return { id: lot.id, says: isOutOfDate ? `${there}; out of date since ${day}` : `${there}, to ${day}`, isOutOfDate };
}

/** As many decimals of a gram as the step of the balance has. */
export function decimalsOf(step: bigint): number {
  const text = String(step).padStart(7, "0").slice(-6).replace(/0+$/, "");
  return text.length;
}
