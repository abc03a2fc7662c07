/** What is said of a workshop file before it is opened. */
import { createHash } from "node:crypto";
import { isAwaited } from "@/lib/domain/orders";
import type { Workshop } from "@/lib/domain/workshop";

export interface Holding {
  readonly name: string;
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
  { name: "Products", count: workshop.products.length },
  { name: "Formulas", count: workshop.formulas.length },
  { name: "Materials", count: workshop.materials.length },
  { name: "Offers", count: workshop.offers.length },
  { name: "Suppliers", count: workshop.suppliers.length },
  { name: "Lots", count: workshop.lots.length },
  { name: "Orders on the way", count: workshop.orders.filter(isAwaited).length },
  { name: "Runs planned", count: workshop.runs.length },
  { name: "Finished lots", count: workshop.finished.length },
  { name: "Sales", count: workshop.sales.length },
];
