/** What has left the shelf for batches that are open, so that no plan asks for it twice. @rule BENCH-6 */
import { compositions } from "@/lib/domain/formula";
import type { RunAsk } from "@/lib/domain/feasibility";
import { roundedDown, times, whole } from "@/lib/domain/fraction";
import { quantity, type Stock } from "@/lib/domain/quantity";
import type { Workshop } from "@/lib/domain/workshop";
import { type Batch, openBatches, standing } from "./batch";

/** By run, then by material. */
export type InBatches = ReadonlyMap<string, ReadonlyMap<string, Stock>>;

export const NOTHING_IN_BATCHES: InBatches = new Map();

/** What stands in open batches. A pot of a premix counts as what it is made of. */
export function inBatchesOf(batches: readonly Batch[], workshop: Workshop): InBatches {
  const open = openBatches(batches);
  if (open.length === 0) return NOTHING_IN_BATCHES;
  const materialOfLot = new Map(workshop.lots.map(({ id, material }) => [id, material]));
  const premixOf = new Map(workshop.products.map(({ madeInto, formula }) => [madeInto ?? "", formula]));
  const compositionOf = compositions(workshop.formulas);
  return new Map(
    open.map((batch) => {
      const held = new Map<string, Stock>();
      const add = (material: string, amount: bigint): void => {
        held.set(material, quantity<Stock>((held.get(material) ?? 0n) + amount));
      };
      for (const { lot, net } of [...standing(batch, "weighed"), ...standing(batch, "added")]) {
        const material = lot === null ? undefined : materialOfLot.get(lot);
        if (material === undefined) continue;
        const premix = premixOf.get(material);
        if (premix === undefined) add(material, net);
        else for (const [id, share] of compositionOf(premix)) add(id, roundedDown(times(whole(net), share)));
      }
      return [batch.run.id, held] as const;
    }),
  );
}

/** What a run asks for still. */
export function withoutWeighed(ask: RunAsk, inBatch: ReadonlyMap<string, Stock>): RunAsk {
  const held = inBatch.get(ask.use.material.id) ?? 0n;
  const rest = (amount: Stock): Stock => quantity<Stock>(amount > held ? amount - held : 0n);
  return { ...ask, need: rest(ask.need), least: rest(ask.least), inBatch: quantity<Stock>(held) };
}
