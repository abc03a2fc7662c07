/** What stands in the house once a run was made: finished units, or a lot of the material that it makes. @rule CLOSE-4, AHEAD-7 */
import type { Day } from "./calendar";
import type { StruckOffLot } from "./ledger/past";
import { finishedLot, materialLot } from "./ledger/posting";
import type { MicroUnits } from "./money";
import { quantity, type Stock, type Units } from "./quantity";
import type { FinishedLot, Lot, Product, Workshop } from "./workshop";

export interface RunOutput {
  readonly product: Product;
  readonly lot: Pick<FinishedLot, "id" | "bestBefore">;
  readonly made: Day;
  readonly units: Units;
  /** Of materials. */
  readonly value: MicroUnits;
}

/** Whether a lot of that name is there already. */
export const isTaken = ({ lots, finished }: Workshop, { madeInto }: Product, id: string): boolean =>
  (madeInto === null ? finished : lots).some((each) => each.id === id);

/** What one unit is of the material that the product makes, µg; null where it makes finished units. */
export const materialOfUnit = ({ madeInto, fill }: Product): bigint | null =>
  madeInto === null ? null : fill.quantity;

/** The lists with what came out; with nothing more where nothing did. */
export function withOutput<Lists extends Pick<Workshop, "lots" | "finished">>(lists: Lists, output: RunOutput): Lists {
  const { product, lot, made, units, value } = output;
  if (units === 0n) return lists;
  if (product.madeInto === null) {
    const finished: FinishedLot = { ...lot, product: product.id, made, units };
    return { ...lists, finished: [...lists.finished, finished] };
  }
  const ofMaterial: Lot = {
    id: lot.id,
    material: product.madeInto,
    received: made,
    expires: lot.bestBefore,
    remaining: quantity<Stock>(units * product.fill.quantity),
    value,
  };
  return { ...lists, lots: [...lists.lots, ofMaterial] };
}

/** The lot of a batch that failed, which no list shows. */
export const lotOfNothing = ({ product, lot, made }: Omit<RunOutput, "units" | "value">): StruckOffLot => ({
  lot: product.madeInto === null ? finishedLot(lot.id) : materialLot(lot.id),
  item: product.madeInto ?? product.id,
  since: made,
  expires: lot.bestBefore,
});
