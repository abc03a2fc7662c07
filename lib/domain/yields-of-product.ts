/** What the batches of a product yielded, from what they took and the units that came out. @rule YIELD-2 */
import { type Batch, standing } from "./bench/batch";
import type { Desk } from "./desk";
import type { BatchUse } from "./ledger/late-cost";
import { type Micrograms, quantity } from "./quantity";
import type { Material, Product } from "./workshop";
import type { BatchYield } from "./yield-fit";

/**
 * One yield for each closed run of the product that filled any unit; a batch that failed says nothing of its losses.
 * @param uses        what the batches took
 * @param materialOf  of a lot; null where nobody knows any more
 */
export function yieldsOfProduct(
  product: Product,
  { closedRuns, batches }: Pick<Desk, "closedRuns" | "batches">,
  uses: readonly BatchUse[],
  materialOf: (lot: string) => Material | null,
): readonly BatchYield[] {
  const each = product.fill.quantity + (product.overfill?.quantity ?? 0n);
  return closedRuns.flatMap(({ run, unitsMade }): readonly BatchYield[] => {
    if (run.product !== product.id || unitsMade === 0n) return [];
    const own = uses.filter((use) => use.run === run.id && use.lot.of === "material");
    const bulk = own.reduce((sum, { lot, taken }) => (isFilled(materialOf(lot.id)) ? sum + taken : sum), 0n);
    if (bulk === 0n) return [];
    const left = leftOver(batches.find((batch) => batch.run.id === run.id));
    return [{ bulk: quantity<Micrograms>(bulk), filled: quantity<Micrograms>(unitsMade * each + left) }];
  });
}

/** What was left in the vessel of a batch of the bench, µg. */
const leftOver = (batch: Batch | undefined): bigint => (batch && standing(batch, "closed").at(-1)?.leftOver) ?? 0n;

/** Whether a material is part of what is filled, and not packaging or used up beside it. */
const isFilled = (material: Material | null): boolean =>
  material !== null && material.kind === "ingredient" && material.measure === "mass";
