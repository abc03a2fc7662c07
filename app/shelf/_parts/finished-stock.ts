/** Finished lots with what stands of each. */
import type { KeptBalance } from "@/lib/domain/ledger/audit";
import { NO_VALUE, plusValue, type Value } from "@/lib/domain/ledger/posting";
import type { FinishedLot, Product, Workshop } from "@/lib/domain/workshop";
import { isCostKnown } from "@/lib/edge/cost-words";

export interface FinishedStock {
  readonly lot: FinishedLot;
  readonly product: Product;
  readonly there: bigint;
  readonly held: bigint;
  /** In stock and on hold together. */
  readonly value: Value;
}

/** Whether units are there of which nobody wrote down what they cost. */
export const hasNoCost = ({ there, held, value }: FinishedStock): boolean =>
  !isCostKnown({ lot: { of: "finished" }, quantity: there + held, value });

/** By product, and then the lot that was made first. */
export function finishedStock(workshop: Workshop, kept: readonly KeptBalance[]): readonly FinishedStock[] {
  const products = new Map(workshop.products.map((product) => [product.id, product]));
  return workshop.finished
    .flatMap((lot): readonly FinishedStock[] => {
      const product = products.get(lot.product);
      if (product === undefined) return [];
      const own = kept.filter((each) => each.lot.of === "finished" && each.lot.id === lot.id);
      const at = (kind: "finished" | "hold"): bigint =>
        own.filter(({ place }) => place.kind === kind).reduce((sum, { quantity }) => sum + quantity, 0n);
      const value = own.map((each) => each.value).reduce(plusValue, NO_VALUE);
      return [{ lot, product, there: at("finished"), held: at("hold"), value }];
    })
    .sort((a, b) => a.product.name.localeCompare(b.product.name, "en") || a.lot.made - b.lot.made);
}
