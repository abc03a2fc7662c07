/** What runs whose batches are open ask for still, so that no plan asks twice for what was weighed. @rule BENCH-6 */
import { asksOf, type RunAsk } from "@/lib/domain/feasibility";
import { type MaterialUse, usesOf } from "@/lib/domain/needs";
import { quantity, type Stock } from "@/lib/domain/quantity";
import type { Material, Product } from "@/lib/domain/workshop";
import { type Batch, openBatches } from "./batch";
import { linesWeighed } from "./weights";

/** Open batches by run. */
export type InBatches = ReadonlyMap<string, Batch>;

export const NOTHING_IN_BATCHES: InBatches = new Map();

export const inBatchesOf = (batches: readonly Batch[]): InBatches =>
  new Map(openBatches(batches).map((batch) => [batch.run.id, batch]));

/**
 * What is still to come from the shelf: of each line that is not done what is missing from its target, and the
 * packaging and per-run items. What was added beside the formula stands for no line.
 */
export function asksOfBatch(
  batch: Batch,
  product: Product,
  uses: readonly MaterialUse[],
  materialOf: (id: string) => Material,
): readonly RunAsk[] {
  const asks = new Map(
    asksOf(usesOf(product, new Map(), materialOf), batch.run.units).map((ask) => [ask.use.material.id, ask]),
  );
  for (const { line, total, state } of linesWeighed(batch)) {
    if (line.of.kind !== "material") continue;
    const rest = state === "done" || total > line.target ? 0n : line.target - total;
    const known = asks.get(line.of.id);
    asks.set(line.of.id, {
      use:
        known?.use ??
        uses.find(({ material }) => material.id === line.of.id) ??
        useOf(materialOf(line.of.id), line.target),
      need: quantity<Stock>((known?.need ?? 0n) + rest),
      least: quantity<Stock>((known?.least ?? 0n) + rest),
      inBatch: quantity<Stock>((known?.inBatch ?? 0n) + total),
    });
  }
  return [...asks.values()];
}

/** Of a material that the formula holds no more, or holds as a pot of a premix. */
const useOf = (material: Material, target: bigint): MaterialUse => {
  const need = { perUnit: 0n, fixed: target, under: 1n };
  return { material, need, least: need, uses: [{ as: "ingredient", need }] };
};
