/** Lots as the screens say them: by the name of what they are of, and in its own measure. */
import type { StruckOffLot } from "@/lib/domain/ledger/past";
import { finishedLot, type LotName, lotKey, materialLot } from "@/lib/domain/ledger/posting";
import type { Measure } from "@/lib/domain/quantity";
import type { Workshop } from "@/lib/domain/workshop";
import { stockInFull, stockShown } from "./figures";
import { unitsInWords } from "./forms/posting-forms";

export interface LotWords {
  readonly name: string;
  /** In full. */
  readonly shown: (quantity: bigint) => string;
  /** As screens round what is there or what was taken, to the nearest: the exact figure is one step away. */
  readonly rounded: (quantity: bigint) => string;
  /** Null for finished units, and for a lot of which nobody knows any more what it was of. */
  readonly measure: Measure | null;
}

/** Of a lot whose material was taken out of the Book nobody knows any more whether it was weighed or counted: both. */
export const ofUnknownMeasure = (quantity: bigint): string =>
  `${stockInFull(quantity, "mass")} or ${stockInFull(quantity, "count")}`;

/** @param struckOff  lots that the ledger names and no list shows */
export function lotWords(
  { lots, materials, finished, products }: Workshop,
  struckOff: readonly StruckOffLot[],
): (lot: LotName) => LotWords {
  const itemOf = new Map<string, string | null>([
    ...struckOff.map(({ lot, item }) => [lotKey(lot), item] as const),
    ...lots.map(({ id, material }) => [lotKey(materialLot(id)), material] as const),
    ...finished.map(({ id, product }) => [lotKey(finishedLot(id)), product] as const),
  ]);
  const materialById = new Map(materials.map((material) => [material.id, material]));
  const nameById = new Map(products.map(({ id, name }) => [id, name]));
  return (lot) => {
    const item = itemOf.get(lotKey(lot)) ?? "";
    if (lot.of === "finished")
      return {
        name: nameById.get(item) ?? "Finished units",
        shown: unitsInWords,
        rounded: unitsInWords,
        measure: null,
      };
    const material = materialById.get(item);
    if (material === undefined)
      return {
        name: "A material that was taken out of the Book",
        shown: ofUnknownMeasure,
        rounded: ofUnknownMeasure,
        measure: null,
      };
    const { name, measure } = material;
    return {
      name,
      shown: (quantity) => stockInFull(quantity, measure),
      rounded: (quantity) => stockShown(quantity, measure, "nearest"),
      measure,
    };
  };
}
