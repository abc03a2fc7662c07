/** The weigh-up of a formula with the premixes below it, and with what stands of them on the shelf. @rule WEIGH-6, WEIGH-7 */
import type { Day } from "@/lib/domain/calendar";
import { type Fraction, whole } from "@/lib/domain/fraction";
import { byId } from "@/lib/domain/index-by-id";
import { isUsable } from "@/lib/domain/lots";
import { type Micrograms, quantity, smaller } from "@/lib/domain/quantity";
import type { Formula, Workshop } from "@/lib/domain/workshop";
import { type WeighUp, weighUp } from "./weigh-up";

/** What stands of a premix made ahead. */
export interface Pot {
  readonly premix: string;
  /** The material that is made of it. */
  readonly material: string;
  /** Of that material, usable on the day. */
  readonly held: Micrograms;
}

/** What is weighed from the shelf instead of making a premix. */
export interface PotTaken {
  readonly premix: Formula;
  readonly material: string;
  /** In whole steps, above zero. */
  readonly quantity: Micrograms;
}

export interface WeighUps {
  /** The formula first, then premixes in an order in which each stands after all that hold it. */
  readonly sheets: readonly WeighUp[];
  /** In the order in which they are asked for. */
  readonly taken: readonly PotTaken[];
}

/** The premixes that a product is made ahead of, with what the shelf holds of each on a day. */
export function potsOn({ products, lots }: Pick<Workshop, "products" | "lots">, day: Day): readonly Pot[] {
  return products.flatMap(({ formula, madeInto }): readonly Pot[] => {
    if (madeInto === null) return [];
    const held = lots
      .filter((lot) => lot.material === madeInto && lot.received <= day && isUsable(lot, day))
      .reduce((sum, { remaining }) => sum + remaining, 0n);
    return [{ premix: formula, material: madeInto, held: quantity<Micrograms>(held) }];
  });
}

/** Each premix once, for what all who hold it ask of it, as if nothing of any stood on the shelf. @rule WEIGH-6 */
export const weighUpWithPremixes = (
  formulas: readonly Formula[],
  formulaId: string,
  batch: Fraction,
  step: Micrograms,
): readonly WeighUp[] => weighUpFromPots({ formulas, pots: [] }, formulaId, batch, step).sheets;

/** The same, with what stands of premixes made ahead weighed from there first. @rule WEIGH-6, WEIGH-7 */
export function weighUpFromPots(
  { formulas, pots }: { readonly formulas: readonly Formula[]; readonly pots: readonly Pot[] },
  formulaId: string,
  batch: Fraction,
  step: Micrograms,
): WeighUps {
  const formulaOf = byId("formula", formulas);
  const asked = new Map<string, bigint>();
  const sheets: WeighUp[] = [];
  const taken: PotTaken[] = [];
  const own = new Map<string, bigint>();
  const sheetOf = (id: string, amount: Fraction): void => {
    const sheet = weighUp(formulaOf(id), amount, step);
    sheets.push(sheet);
    for (const { line, target } of sheet.targets) {
      const sums = line.of.kind === "formula" ? asked : own;
      sums.set(line.of.id, (sums.get(line.of.id) ?? 0n) + target);
    }
  };
  sheetOf(formulaId, batch);
  for (const id of holdersFirst(formulaId, formulaOf, pots).slice(1)) {
    const amount = asked.get(id) ?? 0n;
    const pot = pots.find(({ premix }) => premix === id);
    const free = pot === undefined ? 0n : pot.held - (own.get(pot.material) ?? 0n);
    const drawn = free > 0n ? smaller(amount, (free / step) * step) : 0n;
    if (pot !== undefined && drawn > 0n)
      taken.push({ premix: formulaOf(id), material: pot.material, quantity: quantity<Micrograms>(drawn) });
    // A share of a premix that rounds to nothing, or stands on the shelf whole, asks for no batch of it.
    if (amount > drawn) sheetOf(id, whole(amount - drawn));
  }
  return { sheets, taken };
}

/**
 * The formula and all premixes below it, each after every formula that holds it, or that holds the material made of it:
 * what the batch weighs of that is known when it is the premix's turn.
 */
function holdersFirst(formulaId: string, formulaOf: (id: string) => Formula, pots: readonly Pot[]): readonly string[] {
  const premixOf = new Map(pots.map(({ material, premix }) => [material, premix]));
  const done: string[] = [];
  const entered = new Set<string>();
  function enter(id: string): void {
    if (entered.has(id)) return;
    entered.add(id);
    for (const { of } of formulaOf(id).lines) {
      const below = of.kind === "formula" ? of.id : premixOf.get(of.id);
      if (below !== undefined) enter(below);
    }
    done.push(id);
  }
  enter(formulaId);
  return done.reverse();
}
