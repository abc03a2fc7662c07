import type { LotRecords } from "@/lib/domain/ledger/refusal";
import type { UnitsOf } from "@/lib/domain/ledger/sales-history";
import type { MoveLine } from "@/lib/domain/ledger/stock-moves";

/** The units of finished lots as units of their products, each once, in their order. */
export function unitsOfProducts(lines: readonly MoveLine[], records: LotRecords): readonly UnitsOf[] {
  const units = new Map<string, bigint>();
  for (const { lot, quantity } of lines) {
    const product = records(lot)?.item;
    if (product !== undefined) units.set(product, (units.get(product) ?? 0n) + quantity);
  }
  return [...units].map(([product, all]) => ({ product, units: all }));
}
