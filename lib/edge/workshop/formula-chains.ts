/**
 * Chains of premixes: no formula may lie below itself, and at most eight premixes lie below any. One walk over all
 * formulas, each visited once, on a stack of its own, so that neither long nor tangled chains can stop it.
 * @rule FORMULA-2
 */
import type { FaultList } from "@/lib/edge/fault-list";
import type { JsonObject } from "@/lib/edge/json-tree";
import { called } from "@/lib/edge/record-reading";
import { escaped } from "@/lib/edge/shown-value";

/** A formula of the file, whatever else of it could be read. */
export interface FormulaEntry {
  readonly path: string;
  readonly source: JsonObject;
}

const MOST_PREMIXES = 8;

type Premixes = ReadonlyMap<FormulaEntry, readonly FormulaEntry[]>;

/** What is known of a formula once everything below it has been walked. */
interface Below {
  /** Premixes in the longest chain below it; Infinity where the chain runs into a cycle, which is told as such. */
  readonly depth: number;
  /** The premix that the longest chain goes on with. */
  readonly next: FormulaEntry | undefined;
}

const NOTHING_BELOW: Below = { depth: 0, next: undefined };

/** Tells every cycle and every chain that is too long. `premixesOf` holds the premixes of each formula, each once. */
export function checkChains(formulas: readonly FormulaEntry[], premixesOf: Premixes, faults: FaultList): void {
  const belowByFormula = new Map<FormulaEntry, Below>();
  for (const formula of formulas) walk(formula, premixesOf, belowByFormula, faults);
  const tooDeep = formulas.filter((formula) => isTooDeep(belowByFormula.get(formula)));
  // A formula above one that is too deep is too deep as well: only the top of each chain is told.
  const partOfAnother = new Set(tooDeep.flatMap((formula) => premixesOf.get(formula) ?? []));
  for (const formula of tooDeep) {
    if (partOfAnother.has(formula)) continue;
    const chain = [formula];
    for (let next = belowByFormula.get(formula)?.next; next !== undefined; next = belowByFormula.get(next)?.next) {
      chain.push(next);
    }
    const count = `${String(chain.length - 1)} premixes below ${called("formula", formula)}`;
    faults.tell(formula.path, `${count}; at most ${String(MOST_PREMIXES)} may be: ${pathText(chain)}`);
  }
}

const isTooDeep = (below: Below | undefined): boolean =>
  below !== undefined && below.depth > MOST_PREMIXES && below.depth < Infinity;

/** Walks down from a formula, depth first, and tells every way that leads back to a formula above. */
function walk(start: FormulaEntry, premixesOf: Premixes, belowByFormula: Map<FormulaEntry, Below>, faults: FaultList) {
  if (belowByFormula.has(start)) return;
  const trail = [{ formula: start, at: 0, below: NOTHING_BELOW }];
  const placeOnTrail = new Map([[start, 0]]);
  for (let step = trail.at(-1); step !== undefined; step = trail.at(-1)) {
    const premix = premixesOf.get(step.formula)?.[step.at];
    if (premix === undefined) {
      belowByFormula.set(step.formula, step.below);
      placeOnTrail.delete(step.formula);
      trail.pop();
      continue;
    }
    const below = belowByFormula.get(premix);
    const above = placeOnTrail.get(premix);
    if (above !== undefined) {
      const round = [...trail.slice(above).map(({ formula }) => formula), premix];
      faults.tell(premix.path, `cycle: ${pathText(round)}; take one of these premixes out`);
      step.below = { depth: Infinity, next: undefined };
      step.at += 1;
    } else if (below === undefined) {
      // Its turn comes again once everything below the premix is known.
      placeOnTrail.set(premix, trail.length);
      trail.push({ formula: premix, at: 0, below: NOTHING_BELOW });
    } else {
      if (below.depth + 1 > step.below.depth) step.below = { depth: below.depth + 1, next: premix };
      step.at += 1;
    }
  }
}

const ENDS_SHOWN = 10;

/** The ids of a chain, `a > b > c`; the middle of a very long one is left out. */
export function chainText(chain: readonly string[]): string {
  const ids = (part: readonly string[]) => part.map(escaped).join(" > ");
  const hidden = chain.length - 2 * ENDS_SHOWN;
  if (hidden <= 1) return ids(chain);
  return `${ids(chain.slice(0, ENDS_SHOWN))} > … ${String(hidden)} more … > ${ids(chain.slice(-ENDS_SHOWN))}`;
}

const pathText = (chain: readonly FormulaEntry[]): string =>
  chainText(
    chain.map(({ source, path }) => {
      const id = source.get("id");
      return typeof id === "string" ? id : path;
    }),
  );
