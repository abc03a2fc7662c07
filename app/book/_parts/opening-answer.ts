/** What is said of a workshop file before it is opened. */
import { createHash } from "node:crypto";
import { isAwaited } from "@/lib/domain/orders";
import type { Workshop } from "@/lib/domain/workshop";

export interface Holding {
  readonly name: string;
  /** What one of them is called in a sentence. */
  readonly one: string;
  readonly count: number;
}

export type OpeningAnswer =
  | { readonly kind: "not tried" }
  | { readonly kind: "refused"; readonly faults: readonly string[] }
  | {
      readonly kind: "looked into";
      readonly name: string;
      readonly holds: readonly Holding[];
      /** What was looked into: only that is opened. */
      readonly mark: string;
      /** The file itself, where it is small enough to come along. */
      readonly text: string | null;
    };

export const markOf = (text: string): string => createHash("sha256").update(text).digest("hex");

export const holdingsOf = (workshop: Workshop): readonly Holding[] => [
  { name: "Products", one: "product", count: workshop.products.length },
  { name: "Formulas", one: "formula", count: workshop.formulas.length },
  { name: "Materials", one: "material", count: workshop.materials.length },
  { name: "Offers", one: "offer", count: workshop.offers.length },
  { name: "Suppliers", one: "supplier", count: workshop.suppliers.length },
  { name: "Lots", one: "lot", count: workshop.lots.length },
  { name: "Orders on the way", one: "order on the way", count: workshop.orders.filter(isAwaited).length },
  { name: "Runs planned", one: "run planned", count: workshop.runs.length },
  { name: "Finished lots", one: "finished lot", count: workshop.finished.length },
  { name: "Sales", one: "sale", count: workshop.sales.length },
];
