import "server-only";
import type { Books } from "@/lib/domain/desk";
import type { Material, Product } from "@/lib/domain/workshop";
import { fitYield, type YieldFit } from "@/lib/domain/yield-fit";
import { yieldsOfProduct } from "@/lib/domain/yields-of-product";
import { readBatchUses, readStruckOff } from "@/lib/store/ledger/ledger-answers";

/** What the closed batches of a product say of its heel and process loss. @rule YIELD-1, YIELD-2 */
export async function yieldForPage({ workshop, desk }: Books, product: Product): Promise<YieldFit> {
  const runs = desk.closedRuns.filter(({ run }) => run.product === product.id);
  if (runs.length === 0) return fitYield([]);
  const [uses, struckOff] = await Promise.all([readBatchUses(runs.map(({ run }) => run.id)), readStruckOff()]);
  const materialById = new Map(workshop.materials.map((material) => [material.id, material]));
  const itemOf = new Map<string, string | null>([
    ...struckOff.flatMap(({ lot, item }) => (lot.of === "material" ? [[lot.id, item] as const] : [])),
    ...workshop.lots.map(({ id, material }) => [id, material] as const),
  ]);
  const materialOf = (lot: string): Material | null => materialById.get(itemOf.get(lot) ?? "") ?? null;
  return fitYield(yieldsOfProduct(product, desk, uses, materialOf));
}
