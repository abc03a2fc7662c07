/** Versions of formulas and trials as the file holds them. @rule FILE-4, VERSION-1, TRIAL-1 */
import { isoDate } from "@/lib/domain/calendar";
import { byCodePoint } from "@/lib/domain/code-point-order";
import type { Trial } from "@/lib/domain/formula-book/trials";
import type { FormulaVersion } from "@/lib/domain/formula-book/versions";
import { contentWritten } from "./facts-writing";

type Written = Readonly<Record<string, unknown>>;

const listOrNone = <T>(list: readonly T[]): readonly T[] | undefined => (list.length === 0 ? undefined : list);

/** By formula id and number: the order in which the store keeps them. */
export const versionsInOrder = (versions: readonly FormulaVersion[]): readonly FormulaVersion[] =>
  versions.toSorted((a, b) => byCodePoint(a.formula, b.formula) || a.number - b.number);

export const versionWritten = ({ formula, number, since, why, accepted, content }: FormulaVersion): Written => ({
  formula,
  number,
  since: since === null ? undefined : isoDate(since),
  why: why ?? undefined,
  accepted: listOrNone(accepted.map((warning) => ({ ...warning, on: isoDate(warning.on) }))),
  ...(content && contentWritten(content)),
});

export const trialWritten = ({ lines, readings, ...trial }: Trial): Written => ({
  id: trial.id,
  formula: trial.formula,
  name: trial.name,
  day: isoDate(trial.day),
  notes: trial.notes ?? undefined,
  posting: trial.posting ?? undefined,
  lines: lines.map(({ of, weighed, phase }) => ({
    [of.kind]: of.id,
    weighed: Number(weighed),
    phase: phase ?? undefined,
  })),
  readings: listOrNone(
    readings.map(({ afterMinutes, ph, viscosity, appearance }) => ({
      afterMinutes,
      ph: ph ?? undefined,
      viscosity: viscosity ?? undefined,
      appearance: appearance ?? undefined,
    })),
  ),
});
