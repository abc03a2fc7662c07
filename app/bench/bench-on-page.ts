import "server-only";
import { newId } from "@/app/_ui/new-id";
import { checksAsked } from "@/lib/domain/bench/asked-checks";
import { type Batch, codeOf } from "@/lib/domain/bench/batch";
import { formulaAsStarted, formulaCalled, startedAs } from "@/lib/domain/bench/started-as";
import { linesWeighed } from "@/lib/domain/bench/weights";
import type { Day } from "@/lib/domain/calendar";
import type { Desk } from "@/lib/domain/desk";
import { ratio } from "@/lib/domain/fraction";
import { isUsable } from "@/lib/domain/lots";
import type { PartsPerMillion } from "@/lib/domain/quantity";
import type { Formula, Lot, Workshop } from "@/lib/domain/workshop";
import { weightShown } from "@/lib/edge/bench-weights";
import { countShown, dayShown, massInFull, percentShown, shareShown } from "@/lib/edge/figures";
import { CAUTIONS } from "@/lib/edge/finding-words";
import { ofAsText } from "@/lib/edge/forms/bench-note";
import type { BenchOnPage, LineOnPage, LotToWeigh, PhaseOnPage, StepOnPage } from "./_parts/bench-view";
import { inPhases, lotsOf, percentsOf, plannedLots } from "./sheet-lines";

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
  const sections = sectionsOf(found, formula);
  const as = startedAs(batch, workshop);
  return {
    batch: batch.run.id,
    code: codeOf(batch),
    product: as.product,
    startedBy: batch.startedBy,
    sections,
    steps: stepsOf(formula, (phase) => !sections.some((section) => section.phase !== null && section.phase === phase)),
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

function sectionsOf(found: Found, formula: Formula): readonly PhaseOnPage[] {
  const { workshop, today, batch } = found;
  const isAmong = new Set<string | null>();
  return inPhases(linesOnPage(found)).map((lines) => {
    const { key, part, phase } = lines[0].line;
    const isMain = part === formula.id;
    const called = formulaCalled(batch, workshop, part);
    // A phase that lines of another stand between has its steps once.
    const isFirst = isMain && !isAmong.has(phase);
    if (isMain) isAmong.add(phase);
    return {
      key,
      phase,
      title: phaseTitle(phase, called, isMain),
      isMain,
      celsius: (isMain && formula.phases.find(({ name }) => name === phase)?.temperature) || null,
      lines: lines.map(({ lots, ...line }) => ({ ...line, lots: lots.map((lot) => lotToWeigh(lot, today)) })),
      steps: isFirst && phase !== null ? stepsOf(formula, (of) => of === phase) : [],
    };
  });
}

/** What stands above the lines of a phase: a short name is a letter, and is called a phase. */
export function phaseTitle(phase: string | null, called: string, isMain: boolean): string {
  if (phase === null) return called;
  const named = phase.length <= MOST_LETTERS ? `Phase ${phase}` : phase;
  return isMain ? named : `${called}, ${named.charAt(0).toLowerCase()}${named.slice(1)}`;
}

/** A name of a phase that is short enough to stand big beside its lines. */
export const MOST_LETTERS = 2;

const linesOnPage = (found: Found): readonly (Omit<LineOnPage, "lots"> & { readonly lots: readonly Lot[] })[] => {
  const { workshop, today, batch } = found;
  const percents = percentsOf(found, batch);
  const weighed = linesWeighed(batch);
  const planned = plannedLots(
    workshop,
    weighed.map(({ line: { key, of, target }, total, state }) => ({
      key,
      material: of.kind === "material" ? of.id : null,
      rest: state === "done" ? 0n : target - total,
    })),
    today,
  );
  return weighed.map(({ line }) => ({
    line,
    percent: percentOfLine(percents.get(line.key)),
    planned: planned.get(line.key) ?? [],
    lots: line.of.kind === "formula" ? [] : lotsOf(workshop, line.of.id),
  }));
};

const percentOfLine = (percent: PartsPerMillion | undefined): string | null =>
  percent === undefined ? null : percentShown(percent);

export const stepsOf = ({ steps }: Formula, isWanted: (phase: string | null) => boolean): readonly StepOnPage[] =>
  steps.flatMap(({ text, phase, temperature, minutes }, at) =>
    isWanted(phase) ? [{ at, text, celsius: temperature, minutes: minutes === null ? null : Number(minutes) }] : [],
  );

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
  return `${countShown(run.units)} units, ${weightShown(filled, 0)} of ${weightShown(onStep(bulk, step), 0)}${share}`;
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
