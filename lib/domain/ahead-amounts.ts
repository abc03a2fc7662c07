/** What amounts of materials and premixes come to on a shelf: premixes made ahead are drawn before they are opened. */
import { byCodePoint } from "./code-point-order";
import { type Composition, compositions } from "./formula";
import { compare, type Fraction, minus, plus, roundedUp, times, whole, ZERO } from "./fraction";
import { aheadBook, markOf } from "./made-ahead";
import type { InsteadOf } from "./plan-figures";
import { type Micrograms, quantity, smaller, type Stock } from "./quantity";
import type { FormulaLine, Workshop } from "./workshop";

export interface Amount {
  readonly of: FormulaLine["of"];
  readonly mass: Micrograms;
}

export interface AmountTaken {
  /** Of the material, all together: rounded up to a whole µg. */
  readonly quantity: Stock;
  /** What of it is drawn in place of a premix. */
  readonly insteadOf: InsteadOf | null;
}

/**
 * What such amounts take of each material.
 * @param thereOf  what the shelf holds of a material, µg
 * @returns by material id, in its order
 * @rule AHEAD-3, TRIAL-2
 */
export function takenOf(
  workshop: Pick<Workshop, "formulas" | "products" | "materials">,
  amounts: readonly Amount[],
  thereOf: (material: string) => bigint,
): ReadonlyMap<string, AmountTaken> {
  const ahead = aheadBook(workshop);
  const premixes = ahead?.premixes ?? [];
  const partsOf = ahead?.partsOf ?? compositions(workshop.formulas);
  const marks = new Map(premixes.map(({ premix }) => [premix.id, markOf(premix)]));
  const exact = new Map<string, Fraction>();
  const add = (id: string, mass: Fraction): void => {
    exact.set(id, plus(exact.get(id) ?? ZERO, mass));
  };
  const open = (parts: Composition, mass: Fraction): void => {
    for (const [id, share] of parts) add(id, times(mass, share));
  };
  for (const { of, mass } of amounts) {
    if (of.kind === "material") add(of.id, whole(mass));
    else if (marks.has(of.id)) add(marks.get(of.id) ?? "", whole(mass));
    else open(partsOf(of.id), whole(mass));
  }
  const given = new Map<string, InsteadOf>();
  // Outermost first, so that what is asked of each is known when it is its turn.
  for (const { premix, material } of premixes) {
    const need = exact.get(markOf(premix));
    if (need === undefined) continue;
    exact.delete(markOf(premix));
    const free = thereOf(material.id) - roundedUp(exact.get(material.id) ?? ZERO);
    const drawn = free > 0n ? smaller(free, roundedUp(need)) : 0n;
    if (drawn > 0n) given.set(material.id, { premix, quantity: quantity<Stock>(drawn) });
    if (compare(need, whole(drawn)) > 0) open(partsOf(premix.id), minus(need, whole(drawn)));
  }
  const ids = [...new Set([...exact.keys(), ...given.keys()])].sort(byCodePoint);
  return new Map(
    ids.map((id) => {
      const insteadOf = given.get(id) ?? null;
      const asked = roundedUp(exact.get(id) ?? ZERO) + (insteadOf?.quantity ?? 0n);
      return [id, { quantity: quantity<Stock>(asked), insteadOf }];
    }),
  );
}
