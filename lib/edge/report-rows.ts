/** The shape of the report, which is also its JSON: every figure is text, already rounded. @rule REPORT-1 */
import type { Basis } from "@/lib/domain/plan-figures";

export interface Report {
  readonly format: "stillroom-report";
  readonly version: 1;
  readonly today: string;
  readonly currency: string;
  readonly costs: readonly CostRow[];
  readonly runs: readonly RunRow[];
  readonly materials: readonly MaterialRow[];
  readonly basket: BasketRow;
}

/** Money with two more decimals than the currency; null where an unpriced material keeps it from being known. */
export interface CostRow {
  readonly product: string;
  readonly basis: Basis;
  readonly perUnit: string | null;
  readonly ingredients: string | null;
  readonly packaging: string | null;
  readonly labour: string;
  readonly overhead: string;
  readonly error: string | null;
  readonly lines: readonly { readonly material: string; readonly quantity: string; readonly cost: string | null }[];
}

export interface RunRow {
  readonly run: string;
  readonly makeable: boolean;
  readonly mostUnits: number;
  readonly limiting: string;
  readonly short: readonly { readonly material: string; readonly by: string }[];
}

export interface MaterialRow {
  readonly material: string;
  readonly onHand: string;
  readonly shortOn: string | null;
  readonly belowSafetyOn: string | null;
  readonly shortBy: string;
  readonly toBuy: string;
  readonly orderBy: string | null;
  readonly daysLate: number | null;
  readonly expiring: readonly { readonly lot: string; readonly on: string; readonly quantity: string }[];
}

/** Money with the currency's own decimals. */
export interface BasketRow {
  readonly total: string;
  readonly optimal: boolean;
  /** Null where the basket is proven to cost the least. */
  readonly gap: string | null;
  readonly unsourced: readonly string[];
  readonly orders: readonly BasketOrderRow[];
}

export interface BasketOrderRow {
  readonly supplier: string;
  readonly goods: string;
  readonly shipping: string;
  readonly total: string;
  readonly lines: readonly BasketLineRow[];
}

export interface BasketLineRow {
  readonly offer: string;
  readonly packs: number;
  readonly cost: string;
  readonly arrives: string;
  readonly late: boolean;
}
