import type { Day } from "@/lib/domain/calendar";
import { type Composition, compositions } from "@/lib/domain/formula";
import { inFormulaOrder } from "@/lib/domain/formula-paths";
import { byId } from "@/lib/domain/index-by-id";
import type { Basis, ProductCost, UnitCost } from "@/lib/domain/plan-figures";
import { type IngredientInUnit, unitBreakdown, type UnitBreakdown } from "@/lib/domain/unit-breakdown";
import type { CurrencyCode } from "@/lib/domain/money";
import type { Formula, Lot, Offer, Product, Settings, Workshop } from "@/lib/domain/workshop";

/** Everything that the page of one product shows, worked out once and handed to its parts. */
export interface CostView {
  readonly product: Product;
  readonly formula: Formula;
  readonly formulas: readonly Formula[];
  readonly cost: UnitCost;
  readonly basis: Basis;
  readonly breakdown: UnitBreakdown;
  /** In the order in which the formula names them. */
  readonly ingredients: readonly IngredientInUnit[];
  readonly settings: Settings;
  readonly currency: CurrencyCode;
  readonly today: Day;
  readonly compositionOf: (formulaId: string) => Composition;
  readonly supplierName: (id: string) => string;
  readonly offersOf: (materialId: string) => readonly Offer[];
  readonly lotsOf: (materialId: string) => readonly Lot[];
}

export function costView(workshop: Workshop, productCost: ProductCost, basis: Basis, today: Day): CostView {
  const { formulas, settings } = workshop;
  const { product, byBasis } = productCost;
  const compositionOf = compositions(formulas);
  const breakdown = unitBreakdown(productCost, byBasis[basis]);
  const byMaterial = new Map(breakdown.ingredients.map((each) => [each.line.material.id, each]));
  const supplierOf = byId("supplier", workshop.suppliers);
  return {
    product,
    formula: byId("formula", formulas)(product.formula),
    formulas,
    cost: byBasis[basis],
    basis,
    breakdown,
    ingredients: inFormulaOrder(formulas, product.formula, compositionOf).flatMap((id) => byMaterial.get(id) ?? []),
    settings,
    currency: settings.currency,
    today,
    compositionOf,
    supplierName: (id) => supplierOf(id).name,
    offersOf: (id) => workshop.offers.filter(({ material }) => material === id),
    lotsOf: (id) => workshop.lots.filter(({ material }) => material === id),
  };
}
