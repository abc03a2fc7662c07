/**
 * Molar masses, for salts that the law counts as their acid. Atomic weights as IUPAC abridges them (2013 and since),
 * from memory: C 12.011, H 1.008, N 14.007, O 15.999, Na 22.990, K 39.098, Ca 40.078. In thousandths.
 */
import { type Fraction, ratio } from "@/lib/domain/fraction";

const THOUSANDTHS: Readonly<Record<string, bigint>> = {
  C: 12_011n,
  H: 1_008n,
  N: 14_007n,
  O: 15_999n,
  Na: 22_990n,
  K: 39_098n,
  Ca: 40_078n,
};

/** @param formula  as `C7H5NaO2` @returns g/mol in thousandths @throws for an element that is not listed */
export function molarMass(formula: string): bigint {
  const parts = [...formula.matchAll(/([A-Z][a-z]?)(\d*)/g)];
  return parts.reduce((sum, [, element = "", count = ""]) => {
    const weight = THOUSANDTHS[element];
    if (weight === undefined) throw new Error(`no atomic weight is held for ${element}`);
    return sum + weight * BigInt(count === "" ? 1 : count);
  }, 0n);
}

/** Grams of acid in a gram of its salt. @param acids  that one formula unit of the salt holds @rule CHECK-3 */
export const asAcid = (acid: string, salt: string, acids = 1n): Fraction =>
  ratio(acids * molarMass(acid), molarMass(salt));
