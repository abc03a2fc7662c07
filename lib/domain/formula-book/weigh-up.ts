/** What to weigh for a batch, in whole steps of the balance. @rule WEIGH-1 to WEIGH-5 */
import { percentOf } from "@/lib/domain/formula";
import { type Fraction, ratio, roundedHalfEven, roundedUp, times, whole } from "@/lib/domain/fraction";
import { sharedOut } from "@/lib/domain/ledger/sharing";
import { type Micrograms, quantity, shareOf } from "@/lib/domain/quantity";
import type { Formula, FormulaLine } from "@/lib/domain/workshop";

export interface WeighUp {
  readonly formula: Formula;
  /** Rounded up to a whole step; the targets come to it exactly. */
  readonly batch: Micrograms;
  readonly roundedBy: "qs takes the rest" | "largest remainder";
  /** In the order of the lines. */
  readonly targets: readonly Target[];
}

export interface Target {
  readonly line: FormulaLine;
  readonly target: Micrograms;
  /** By how much a weighing may be off. @rule WEIGH-4 */
  readonly tolerance: Micrograms;
  /** Half a step is more than 1 % of it. @rule WEIGH-3 */
  readonly tooCoarse: boolean;
}

/**
 * The targets of one batch of a formula that adds up; a premix is one line.
 * @param batch  exact µg, above zero
 * @param step   of the balance, µg
 * @rule WEIGH-1 to WEIGH-4
 */
export function weighUp(formula: Formula, batch: Fraction, step: Micrograms): WeighUp {
  const steps = roundedUp(times(batch, ratio(1n, step)));
  const byRest = withTheRest(formula, steps);
  const inSteps =
    byRest ??
    sharedOut(
      steps,
      formula.lines.map((line) => percentOf(line, formula)),
    );
  return {
    formula,
    batch: quantity<Micrograms>(steps * step),
    roundedBy: byRest ? "qs takes the rest" : "largest remainder",
    targets: formula.lines.map((line, at) => targetOf(line, inSteps[at] ?? 0n, step)),
  };
}

/** Every line to the nearest step and the rest to `qs`; null without one, or where nothing would be left for it. */
function withTheRest(formula: Formula, steps: bigint): readonly bigint[] | null {
  if (!formula.lines.some(({ percent }) => percent === "qs")) return null;
  const nearest = formula.lines.map(({ percent }) =>
    percent === "qs" ? 0n : roundedHalfEven(times(whole(steps), shareOf(percent))),
  );
  const rest = steps - nearest.reduce((sum, each) => sum + each, 0n);
  if (rest <= 0n) return null;
  return formula.lines.map(({ percent }, at) => (percent === "qs" ? rest : (nearest[at] ?? 0n)));
}

function targetOf(line: FormulaLine, steps: bigint, step: Micrograms): Target {
  return {
    line,
    target: quantity<Micrograms>(steps * step),
    tolerance: quantity<Micrograms>(roundedUp(ratio(steps, 100n)) * step),
    tooCoarse: isTooCoarse(steps),
  };
}

/** Half a step over 1 %: fewer than fifty steps. @rule WEIGH-3 */
const isTooCoarse = (steps: bigint): boolean => steps < 50n;

/**
 * The smallest net weight that a balance may be asked for: 2000 deviations of repeated weighings, a deviation below
 * 0.41 divisions counting as 0.41 divisions. µg.
 * @param deviation  standard deviation of repeated weighings, µg; 0 where it is not known
 * @param division   what the balance shows, µg
 * @rule WEIGH-5
 */
export function uspMinimumWeight(deviation: Micrograms, division: Micrograms): Fraction {
  const least = ratio(41n * division, 100n);
  const counted = ratio(deviation, 1n);
  return times(whole(2000n), counted.over * least.under > least.over * counted.under ? counted : least);
}
