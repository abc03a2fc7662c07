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
  /** In the order in which the formula names them; what is drawn instead of a premix made ahead before them. */
  readonly ingredients: readonly IngredientInUnit[];
  readonly settings: Settings;
  readonly currency: CurrencyCode;
  readonly today: Day;
  readonly compositionOf: (formulaId: string) => Composition;
  readonly supplierName: (id: string) => string;
  readonly offersOf: (materialId: string) => readonly Offer[];
  readonly lotsOf: (materialId: string) => readonly Lot[];
  /** The premix that a material is made of ahead, if any. @rule AHEAD-1 */
  readonly premixOf: (materialId: string) => Formula | null;
}

export function costView(workshop: Workshop, productCost: ProductCost, basis: Basis, today: Day): CostView {
  const { formulas, settings } = workshop;
  const { product, byBasis } = productCost;
  const compositionOf = compositions(formulas);
  const breakdown = unitBreakdown(productCost, byBasis[basis]);
  const byMaterial = new Map(breakdown.ingredients.map((each) => [each.line.material.id, each]));
  const inOrder = inFormulaOrder(formulas, product.formula, compositionOf);
  const instead = [...byMaterial.keys()].filter((id) => !inOrder.includes(id));
  const supplierOf = byId("supplier", workshop.suppliers);
  const formulaOf = byId("formula", formulas);
  return {
    product,
    formula: formulaOf(product.formula),
    formulas,
    cost: byBasis[basis],
    basis,
    breakdown,
    ingredients: [...instead, ...inOrder].flatMap((id) => byMaterial.get(id) ?? []),
    settings,
    currency: settings.currency,
    today,
    compositionOf,
    supplierName: (id) => supplierOf(id).name,
    offersOf: (id) => workshop.offers.filter(({ material }) => material === id),
    lotsOf: (id) => workshop.lots.filter(({ material }) => material === id),
    premixOf: (id) => {
      const maker = workshop.products.find(({ madeInto }) => madeInto === id);
      return maker ? formulaOf(maker.formula) : null;
    },
  };
}
