/** Which earlier run took what a run is short of. @rule MAKE-4 */
import { compare, type Fraction, plus, ratio, ZERO } from "./fraction";
import { madeInTurn, type RunToJudge, type StockToCome } from "./feasibility";
import type { RunOutlook } from "./plan-figures";
import type { Product, Run } from "./workshop";

export interface TookIt {
  readonly run: Run;
  readonly product: Product;
  /** Whether the run that is short could be made without this one. */
  readonly enough: boolean;
}

/** So many of the nearest earlier runs are tried out; beyond them the one that drew most is named. */
const MOST_TRIED = 60;

/**
 * The nearest earlier run without which this one could be made, else the run that drew most of what is short.
 * @param short    the outlook of the run that cannot be made
 * @param inTurn   every run, in the order in which they draw
 * @param outlookOf  the outlook of each run, as the same stock gave it
 * @returns null where no earlier run drew any of what is short
 * @rule MAKE-4
 */
export function tookIt(
  short: RunOutlook,
  inTurn: readonly RunToJudge[],
  outlookOf: (run: Run) => RunOutlook,
  stock: StockToCome,
): TookIt | null {
  const turn = inTurn.findIndex(({ run }) => run === short.run);
  const upToIt = inTurn.slice(0, turn + 1);
  const earlier = upToIt.slice(0, -1).map(({ run }) => outlookOf(run));
  for (const without of runsThatCouldMatter(short, earlier, upToIt).slice(0, MOST_TRIED)) {
    const made = madeInTurn(
      upToIt.filter(({ run }) => run !== without.run),
      stock,
    );
    if (made.at(-1)) return { run: without.run, product: without.product, enough: true };
  }
  const most = drewMost(short, earlier);
  return most && { run: most.run, product: most.product, enough: false };
}

/**
 * Nearest first, the runs whose absence could change anything for this one. More of a material never leaves less of
 * it later, so without a run the first thing to change is that a run after it can be made: this one, or one in
 * between that then draws in its turn. What it lacked must all have been freed by the one that is left out. Where a
 * premix made ahead comes in, what a run frees may spare another one something else, so that any may matter.
 */
function runsThatCouldMatter(
  short: RunOutlook,
  earlier: readonly RunOutlook[],
  upToIt: readonly RunToJudge[],
): readonly RunOutlook[] {
  if (upToIt.some(({ opened }) => opened !== null)) return earlier.filter(({ makeable }) => makeable).reverse();
  const notMade: RunOutlook[] = [short];
  return earlier.toReversed().filter((outlook) => {
    if (!outlook.makeable) notMade.push(outlook);
    return outlook.makeable && notMade.some((lacking) => coversAllOf(outlook, lacking));
  });
}

function coversAllOf({ draws }: RunOutlook, { short }: RunOutlook): boolean {
  return short.every(({ material, by }) =>
    draws.some((draw) => draw.material === material && (draw.drawn as bigint) >= by),
  );
}

/**
 * The run that drew most, each material counted in what is short of it, so that grams and pieces can be added up.
 * Of equals the nearest.
 */
function drewMost(short: RunOutlook, earlier: readonly RunOutlook[]): RunOutlook | null {
  const lackOf = new Map(short.short.map(({ material, by }) => [material, by]));
  const drawnBy = ({ draws }: RunOutlook): Fraction =>
    draws.reduce((drawn, draw) => {
      const lack = lackOf.get(draw.material);
      return lack === undefined ? drawn : plus(drawn, ratio(draw.drawn, lack));
    }, ZERO);
  let most: { readonly outlook: RunOutlook; readonly drawn: Fraction } | null = null;
  for (const outlook of earlier) {
    const drawn = drawnBy(outlook);
    if (drawn.over > 0n && (most === null || compare(drawn, most.drawn) >= 0)) most = { outlook, drawn };
  }
  return most?.outlook ?? null;
}
