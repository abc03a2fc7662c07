/** Lots as the history says them: by the name of what they are of, and in its own measure. */
import type { LotName } from "@/lib/domain/ledger/posting";
import type { Measure } from "@/lib/domain/quantity";
import type { Workshop } from "@/lib/domain/workshop";
import { stockInFull } from "@/lib/edge/figures";
import { unitsInWords } from "@/lib/edge/forms/posting-forms";

export interface LotWords {
  readonly name: string;
  readonly shown: (quantity: bigint) => string;
  /** Null for finished units. */
  readonly measure: Measure | null;
  /** Whether it has a page of its own. */
  readonly isListed: boolean;
}

/** Lots that were taken out of the Book are still called by their ids. */
export function lotWords({ lots, materials, finished, products }: Workshop): (lot: LotName) => LotWords {
  const materialOf = new Map(lots.map((lot) => [lot.id, lot.material]));
  const materialById = new Map(materials.map((material) => [material.id, material]));
  const productOf = new Map(finished.map((lot) => [lot.id, lot.product]));
  const nameById = new Map(products.map(({ id, name }) => [id, name]));
  return ({ of, id }) => {
    if (of === "finished")
      return {
        name: nameById.get(productOf.get(id) ?? "") ?? "Finished units",
        shown: unitsInWords,
        measure: null,
        isListed: productOf.has(id),
      };
    const material = materialById.get(materialOf.get(id) ?? "");
    const measure = material?.measure ?? "mass";
    const name = material?.name ?? "A lot that was taken out of the Book";
    return { name, shown: (quantity) => stockInFull(quantity, measure), measure, isListed: material !== undefined };
  };
}
