import type { ReactNode } from "react";
import type { Step } from "@/lib/domain/formula-book/facts";
import type { Target, WeighUp } from "@/lib/domain/formula-book/weigh-up";
import type { WeighUps } from "@/lib/domain/formula-book/weigh-up-premixes";
import { percentOf } from "@/lib/domain/formula";
import type { Formula, FormulaLine } from "@/lib/domain/workshop";
import { massInFull, minutesShown, percentShown } from "@/lib/edge/figures";
import { NO_BREAK } from "@/lib/edge/shown-digits";
import { HowItComes } from "@/app/_ui/how-it-comes";
import { Ledger } from "@/app/_ui/ledger";
import type { WorkingLine } from "@/app/_ui/working";
import { ratio } from "@/lib/domain/fraction";
import { WHOLE } from "@/lib/domain/quantity";

type NameOf = (of: FormulaLine["of"]) => string;

const COLUMNS = [
  { name: "What goes in" },
  { name: "Percent", kind: "number" },
  { name: "Weigh", kind: "number" },
  { name: "May be off by", kind: "number" },
] as const;

/**
 * What to weigh for a formula and for each premix of it, phase by phase, with the steps of each phase; what stands of a
 * premix on the shelf comes before.
 */
export const WeighUpTables = ({
  ups: { sheets, taken },
  nameOf,
}: {
  readonly ups: WeighUps;
  readonly nameOf: NameOf;
}): ReactNode => (
  <>
    {taken.map(({ premix, material, quantity }) => (
      <p key={premix.id}>
        From the shelf first: <b>{massInFull(quantity)}</b> of {nameOf({ kind: "material", id: material })} instead of
        making {premix.name}
        {sheets.some(({ formula }) => formula.id === premix.id) ? "; what is lacking is made below." : "."}
      </p>
    ))}
    {/* A premix is needed before what holds it. */}
    {sheets.toReversed().map((sheet) => (
      <Sheet key={sheet.formula.id} sheet={sheet} nameOf={nameOf} />
    ))}
  </>
);

function Sheet({ sheet, nameOf }: { readonly sheet: WeighUp; readonly nameOf: NameOf }): ReactNode {
  const { formula, batch, targets } = sheet;
  const phases = phasesOf(formula).filter((phase) => targets.some(({ line }) => line.phase === phase));
  return (
    <section className="weigh-up">
      <h3>
        {formula.name} <small>{massInFull(batch)}</small>
      </h3>
      <HowItComes {...sheetWorking(sheet, nameOf)} />
      {phasesOf(formula).map((phase) => {
        const inIt = targets.filter(({ line }) => line.phase === phase);
        const steps = formula.steps.filter((step) => step.phase === phase);
        if (inIt.length + steps.length === 0) return null;
        const heading = headingOf(formula, phase);
        return (
          <div key={phase ?? ""} className="phase">
            {heading !== null && <h4>{heading}</h4>}
            {inIt.length > 0 && (
              <PhaseTable
                caption={heading ?? formula.name}
                targets={inIt}
                formula={formula}
                nameOf={nameOf}
                sums={[
                  ...(phases.length > 1 ? [{ of: phase === null ? "Without a phase" : `Phase ${phase}`, inIt }] : []),
                  ...(phase === phases.at(-1) ? [{ of: "Altogether", inIt: targets, isTotal: true }] : []),
                ]}
              />
            )}
            <Steps steps={steps} />
          </div>
        );
      })}
    </section>
  );
}

/** Each target, from its percent of the batch to the step of the balance. @rule WEIGH-1, WEIGH-2 */
function sheetWorking({ formula, batch, targets, roundedBy }: WeighUp, nameOf: NameOf): Opened {
  return {
    lines: [
      ...targets.map(({ line, target }, at): WorkingLine => {
        const percent = percentOf(line, formula);
        const exact = ratio(batch * percent, WHOLE);
        const of = line.percent === "qs" ? "the rest, qs" : `${percentShown(percent)} of ${massInFull(batch)}`;
        return {
          ...(at > 0 && { operator: "+" }),
          figure: massInFull(target),
          reason: `${nameOf(line.of)}: ${of}, ${massInFull(exact)} before it is rounded`,
        };
      }),
      { figure: massInFull(batch), reason: "the batch, rounded up to a step of the balance", isResult: true },
    ],
    notes: [
      roundedBy === "qs takes the rest"
        ? "Each to the nearest step of the balance, and qs takes the rest, so that they come to the batch exactly."
        : "Each down to a step of the balance; the steps that are left over go where most was cut off, so that they come to the batch exactly.",
      "A weighing may be off by 1 % of what is to be weighed, rounded up to a step.",
    ],
  };
}

interface Opened {
  readonly lines: readonly WorkingLine[];
  readonly notes: readonly string[];
}

/** What some of the targets come to. */
interface Sum {
  readonly of: string;
  readonly inIt: readonly Target[];
  readonly isTotal?: boolean;
}

function PhaseTable({
  caption,
  targets,
  formula,
  nameOf,
  sums,
}: {
  readonly caption: string;
  readonly targets: readonly Target[];
  readonly formula: Formula;
  readonly nameOf: NameOf;
  readonly sums: readonly Sum[];
}): ReactNode {
  return (
    <Ledger caption={caption} columns={COLUMNS} className="book-ledger">
      {targets.map(({ line, target, tolerance, tooCoarse }, at) => (
        <tr key={at}>
          <th scope="row">{nameOf(line.of)}</th>
          <td className="number" data-of="Percent">
            {percentShown(percentOf(line, formula))}
            {line.percent === "qs" && " (qs)"}
          </td>
          <td className="number" data-of="Weigh">
            <b>{massInFull(target)}</b>
            {tooCoarse && <small> balance too coarse</small>}
          </td>
          <td className="number" data-of="May be off by">
            ±{NO_BREAK}
            {massInFull(tolerance)}
          </td>
        </tr>
      ))}
      {sums.map(({ of, inIt, isTotal = false }) => (
        <tr key={of} className={isTotal ? "total" : "sum"}>
          <th scope="row">{of}</th>
          <td className="number" />
          <td className="number">{massInFull(inIt.reduce((sum, { target }) => sum + target, 0n))}</td>
          <td className="number" />
        </tr>
      ))}
    </Ledger>
  );
}

/** Phases in the order in which they are made; then those that only lines name, then what has none. */
function phasesOf({ phases, lines, steps }: Formula): readonly (string | null)[] {
  const named = [
    ...phases.map(({ name }) => name),
    ...lines.map(({ phase }) => phase),
    ...steps.map(({ phase }) => phase),
  ];
  const inOrder = [...new Set(named)].filter((phase) => phase !== null);
  return [...inOrder, null];
}

function headingOf({ phases }: Formula, phase: string | null): string | null {
  if (phase === null) return null;
  const temperature = phases.find(({ name }) => name === phase)?.temperature ?? null;
  return temperature === null ? `Phase ${phase}` : `Phase ${phase}, at ${temperature}${NO_BREAK}°C`;
}

/** `Heat it, to 75 °C for 10 min.` */
const stepInASentence = (text: string, further: readonly string[]): string =>
  further.length === 0 ? text : `${text.replace(/[.\s]+$/, "")}, ${further.join(" ")}.`;

function Steps({ steps }: { readonly steps: readonly Step[] }): ReactNode {
  if (steps.length === 0) return null;
  return (
    <ol className="steps">
      {steps.map(({ text, temperature, minutes, caution }, at) => (
        <li key={at}>
          {stepInASentence(text, [
            ...(temperature === null ? [] : [`to ${temperature}${NO_BREAK}°C`]),
            ...(minutes === null ? [] : [`for ${minutesShown(minutes)}`]),
          ])}
          {caution !== null && (
            <span>
              <b>Take care:</b> {caution}
            </span>
          )}
        </li>
      ))}
    </ol>
  );
}
