/** What one filled, labelled unit costs. @rule COST-1 to COST-7 */
import { dividedBy, type Fraction, plus, ratio, times, total, whole } from "./fraction";
import { bulkOf, exactFor, type MaterialUse } from "./needs";
import {
  BASES,
  type Basis,
  type CostLine,
  type CostUse,
  type Price,
  type ProductCost,
  type UnitCost,
} from "./plan-figures";
import { type PriceBook, shelfPrice } from "./prices";
import { decimalValue } from "./quantity";
import type { Product, Settings } from "./workshop";

const MINUTES_AN_HOUR = whole(60n);

/**
 * The cost of one unit of a product on each basis, priced for its usual run with needs not rounded.
 * @param uses      every material of the product, by id
 * @param bookOf    what each material can be priced from
 * @returns exact micro-units; null for each figure that depends on a material without a price
 */
export function costOf(
  product: Product,
  uses: readonly MaterialUse[],
  bookOf: (materialId: string) => PriceBook,
  settings: Settings,
): ProductCost {
  const units = whole(product.usualRun);
  const minutes = plus(
    dividedBy(decimalValue(product.labourMinutesPerRun), units),
    decimalValue(product.labourMinutesPerUnit),
  );
  const hours = dividedBy(minutes, MINUTES_AN_HOUR);
  const labour = times(hours, whole(settings.labourPerHour));
  const overhead = times(hours, whole(settings.overheadPerHour));

  const onBasis = (basis: Basis): UnitCost => {
    const lines = uses.map((use) => lineOf(use, product, priceOn(basis, bookOf(use.material.id), use, product)));
    const ingredients = totalOf(lines, (use) => use.as === "ingredient");
    const packaging = totalOf(lines, (use) => use.as !== "ingredient");
    const perUnit = ingredients && packaging && total([ingredients, packaging, labour, overhead]);
    const unpriced = lines.filter(({ price }) => price === null).map(({ material }) => material);
    return { basis, perUnit, ingredients, packaging, labour, overhead, minutes, unpriced, lines };
  };
  const [replacement, shelf, average] = BASES.map(onBasis) as [UnitCost, UnitCost, UnitCost];
  return { product, bulk: exactFor(bulkOf(product), product.usualRun), byBasis: { replacement, shelf, average } };
}

function priceOn(basis: Basis, book: PriceBook, use: MaterialUse, product: Product): Price | null {
  switch (basis) {
    case "replacement":
      return book.replacement;
    case "average":
      return book.average;
    case "shelf":
      return shelfPrice(book, exactFor(use.need, product.usualRun));
  }
}

function lineOf(use: MaterialUse, product: Product, price: Price | null): CostLine {
  const forOneUnit = (run: Fraction): Fraction => ratio(run.over, run.under * product.usualRun);
  const cost = (quantity: Fraction): Fraction | null => (price === null ? null : times(quantity, price.each));
  const uses = use.uses.map(({ as, need }): CostUse => {
    const quantity = forOneUnit(exactFor(need, product.usualRun));
    return { as, quantity, cost: cost(quantity) };
  });
  const quantity = forOneUnit(exactFor(use.need, product.usualRun));
  return { material: use.material, quantity, cost: cost(quantity), uses, price };
}

/** The cost of those uses over all lines, or null where one of them has no price. @rule COST-6 */
function totalOf(lines: readonly CostLine[], counts: (use: CostUse) => boolean): Fraction | null {
  const costs = lines.flatMap(({ uses }) => uses.filter(counts).map(({ cost }) => cost));
  const known = costs.filter((cost) => cost !== null);
  return known.length < costs.length ? null : total(known);
}
