/**
 * What one unit holds, and what is made for it beyond that. The ingredients of one unit as filled and what is lost
 * add up to the ingredients of its cost.
 * @rule NEED-1, COST-1
 */
import { dividedBy, type Fraction, minus, ratio, times, total, whole } from "./fraction";
import type { CostLine, CostUse, ProductCost, UnitCost } from "./plan-figures";
import { shareOf } from "./quantity";
import type { PackagingItem, PerRunItem } from "./workshop";

export interface UnitBreakdown {
  /** What is made in the vessel for one unit, exact µg. */
  readonly made: Fraction;
  /** Ingredients as one unit is filled with them, by material id. */
  readonly ingredients: readonly IngredientInUnit[];
  /** Null where all that is made is filled. */
  readonly losses: Losses | null;
  /** In the product's order. */
  readonly packaging: readonly { readonly item: PackagingItem; readonly line: CostLine; readonly use: CostUse }[];
  readonly perRun: readonly { readonly item: PerRunItem; readonly line: CostLine; readonly use: CostUse }[];
}

export interface IngredientInUnit {
  readonly line: CostLine;
  /** Its share of the finished mass, exact. */
  readonly fraction: Fraction;
  /** In one unit as filled, exact µg. */
  readonly quantity: Fraction;
  readonly cost: Fraction | null;
}

/** What is made for one unit beyond its fill, exact µg: the three parts add up to `quantity`. */
export interface Losses {
  /** Filled, and given away. */
  readonly overfill: Fraction;
  /** One unit's share of what stays in the vessel. */
  readonly heel: Fraction;
  /** Lost in proportion to the batch. */
  readonly process: Fraction;
  readonly quantity: Fraction;
  readonly cost: Fraction | null;
}

/** Takes the cost of one unit apart as it is filled. */
export function unitBreakdown({ product, bulk }: ProductCost, cost: UnitCost): UnitBreakdown {
  const made = dividedBy(bulk, whole(product.usualRun));
  const ingredients = usedAs(cost, "ingredient").map(({ line, use }): IngredientInUnit => {
    const fraction = dividedBy(use.quantity, made);
    const filled = times(fraction, whole(product.fill.quantity));
    return { line, fraction, quantity: filled, cost: line.price && times(filled, line.price.each) };
  });
  return {
    made,
    ingredients,
    losses: lossesOf(product, made, ingredients, cost),
    packaging: itemsWith(product.packaging, usedAs(cost, "packaging")),
    perRun: itemsWith(product.perRun, usedAs(cost, "per run")),
  };
}

interface Used {
  readonly line: CostLine;
  readonly use: CostUse;
}

const usedAs = ({ lines }: UnitCost, as: CostUse["as"]): readonly Used[] =>
  lines.flatMap((line) => line.uses.filter((use) => use.as === as).map((use) => ({ line, use })));

const itemsWith = <Item extends { readonly material: string }>(items: readonly Item[], used: readonly Used[]) =>
  items.flatMap((item) =>
    used.filter(({ line }) => line.material.id === item.material).map((found) => ({ item, ...found })),
  );

function lossesOf(
  product: ProductCost["product"],
  made: Fraction,
  ingredients: readonly IngredientInUnit[],
  cost: UnitCost,
): Losses | null {
  const lost = minus(made, whole(product.fill.quantity));
  if (lost.over === 0n) return null;
  const filled = ingredients.map((ingredient) => ingredient.cost).filter((each) => each !== null);
  return {
    overfill: whole(product.overfill?.quantity ?? 0n),
    heel: ratio(product.heel?.quantity ?? 0n, product.usualRun),
    process: times(made, shareOf(product.processLoss)),
    quantity: lost,
    cost: cost.ingredients && minus(cost.ingredients, total(filled)),
  };
}
