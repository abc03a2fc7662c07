/** The formula that the fields of its form make, as far as they can be read while somebody types. */
import { type FormulaFacts, MARKETS, type Phase, type Step, WAYS_OF_USE } from "@/lib/domain/formula-book/facts";
import type { DecimalText } from "@/lib/domain/quantity";
import type { Formula, FormulaLine, Workshop } from "@/lib/domain/workshop";
import { isDayCount } from "@/lib/edge/day-count";
import { readTypedWholeNumber } from "@/lib/edge/forms/typed-amount";
import { readTypedNumber } from "@/lib/edge/forms/typed-number";
import { readTypedTemperature } from "@/lib/edge/forms/typed-temperature";
import { type FormValues, rowsOf } from "@/app/_ui/form-values";
import { parted } from "@/app/_ui/either";
import { typedPercent } from "./formula-total";

/** What can be read of it; lines of which something cannot are left out and named. */
export interface FormulaAsTyped {
  readonly formula: Formula;
  /** Their places on the form, counted from one. */
  readonly unread: readonly number[];
}

/**
 * @param id    of the formula that the form is of; one of its own for a new one
 * @param known what lines can be of; a premix that leads back to the formula cannot be reckoned with
 */
export function formulaAsTyped(values: FormValues, id: string, known: Known): FormulaAsTyped {
  const meant = parted(values);
  const unread: number[] = [];
  const lines = rowsOf(meant, "lines").flatMap((row, at): readonly FormulaLine[] => {
    const of = componentOf(row);
    if (of === null && written(row.percent) === null) return [];
    const percent = typedPercent(row.percent ?? "");
    if (of !== null && percent !== null && canHold(of, id, known)) return [{ of, percent, phase: written(row.phase) }];
    unread.push(at + 1);
    return [];
  });
  const name = written(meant.name) ?? "This formula";
  return { formula: { id, name, density: null, lines, ...factsOf(meant) }, unread };
}

export type Known = Pick<Workshop, "formulas" | "materials">;

function canHold(of: FormulaLine["of"], id: string, { formulas, materials }: Known): boolean {
  if (of.kind === "material") return materials.some((material) => material.id === of.id);
  const premix = formulas.find((formula) => formula.id === of.id);
  // The formulas that are kept hold no circle, so that this ends.
  return premix !== undefined && premix.id !== id && !leadsTo(premix, id, formulas);
}

const leadsTo = ({ lines }: Formula, id: string, formulas: Known["formulas"]): boolean =>
  lines.some(({ of }) => {
    if (of.kind === "material") return false;
    const premix = formulas.find((formula) => formula.id === of.id);
    return of.id === id || (premix !== undefined && leadsTo(premix, id, formulas));
  });

const written = (text: string | undefined): string | null => {
  const trimmed = (text ?? "").trim();
  return trimmed === "" ? null : trimmed;
};

function componentOf({ material = "", formula = "" }: FormValues): FormulaLine["of"] | null {
  if (material !== "") return { kind: "material", id: material };
  return formula === "" ? null : { kind: "formula", id: formula };
}

function factsOf(values: FormValues): FormulaFacts {
  const keeps = readTypedWholeNumber(values.keepsDays ?? "");
  return {
    market: MARKETS.find((market) => market === values.market) ?? null,
    use: WAYS_OF_USE.find((use) => use === values.use) ?? null,
    phFrom: numberOf(values.phFrom),
    phTo: numberOf(values.phTo),
    keepsDays: "value" in keeps && isDayCount(keeps.value) ? keeps.value : null,
    phases: rowsOf(values, "phases").flatMap((row): readonly Phase[] => {
      const name = written(row.name);
      return name === null ? [] : [{ name, temperature: temperatureOf(row.temperature) }];
    }),
    steps: rowsOf(values, "steps").map((row): Step => ({
      phase: written(row.phase),
      text: row.text ?? "",
      temperature: temperatureOf(row.temperature),
      minutes: null,
      caution: null,
    })),
    // No check of the formula looks at what is asked of a batch.
    checks: [],
  };
}

function numberOf(typed: string | undefined): DecimalText | null {
  const read = readTypedNumber(typed ?? "");
  return "value" in read ? (read.value as DecimalText) : null;
}

function temperatureOf(typed: string | undefined): DecimalText | null {
  const read = readTypedTemperature(typed ?? "");
  return "value" in read ? (read.value as DecimalText) : null;
}
