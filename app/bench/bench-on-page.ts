import "server-only";
import { newId } from "@/app/_ui/new-id";
import { checksAsked } from "@/lib/domain/bench/asked-checks";
import { type Batch, codeOf } from "@/lib/domain/bench/batch";
import { formulaAsStarted, startedAs } from "@/lib/domain/bench/started-as";
import { linesWeighed } from "@/lib/domain/bench/weights";
import type { Day } from "@/lib/domain/calendar";
import type { Desk } from "@/lib/domain/desk";
import { ratio } from "@/lib/domain/fraction";
import { isUsable } from "@/lib/domain/lots";
import type { Formula, Lot, Workshop } from "@/lib/domain/workshop";
import { weightShown } from "@/lib/edge/bench-weights";
import { dayShown, massInFull, shareShown } from "@/lib/edge/figures";
import { CAUTIONS } from "@/lib/edge/finding-words";
import { ofAsText } from "@/lib/edge/forms/bench-note";
import { unitsInWords } from "@/lib/edge/forms/posting-forms";
import type { BenchOnPage, LineOnPage, LotToWeigh } from "./_parts/bench-view";
import { lotsOf, lotsToWeigh, percentInWords, percentsOf, sectionsOf, stepsOfTheWhole } from "./sheet-lines";

interface Found {
  readonly workshop: Workshop;
  readonly desk: Desk;
  readonly today: Day;
  readonly batch: Batch;
}

/** What the device needs to weigh a batch, also where it loses the network afterwards. */
export function benchOnPage(found: Found): BenchOnPage {
  const { workshop, today, batch } = found;
  const formula = formulaAsStarted(found, batch);
  const sections = sectionsOf(found, linesOnPage(found));
  const as = startedAs(batch, workshop);
  return {
    batch: batch.run.id,
    code: codeOf(batch),
    product: as.product,
    startedBy: batch.startedBy,
    sections,
    steps: stepsOfTheWhole(formula, sections),
    phases: [...new Set(batch.lines.flatMap(({ phase }) => (phase === null ? [] : [phase])))],
    cautions: cautionsOf(workshop, materialsOf(batch), formula),
    expected: expectedOf(batch, as),
    stock: stockOf(workshop, today),
    notes: batch.notes,
    checks: checksAsked(formula),
    decimals: decimalsOf(as.step),
    newKeys: [newId(), newId()],
  };
}

const linesOnPage = (found: Found): readonly LineOnPage[] => {
  const { workshop, today, batch } = found;
  const percents = percentsOf(found, batch);
  const weighed = linesWeighed(batch);
  const planned = lotsToWeigh(workshop, weighed, today);
  return weighed.map(({ line }) => ({
    line,
    percent: percentInWords(percents.get(line.key)),
    planned: planned.get(line.key) ?? [],
    lots: line.of.kind === "formula" ? [] : lotsOf(workshop, line.of.id).map((lot) => lotToWeigh(lot, today)),
  }));
};

/** Every material of the sheet. */
export const materialsOf = ({ lines }: Batch): readonly string[] =>
  lines.flatMap(({ of }) => (of.kind === "material" ? [of.id] : []));

/** What the steps warn of, and what each material of the sheet is known for. */
export function cautionsOf(workshop: Workshop, materials: readonly string[], { steps }: Formula): readonly string[] {
  return [
    ...new Set(steps.flatMap(({ caution }) => (caution === null ? [] : [caution]))),
    ...workshop.materials
      .filter(({ id }) => materials.includes(id))
      .flatMap(({ name, flammable, eyeHazard }) => [
        ...(flammable ? [`${name}: ${CAUTIONS.flammable}.`] : []),
        ...(eyeHazard ? [`${name}: ${CAUTIONS["eye hazard"]}.`] : []),
      ]),
  ];
}

const expectedOf = ({ run }: Batch, { fill, bulk, step }: ReturnType<typeof startedAs>): string => {
  const filled = run.units * fill.quantity;
  const share = bulk === 0n ? "" : `, ${shareShown(ratio(filled, bulk))}`;
  return `${unitsInWords(run.units)}, ${weightShown(filled, 0)} of ${weightShown(onStep(bulk, step), 0)}${share}`;
};

/** To the whole step that is weighed. */
const onStep = (mass: bigint, step: bigint): bigint => ((mass + step - 1n) / step) * step;

const stockOf = (workshop: Workshop, today: Day): BenchOnPage["stock"] =>
  workshop.materials
    .filter(({ measure }) => measure === "mass")
    .flatMap(({ id, name }) =>
      lotsOf(workshop, id).map((lot) => ({
        value: ofAsText(id, lot.id),
        label: `${name}, lot ${lot.id}, ${lotToWeigh(lot, today).says}`,
      })),
    );

function lotToWeigh(lot: Lot, today: Day): LotToWeigh {
  const isOutOfDate = !isUsable(lot, today);
  const { id, remaining } = lot;
  const there = `${massInFull(remaining)} there`;
  if (lot.expires === null) return { id, remaining, says: there, isOutOfDate };
  const day = dayShown(lot.expires, today, { weekday: false });
  const says = isOutOfDate ? `${there}; out of date since ${day}` : `${there}, to ${day}`;
  return { id, remaining, says, isOutOfDate };
}

/** As many decimals of a gram as the step of the balance has. */
export function decimalsOf(step: bigint): number {
  const text = String(step).padStart(7, "0").slice(-6).replace(/0+$/, "");
  return text.length;
}
