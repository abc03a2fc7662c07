/** What a run draws: from units to batch to materials. @rule NEED-1 to NEED-4 */
import { byCodePoint } from "./code-point-order";
import type { Composition } from "./formula";
import { dividedBy, type Fraction, plus, roundedUp, times, whole, ZERO } from "./fraction";
import { quantity, restOf, type Stock, type Units } from "./quantity";
import type { Material, Product } from "./workshop";

/** An exact amount that grows with the units: units × perUnit + fixed, all over `under`. µg or pieces. */
export interface Growing {
  readonly perUnit: bigint;
  readonly fixed: bigint;
  readonly under: bigint;
}

export interface Use {
  readonly as: "ingredient" | "packaging" | "per run";
  readonly need: Growing;
}

/** All uses of one material in a product, together and each. */
export interface MaterialUse {
  readonly material: Material;
  readonly need: Growing;
  readonly least: Growing;
  readonly uses: readonly Use[];
}

/** An exact amount for so many units. */
export const exactFor = (growing: Growing, units: Units): Fraction => ({
  over: units * growing.perUnit + growing.fixed,
  under: growing.under,
});

/** A need for so many units, rounded up once to a whole µg or piece. @rule NEED-3 */
export const roundedUpFor = (growing: Growing, units: Units): Stock =>
  quantity<Stock>(roundedUp(exactFor(growing, units)));

/** What the vessel must hold for the fills alone and for the heel, before the process loss. @rule NEED-1 */
export function bulkOf(product: Product): Growing {
  const filled = product.fill.quantity + (product.overfill?.quantity ?? 0n);
  const kept = restOf(product.processLoss);
  return growing(dividedBy(whole(filled), kept), dividedBy(whole(product.heel?.quantity ?? 0n), kept));
}

/**
 * Every material that a run of the product draws, with all its uses, by material id.
 * @param composition  of the product's formula
 * @rule NEED-2, NEED-3, NEED-4
 */
export function usesOf(
  product: Product,
  composition: Composition,
  materialOf: (id: string) => Material,
): readonly MaterialUse[] {
  const uses = new Map<string, { readonly as: Use["as"]; readonly need: Growing; readonly least: Growing }[]>();
  const add = (id: string, as: Use["as"], need: Growing, least: Growing) => {
    const already = uses.get(id);
    if (already) already.push({ as, need, least });
    else uses.set(id, [{ as, need, least }]);
  };
  const bulk = bulkOf(product);
  for (const [id, fraction] of composition) {
    const need = growing(times(perUnitOf(bulk), fraction), times(fixedOf(bulk), fraction));
    add(id, "ingredient", need, need);
  }
  for (const { material, amount, spoilage } of product.packaging) {
    const handled = growing(dividedBy(whole(amount.quantity), restOf(spoilage)), ZERO);
    add(material, "packaging", handled, growing(whole(amount.quantity), ZERO));
  }
  for (const { material, amount } of product.perRun) {
    const need = growing(ZERO, whole(amount.quantity));
    add(material, "per run", need, need);
  }
  return [...uses.entries()]
    .sort(([a], [b]) => byCodePoint(a, b))
    .map(([id, each]) => ({
      material: materialOf(id),
      need: together(each.map(({ need }) => need)),
      least: together(each.map(({ least }) => least)),
      uses: each.map(({ as, need }) => ({ as, need })),
    }));
}

const perUnitOf = ({ perUnit, under }: Growing): Fraction => ({ over: perUnit, under });
const fixedOf = ({ fixed, under }: Growing): Fraction => ({ over: fixed, under });

/** Both parts over one denominator. */
function growing(perUnit: Fraction, fixed: Fraction): Growing {
  if (perUnit.under === fixed.under || fixed.over === 0n) return over(perUnit.over, fixed.over, perUnit.under);
  if (perUnit.over === 0n) return over(0n, fixed.over, fixed.under);
  return over(perUnit.over * fixed.under, fixed.over * perUnit.under, perUnit.under * fixed.under);
}

const over = (perUnit: bigint, fixed: bigint, under: bigint): Growing => ({ perUnit, fixed, under });

function together(parts: readonly Growing[]): Growing {
  const [only] = parts;
  if (only && parts.length === 1) return only;
  return growing(parts.map(perUnitOf).reduce(plus, ZERO), parts.map(fixedOf).reduce(plus, ZERO));
}
