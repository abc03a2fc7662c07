/** What the checks of a formula found, in words: what it is, its figures against the limit, and what would mend it. */
import type { Day } from "@/lib/domain/calendar";
import type { Code, Finding, Severity } from "@/lib/domain/formula-book/findings";
import { uspMinimumWeight } from "@/lib/domain/formula-book/weigh-up";
import { dividedBy, type Fraction, roundedUp, times, whole } from "@/lib/domain/fraction";
import { type Micrograms, quantity, WHOLE } from "@/lib/domain/quantity";
import type { Formula, FormulaLine, Material } from "@/lib/domain/workshop";
import { counted, inARow } from "./counted";
import { dayShown, massInFull, percentShown } from "./figures";
import { massShown } from "./mass-shown";
import { NO_BREAK } from "./shown-digits";
import { MARKET_IN_A_SENTENCE, USE_WORDS } from "./forms/fact-words";
import { resultInWords } from "./forms/total-in-words";
import { percentText } from "./written-figures";

export interface FindingWords {
  readonly says: string;
  /** The figure, the limit and where the limit is from. */
  readonly why: string;
  /** What would mend it; null where it is only for reading. */
  readonly mend: string | null;
}

export const SEVERITY_WORDS: Readonly<Record<Severity, string>> = { error: "Error", warning: "Warning", note: "Note" };

/** What findings do not carry. */
export interface WordsAbout {
  readonly today: Day;
  /** How a line is named: its material or premix. */
  readonly nameOf: (of: FormulaLine["of"]) => string;
  /** The batch that is thought of, so that the least one can be told by its weight; left out where it is not known. */
  readonly batch?: Micrograms | null;
}

export type TooCoarse = Extract<Finding, { readonly code: "balance too coarse" }>;

type WordsOf<C extends Code> = (finding: Extract<Finding, { readonly code: C }>, about: WordsAbout) => FindingWords;

/** @param about  the day, and how lines are named */
export const findingInWords = (finding: Finding, about: WordsAbout): FindingWords =>
  // Each code's function takes the findings of that code.
  (WORDS[finding.code] as (finding: Finding, about: WordsAbout) => FindingWords)(finding, about);

const percentOf = (share: Fraction): string => percentShown(times(share, whole(WHOLE)));
const names = (materials: readonly Material[]): string => inARow(materials.map(({ name }) => name));
const degrees = (celsius: string): string => `${celsius}${NO_BREAK}°C`;
const inPhase = (phase: string | null, { name }: Formula): string =>
  phase === null ? `what has no phase in ${name}` : `phase ${phase} of ${name}`;
const phRange = (from: string, to: string): string => (from === to ? `pH ${from}` : `pH ${from} to ${to}`);

function windowOf({ phFrom, phTo }: Material): string {
  if (phFrom !== null && phTo !== null) return `from pH ${phFrom} to ${phTo}`;
  return phTo === null ? `from pH ${phFrom ?? ""}` : `up to pH ${phTo}`;
}

/** The smallest batch for which fifty steps of the balance go into a target, in proportion. @rule WEIGH-3 */
const leastBatch = (target: Micrograms, step: Micrograms): Fraction | null =>
  target === 0n ? null : dividedBy(whole(50n * step), whole(target));

/** One of several weighings that the balance is too coarse for, as a row: what, how much, and the least batch for it. */
export function coarseInARow(
  { formula, line, target, step }: TooCoarse,
  { nameOf, batch }: WordsAbout,
): { readonly what: string; readonly target: string; readonly least: string } {
  const larger = leastBatch(target, step);
  return {
    what: `${nameOf(line.of)} in ${formula.name}`,
    target: massInFull(target),
    least:
      larger === null
        ? "none"
        : batch
          ? massShown(times(larger, whole(batch)), "lacking")
          : `${timesShown(larger)} times`,
  };
}

/** Several weighings for which the balance is too coarse, told as one. */
export function coarseInWords(findings: readonly TooCoarse[]): FindingWords {
  const step = findings[0]?.step ?? quantity<Micrograms>(0n);
  return {
    says: `The balance is coarse for ${counted(findings.length, "weighing", "weighings")}`,
    why: `in steps of ${massInFull(step)}, half a step is more than 1 % of each (common practice; ${uspAsks(step)})`,
    mend: "Use a finer balance, a larger batch, or a solution of it made ahead.",
  };
}

const uspAsks = (step: Micrograms): string =>
  `USP <41> asks for at least ${massInFull(uspMinimumWeight(quantity<Micrograms>(0n), step))} on such a balance, unless it was shown to repeat better`;

const WORDS: { readonly [C in Code]: WordsOf<C> } = {
  "does not add up": ({ result }) => ({
    says: "It does not add up to 100 %",
    why: resultInWords(result),
    mend: "Put the percents right, or let one line take the rest with qs.",
  }),
  "over a legal maximum": ({ substance, market, use, amount, maximum, source, copied, materials }, { today }) => ({
    says: `Over the legal maximum: ${substance}`,
    why: `${percentOf(amount)} with ${names(materials)}; at most ${percentText(maximum)} % in ${MARKET_IN_A_SENTENCE[market]}${
      use === null ? "" : `, ${USE_WORDS[use].toLowerCase()}`
    } (${source}, as copied on ${dayShown(copied, today)})`,
    mend: "Use less of it. The law in force and a qualified assessor decide.",
  }),
  "too hot for it": ({ material, formula, phase, temperature, addBelow }) => ({
    says: `${material.name} goes in too hot`,
    why: `${inPhase(phase, formula)} is at ${degrees(temperature)}; it is to be added below ${degrees(addBelow)}, as its material says`,
    mend: `Move it to a phase below ${degrees(addBelow)}, or let the phase cool first.`,
  }),
  "a step is hotter": ({ material, formula, phase, temperature, addBelow }) => ({
    says: `A step is hotter than ${material.name} bears`,
    why: `a step in ${inPhase(phase, formula)} goes to ${degrees(temperature)}; it is to be added below ${degrees(addBelow)}`,
    mend: "See that it goes in after that step, once it has cooled.",
  }),
  "phase without a temperature": ({ material, formula, phase, addBelow }) => ({
    says: `How hot ${material.name} goes in is not written`,
    why: `${inPhase(phase, formula)} has no temperature; it is to be added below ${degrees(addBelow)}`,
    mend: "Write the phase down with its temperature.",
  }),
  "outside its use range": ({ material, amount, side, bound }) => ({
    says: `${material.name} is ${side} its use range`,
    why: `${percentOf(amount)} of the whole; ${side === "above" ? "up to" : "from"} ${percentText(bound)} %, as its material says`,
    mend: side === "above" ? "Use less of it." : "Use more of it.",
  }),
  "pH outside its window": ({ material, target }) => ({
    says: `The target pH is outside the window of ${material.name}`,
    why: `aimed at ${phRange(target.from, target.to)}; it works ${windowOf(material)}, as its material says`,
    mend: "Aim at a pH inside it, or use another material.",
  }),
  "no target pH": ({ material }) => ({
    says: `${material.name} depends on the pH, and no target is written`,
    why: `it works ${windowOf(material)}, as its material says`,
    mend: "Write down the target pH.",
  }),
  "water and no preservative": ({ water }) => ({
    says: "There is water in it and no preservative",
    why: `${names(water)} ${water.length === 1 ? "is" : "are"} marked as water, and nothing in it as a preservative`,
    mend: "Add a preservative, or say why it keeps without one. Only a test shows what keeps, not this page.",
  }),
  "nothing marked as water or preservative": ({ unmarked }) => ({
    says: "Whether it holds water is not known",
    why: `nobody has said whether these are water or a preservative: ${names(unmarked)}`,
    mend: "Say so in each material.",
  }),
  "balance too coarse": ({ formula, line, target, step }, { nameOf }) => {
    const larger = leastBatch(target, step);
    return {
      says: `The balance is coarse for ${nameOf(line.of)} in ${formula.name}`,
      why: `${massInFull(target)} in steps of ${massInFull(step)}: half a step is more than 1 % of it (common practice; ${uspAsks(step)})`,
      mend: `Use a finer balance, ${larger === null ? "a larger batch" : `a batch at least ${timesShown(larger)} times as large`}, or a solution of it made ahead.`,
    };
  },
  "lot expires before the product": ({ material, lot, expires, bestBefore }, { today }) => ({
    says: `Lot ${lot.id} of ${material.name} goes out of date before the product`,
    why: `its last day of use is ${dayShown(expires, today)}; made today, the product keeps to ${dayShown(bestBefore, today)}`,
    mend: "Draw a later lot, or give the batch an earlier best before.",
  }),
  "lot is out of date": ({ material, lot, expires }, { today }) => ({
    says: `Lot ${lot.id} of ${material.name} is out of date`,
    why: `its last day of use was ${dayShown(expires, today)}; it is not drawn`,
    mend: "Write it off.",
  }),
  "no market": ({ limited }) => ({
    says: "No legal maximum was looked up",
    why: `nobody has chosen where it is sold, and there are maxima for ${names(limited)}`,
    mend: "Choose where it is sold.",
  }),
  "no published maxima": ({ market }) => ({
    says: `No published maxima are held for ${MARKET_IN_A_SENTENCE[market]}`,
    why: "only the maxima that you copied into the materials are looked at",
    mend: "Look up what the law there allows of each material, and copy it into the material.",
  }),
  "no limit held for this use": ({ substance, heldFor, source }) => ({
    says: `No maximum is held for this use of ${substance}`,
    why: `the one held is for a product that is ${USE_WORDS[heldFor].toLowerCase()} (${source})`,
    mend: "Look up whether it is allowed in this one at all, and how much.",
  }),
  "sheet to review": ({ material, sheet, reviewBy }, { today }) => ({
    says: `Look again at the ${sheet.kind} sheet of ${material.name}`,
    why: `${sheet.reference}; you wrote down to look again by ${dayShown(reviewBy, today)}`,
    mend: "Ask the supplier for the sheet in force.",
  }),
  caution: ({ material, of }) => ({
    says: `${material.name}: ${CAUTIONS[of]}`,
    why: "as its material says",
    mend: null,
  }),
};

const CAUTIONS = {
  flammable: "flammable, keep it from flames and hot plates",
  allergen: "holds an allergen, which the label may have to name",
  "eye hazard": "hurts the eyes, wear goggles",
} as const;

/** Rounded up to a tenth: a batch of that size is large enough. */
function timesShown(factor: Fraction): string {
  const tenths = roundedUp(times(factor, whole(10n)));
  return `${String(tenths / 10n)}${tenths % 10n === 0n ? "" : `.${String(tenths % 10n)}`}`;
}
