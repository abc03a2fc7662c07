import "server-only";
import { newId } from "@/app/_ui/new-id";
import type { Batch } from "@/lib/domain/bench/batch";
import { linesWeighed } from "@/lib/domain/bench/weights";
import type { Day } from "@/lib/domain/calendar";
import type { Desk } from "@/lib/domain/desk";
import { versionsOf } from "@/lib/domain/formula-book/versions";
import { byId } from "@/lib/domain/index-by-id";
import { byDrawOrder, isUsable } from "@/lib/domain/lots";
import type { Formula, Lot, Workshop } from "@/lib/domain/workshop";
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
  const product = byId("product", workshop.products)(batch.run.product);
  const formulaOf = byId("formula", workshop.formulas);
  const formula = asItWas(desk, batch, formulaOf(product.formula));
  const names = new Map(workshop.formulas.map(({ id, name }) => [id, name]));
  return {
    batch: batch.run.id,
    code: batch.code,
    startedBy: batch.startedBy,
    lines: linesWeighed(batch).map(({ line, weights }) => ({
      line,
      premix: line.part === product.formula ? null : (names.get(line.part) ?? line.part),
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
    decimals: decimalsOf(workshop.settings.balanceStep.quantity),
    newKeys: [newId(), newId()],
  };
}

/** The formula in the version by which the batch was started. @rule VERSION-2 */
export function asItWas(desk: Desk, { versions }: Batch, formula: Formula): Formula {
  const number = versions.find((used) => used.formula === formula.id)?.number;
  return versionsOf(desk, formula).find((version) => version.number === number)?.as ?? formula;
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
