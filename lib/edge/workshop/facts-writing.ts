/** Formulas, and what the checks need to know of materials, as their records in the file hold it. @rule FILE-4, CHECK-1 */
import { isoDate } from "@/lib/domain/calendar";
import type { FormulaFacts, MaterialFacts } from "@/lib/domain/formula-book/facts";
import type { FormulaContent } from "@/lib/domain/formula-book/version-record";
import type { Formula } from "@/lib/domain/workshop";
import { densityText, percentText } from "@/lib/edge/written-figures";

type Written = string | number | boolean | undefined | readonly unknown[];
type WrittenRecord = Readonly<Record<string, Written>>;

const listed = <T>(list: readonly T[], write: (each: T) => WrittenRecord): readonly WrittenRecord[] | undefined =>
  list.length === 0 ? undefined : list.map(write);
const flagged = (flag: boolean): true | undefined => (flag ? true : undefined);

export const materialFactsWritten = (facts: MaterialFacts): WrittenRecord => ({
  role: facts.role ?? undefined,
  phFrom: facts.phFrom ?? undefined,
  phTo: facts.phTo ?? undefined,
  composition: listed(facts.composition, ({ inci, share }) => ({ inci, percent: percentText(share) })),
  limits: listed(facts.limits, ({ market, use, substance, maximum, countsAs, source, copied }) => ({
    market,
    use: use ?? undefined,
    substance,
    maximum: percentText(maximum),
    countsAs: countsAs === "1" ? undefined : countsAs,
    source,
    copied: isoDate(copied),
  })),
  flammable: flagged(facts.flammable),
  allergen: flagged(facts.allergen),
  eyeHazard: flagged(facts.eyeHazard),
  sheets: listed(facts.sheets, ({ kind, reference, reviewBy }) => ({
    kind,
    reference,
    reviewBy: reviewBy === null ? undefined : isoDate(reviewBy),
  })),
});

/** A formula without its id, or a version of one. */
export const contentWritten = (formula: FormulaContent & Pick<Formula, "name">): WrittenRecord => ({
  name: formula.name,
  density: formula.density === null ? undefined : densityText(formula.density),
  lines: formula.lines.map(({ of, percent, phase }) => ({
    [of.kind]: of.id,
    percent: percent === "qs" ? percent : percentText(percent),
    phase: phase ?? undefined,
  })),
  ...formulaFactsWritten(formula),
});

const formulaFactsWritten = (facts: FormulaFacts): WrittenRecord => ({
  market: facts.market ?? undefined,
  use: facts.use ?? undefined,
  phFrom: facts.phFrom ?? undefined,
  phTo: facts.phTo ?? undefined,
  keepsDays: facts.keepsDays ?? undefined,
  phases: listed(facts.phases, ({ name, temperature }) => ({ name, temperature: temperature ?? undefined })),
  steps: listed(facts.steps, ({ phase, text, temperature, minutes, caution }) => ({
    phase: phase ?? undefined,
    text,
    temperature: temperature ?? undefined,
    minutes: minutes ?? undefined,
    caution: caution ?? undefined,
  })),
  checks: listed(facts.checks, ({ what, from, to, unit, looks }) => ({
    what,
    from: from ?? undefined,
    to: to ?? undefined,
    unit: unit ?? undefined,
    looks: looks ?? undefined,
  })),
});
