/** The ingredients of a label, from what goes into the product and what each of it is made of. @rule LABEL-1, LABEL-2, LABEL-3 */
import { byCodePoint } from "@/lib/domain/code-point-order";
import type { Component, WayOfUse } from "@/lib/domain/formula-book/facts";
import { compare, type Fraction, plus, times, ZERO } from "@/lib/domain/fraction";
import { shareOf } from "@/lib/domain/quantity";
import { allergenNamed, type FragranceAllergen, inciKey } from "./fragrance-allergens";

/** A material as it was added to the product. */
export interface AddedMaterial {
  readonly id: string;
  readonly name: string;
  /** By INCI names, adding up to the whole; empty where nobody has said. */
  readonly composition: readonly Component[];
  /** Of the finished mass. */
  readonly fraction: Fraction;
}

export interface ListedIngredient {
  readonly inci: string;
  /** Of the finished mass, as added. */
  readonly fraction: Fraction;
  /** Under 1 %: the law lets it stand in any order after the others. */
  readonly isUnderOne: boolean;
  /** The entry of Annex III by which it is named although it is part of a perfume or an oil; else null. */
  readonly entry: number | null;
}

/** An allergen that is part of a perfume or an oil, and too little of it to be named. */
export interface UnnamedAllergen {
  readonly label: string;
  readonly fraction: Fraction;
}

export interface IngredientList {
  readonly listed: readonly ListedIngredient[];
  readonly notNamed: readonly UnnamedAllergen[];
  /** Materials of which nobody has said what they are made of: they stand by their own names. */
  readonly unknown: readonly { readonly id: string; readonly name: string }[];
}

/** Above so much of the product an allergen is named. Regulation (EU) 2023/1545, annex. @rule LABEL-3 */
export const NAMED_ABOVE: Readonly<Record<WayOfUse, Fraction>> = {
  "leave-on": { over: 1n, under: 100_000n },
  "rinse-off": { over: 1n, under: 10_000n },
};

const ONE_PERCENT: Fraction = { over: 1n, under: 100n };

/**
 * Everything the product holds by its INCI names, descending.
 * @param use  null where nobody has said, which is taken as leave-on: more is named
 */
export function ingredientList(added: readonly AddedMaterial[], use: WayOfUse | null): IngredientList {
  const names = tally();
  const inPerfume = new Map<FragranceAllergen, Fraction>();
  for (const { name, composition, fraction } of added) {
    const carrier = carrierOf(composition);
    if (composition.length === 0) names.add(name, fraction);
    for (const { inci, share } of composition) {
      const mass = times(fraction, shareOf(share));
      const allergen = carrier !== null && inci !== carrier ? allergenInside(inci, carrier) : null;
      names.add(allergen === null || carrier === null ? inci : carrier, mass);
      if (allergen !== null) inPerfume.set(allergen, plus(inPerfume.get(allergen) ?? ZERO, mass));
    }
  }
  const notNamed: UnnamedAllergen[] = [];
  const entryOf = new Map<string, number>();
  for (const [allergen, mass] of inPerfume) {
    const all = allergen.names.reduce((sum, name) => plus(sum, names.massOf(name)), mass);
    const isNamed = compare(all, NAMED_ABOVE[use ?? "leave-on"]) > 0 || names.holds(allergen.label);
    if (!isNamed) notNamed.push({ label: allergen.label, fraction: mass });
    else {
      if (!names.holds(allergen.label)) entryOf.set(inciKey(allergen.label), allergen.entry);
      names.add(allergen.label, mass);
    }
  }
  const listed = names.all().map(({ inci, fraction }) => ({
    inci,
    fraction,
    isUnderOne: compare(fraction, ONE_PERCENT) < 0,
    entry: entryOf.get(inciKey(inci)) ?? null,
  }));
  return {
    listed: listed.sort((a, b) => compare(b.fraction, a.fraction) || byCodePoint(inciKey(a.inci), inciKey(b.inci))),
    notNamed: notNamed.sort((a, b) => byCodePoint(a.label, b.label)),
    unknown: added.filter(({ composition }) => composition.length === 0).map(({ id, name }) => ({ id, name })),
  };
}

/** Masses by name, each name as it was first written. */
function tally() {
  const byKey = new Map<string, { readonly inci: string; readonly fraction: Fraction }>();
  return {
    add: (inci: string, mass: Fraction): void => {
      const known = byKey.get(inciKey(inci));
      const shown = known?.inci ?? inci.trim().replace(/\s+/g, " ");
      byKey.set(inciKey(inci), { inci: shown, fraction: plus(known?.fraction ?? ZERO, mass) });
    },
    holds: (inci: string): boolean => byKey.has(inciKey(inci)),
    massOf: (inci: string): Fraction => byKey.get(inciKey(inci))?.fraction ?? ZERO,
    all: () => [...byKey.values()],
  };
}

const PERFUME = /\b(parfum|perfume|fragrance|aroma|flavou?r)\b/i;
const OF_A_PLANT = /\b(oil|extract|absolute|balsam|resin|butter|(flower|leaf|fruit|peel) water)\b/i;

/**
 * The component in which the allergens of a material are: its perfume, or, where it is nothing but a plant's oil or
 * extract and what that holds, the oil. Null where an allergen in it is an ingredient as any other.
 */
function carrierOf(composition: readonly Component[]): string | null {
  const perfume = composition.find(({ inci }) => PERFUME.test(inci));
  if (perfume !== undefined) return perfume.inci;
  const plants = composition.filter(({ inci }) => OF_A_PLANT.test(inci));
  const isAllOfPlants = composition.every(({ inci }) => OF_A_PLANT.test(inci) || allergenNamed(inci) !== null);
  if (!isAllOfPlants) return null;
  return (
    plants.reduce<Component | null>((most, each) => (most && most.share >= each.share ? most : each), null)?.inci ??
    null
  );
}

/** Beside an oil another oil is an ingredient of its own; inside a perfume it is part of it. */
function allergenInside(inci: string, carrier: string): FragranceAllergen | null {
  return !PERFUME.test(carrier) && OF_A_PLANT.test(inci) ? null : allergenNamed(inci);
}
