/** The size of a batch as its form asks for it: by units or mass, by what is left of a material, by the vessel. */
import {
  type Batch,
  batchesByVessel,
  batchOfMass,
  batchOfUnits,
  batchOfWhatIsLeft,
} from "@/lib/domain/formula-book/scaling";
import type { Composition } from "@/lib/domain/formula";
import { type Fraction, whole } from "@/lib/domain/fraction";
import { type Micrograms, quantity } from "@/lib/domain/quantity";
import type { Product } from "@/lib/domain/workshop";
import type { Outcome } from "@/lib/edge/fields";
import { massShown } from "@/lib/edge/mass-shown";
import { readTypedRunSize } from "./typed-run-size";

/** What was typed; empty for nothing. */
export interface TypedBatch {
  readonly size: string;
  /** The id of a material of which something is left, and how much. */
  readonly of: string;
  readonly left: string;
  readonly most: string;
  readonly least: string;
}

export interface SizedBatch {
  /** One, or several of one vessel. */
  readonly batches: readonly Batch[];
  readonly minutes: Fraction | null;
}

export type BatchField = "size" | "left" | "most" | "least";
export type BatchReading =
  | { readonly kind: "sized"; readonly sized: SizedBatch }
  | { readonly kind: "refused"; readonly field: BatchField; readonly message: string };

/**
 * @param product      that is filled from it; null for none, and then a size is a mass
 * @param composition  of the formula
 * @param byDefault    the size where nothing is typed
 */
export function readBatch(
  typed: TypedBatch,
  product: Product | null,
  composition: Composition,
  byDefault: Batch,
): BatchReading {
  const one =
    typed.left.trim() === "" ? bySize(typed.size, product, byDefault) : byWhatIsLeft(typed, product, composition);
  if ("kind" in one) return one;
  if (one.bulk.over === 0n) return refused(typed.left.trim() === "" ? "size" : "left", "comes to nothing; write more");
  return typed.most.trim() === "" ? sized([one]) : inVessel(typed, product, one);
}

const sized = (batches: readonly Batch[], minutes: Fraction | null = null): BatchReading => ({
  kind: "sized",
  sized: { batches, minutes },
});
const refused = (field: BatchField, message: string) => ({ kind: "refused", field, message }) as const;

type One = Batch | Extract<BatchReading, { readonly kind: "refused" }>;

function bySize(typed: string, product: Product | null, byDefault: Batch): One {
  if (typed.trim() === "") return byDefault;
  const read = readTypedRunSize(typed);
  if ("fault" in read) return refused("size", read.fault);
  const { value } = read;
  if (value.kind === "vessel") return batchOfMass(product, value.mass);
  return product === null
    ? refused("size", "counts units, and no product is filled with this formula; write a weight, as 2 kg")
    : batchOfUnits(product, value.units);
}

function byWhatIsLeft({ of, left }: TypedBatch, product: Product | null, composition: Composition): One {
  const mass = readMass(left);
  if ("fault" in mass) return refused("left", mass.fault);
  const scaled = batchOfWhatIsLeft(product, composition, of, mass.value);
  return scaled.kind === "scaled"
    ? scaled.batch
    : refused("left", "is of a material that is not in it; choose one that is");
}

function readMass(typed: string): Outcome<Micrograms> {
  const read = readTypedRunSize(typed);
  if ("fault" in read) return read;
  return read.value.kind === "vessel" ? { value: read.value.mass } : { fault: "needs a unit of weight, as 250 g" };
}

function inVessel(typed: TypedBatch, product: Product | null, { units }: Batch): BatchReading {
  const most = readMass(typed.most);
  if ("fault" in most) return refused("most", most.fault);
  const least = typed.least.trim() === "" ? { value: quantity<Micrograms>(0n) } : readMass(typed.least);
  if ("fault" in least) return refused("least", least.fault);
  if (product === null || units === null || units === 0n) {
    return refused(
      "most",
      "shares units out over batches, and there are none; choose a product and a size that fills one",
    );
  }
  const by = batchesByVessel(product, units, { least: least.value, most: most.value });
  switch (by.kind) {
    case "batches":
      return sized(by.batches, by.minutes);
    case "too small for one":
      return refused("most", `does not hold a single one, which needs ${massShown(by.needs, "lacking")}`);
    case "below the least fill":
      return refused(
        "least",
        `is not reached: ${String(by.batches)} batches are needed, and the smallest comes to ${massShown(by.smallest, "there")}`,
      );
  }
}

/** What a batch is where nothing is typed: the usual run of its product, else a kilogram. */
export const usualBatch = (product: Product | null): Batch =>
  product === null ? { units: null, bulk: whole(1_000_000_000n) } : batchOfUnits(product, product.usualRun);
