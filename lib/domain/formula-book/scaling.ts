/** How large a batch becomes: by units, by mass, by what is left of one material, by the vessel. @rule SCALE-1 to SCALE-4 */
import type { Composition } from "@/lib/domain/formula";
import {
  compare,
  dividedBy,
  type Fraction,
  plus,
  roundedDown,
  roundedUp,
  times,
  whole,
  ZERO,
} from "@/lib/domain/fraction";
import { bulkOf, exactFor } from "@/lib/domain/needs";
import { decimalValue, type Micrograms, quantity, type Units } from "@/lib/domain/quantity";
import { unitsOfBulk } from "@/lib/domain/units-of-bulk";
import type { Product } from "@/lib/domain/workshop";

export interface Batch {
  /** Null where no product is filled from it. */
  readonly units: Units | null;
  /** Exact µg. */
  readonly bulk: Fraction;
}

/** The bulk of so many units, heel and process loss included. @rule SCALE-1, NEED-1 */
export const batchOfUnits = (product: Product, units: Units): Batch => ({
  units,
  bulk: exactFor(bulkOf(product), units),
});

/** A batch of a given mass, and the units that it fills. @rule SCALE-1 */
export const batchOfMass = (product: Product | null, bulk: Micrograms): Batch => ({
  units: product && unitsOfBulk(product, bulk),
  bulk: whole(bulk),
});

export type ByWhatIsLeft =
  | { readonly kind: "scaled"; readonly batch: Batch }
  /** The formula does without the material. */
  | { readonly kind: "not in it" };

/**
 * The largest batch, in whole µg, that what is left of one material makes, by itself or through premixes.
 * @param left  of the material, µg
 * @rule SCALE-2
 */
export function batchOfWhatIsLeft(
  product: Product | null,
  composition: Composition,
  material: string,
  left: Micrograms,
): ByWhatIsLeft {
  const share = composition.get(material);
  if (share === undefined) return { kind: "not in it" };
  const bulk = quantity<Micrograms>(roundedDown(dividedBy(whole(left), share)));
  return { kind: "scaled", batch: batchOfMass(product, bulk) };
}

/** What a vessel may hold, µg: below the least its stirrer does not reach. */
export interface Vessel {
  readonly least: Micrograms;
  readonly most: Micrograms;
}

export type ByVessel =
  | {
      readonly kind: "batches";
      /** Each with its own heel; units as even as they come, the larger batches first. */
      readonly batches: readonly Batch[];
      /** What goes into them together. Exact µg. */
      readonly bulk: Fraction;
      /** Of labour: each batch takes the minutes of a run. */
      readonly minutes: Fraction;
    }
  /** Not even one unit goes in. */
  | { readonly kind: "too small for one"; readonly needs: Fraction }
  /** The smallest of that many batches would not reach the least fill. */
  | { readonly kind: "below the least fill"; readonly batches: number; readonly smallest: Fraction };

/**
 * Shares units out over the fewest batches that the vessel holds.
 * @rule SCALE-3, SCALE-4
 */
export function batchesByVessel(product: Product, units: Units, vessel: Vessel): ByVessel {
  const most = unitsOfBulk(product, vessel.most);
  if (most < 1n) return { kind: "too small for one", needs: batchOfUnits(product, quantity<Units>(1n)).bulk };
  const count = roundedUp({ over: units, under: most });
  const [each, larger] = [units / count, units % count];
  const batches = Array.from({ length: Number(count) }, (_, at) =>
    batchOfUnits(product, quantity<Units>(BigInt(at) < larger ? each + 1n : each)),
  );
  const smallest = batchOfUnits(product, quantity<Units>(each)).bulk;
  if (compare(smallest, whole(vessel.least)) < 0) {
    return { kind: "below the least fill", batches: Number(count), smallest };
  }
  return {
    kind: "batches",
    batches,
    bulk: batches.map(({ bulk }) => bulk).reduce(plus, ZERO),
    minutes: minutesOf(product, units, count),
  };
}

/** @rule SCALE-4 */
const minutesOf = (product: Product, units: Units, batches: bigint): Fraction =>
  plus(
    times(whole(batches), decimalValue(product.labourMinutesPerRun)),
    times(whole(units), decimalValue(product.labourMinutesPerUnit)),
  );
