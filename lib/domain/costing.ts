/** What one filled, labelled unit costs. @rule COST-1 to COST-7 */
import { exactAheadUses } from "./ahead-needs";
import { dividedBy, type Fraction, plus, ratio, times, total, whole } from "./fraction";
import type { OpenedProduct } from "./made-ahead";
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
import { decimalValue, quantity, type Stock, sum } from "./quantity";
import type { Material, Product, Settings } from "./workshop";

const MINUTES_AN_HOUR = whole(60n);

/**
 * The cost of one unit of a product on each basis, priced for its usual run with needs not rounded.
 * @param uses      every material of the product, by id
 * @param bookOf    what each material can be priced from
 * @param opened    where its formula holds premixes made ahead: on the shelf's basis their lots are drawn (AHEAD-6)
 * @returns exact micro-units; null for each figure that depends on a material without a price
 */
export function costOf(
  product: Product,
  uses: readonly MaterialUse[],
  bookOf: (materialId: string) => PriceBook,
  settings: Settings,
  opened?: OpenedProduct,
): ProductCost {
  const units = whole(product.usualRun);
  const minutes = plus(
    dividedBy(decimalValue(product.labourMinutesPerRun), units),
    decimalValue(product.labourMinutesPerUnit),
  );
  const hours = dividedBy(minutes, MINUTES_AN_HOUR);
  const labour = times(hours, whole(settings.labourPerHour));
  const overhead = times(hours, whole(settings.overheadPerHour));

  const used = uses.map((use) => forOneUnit(use, product));

  const fromShelf = opened === undefined ? used : usedFromShelf(opened, bookOf);

  const onBasis = (basis: Basis): UnitCost => {
    const lines = (basis === "shelf" ? fromShelf : used).map((each) =>
      lineOf(each, priceOn(basis, bookOf(each.material.id), each.inUsualRun)),
    );
    const ingredients = totalOf(lines, (use) => use.as === "ingredient");
    const packaging = totalOf(lines, (use) => use.as !== "ingredient");
    const perUnit = ingredients && packaging && total([ingredients, packaging, labour, overhead]);
    const unpriced = lines.filter(({ price }) => price === null).map(({ material }) => material);
    return { basis, perUnit, ingredients, packaging, labour, overhead, minutes, unpriced, lines };
  };
  const [replacement, shelf, average] = BASES.map(onBasis) as [UnitCost, UnitCost, UnitCost];
  return { product, bulk: exactFor(bulkOf(product), product.usualRun), byBasis: { replacement, shelf, average } };
}

/** What one unit takes of a material: the same on every basis. Exact µg or pieces. */
interface UsedByUnit {
  readonly material: Material;
  readonly inUsualRun: Fraction;
  readonly quantity: Fraction;
  readonly uses: readonly Pick<CostUse, "as" | "quantity">[];
}

function forOneUnit({ material, need, uses }: MaterialUse, { usualRun }: Product): UsedByUnit {
  const inUsualRun = exactFor(need, usualRun);
  const each = (run: Fraction): Fraction => ratio(run.over, run.under * usualRun);
  return {
    material,
    inUsualRun,
    quantity: each(inUsualRun),
    uses: uses.map((use) => ({ as: use.as, quantity: each(exactFor(use.need, usualRun)) })),
  };
}

/** The same from today's shelf, with what is drawn instead of premixes made ahead. @rule AHEAD-6 */
function usedFromShelf(opened: OpenedProduct, bookOf: (materialId: string) => PriceBook): readonly UsedByUnit[] {
  const units = opened.product.usualRun;
  const each = (run: Fraction): Fraction => ratio(run.over, run.under * units);
  const thereOf = ({ id }: Material): Stock =>
    bookOf(id)
      .usableLots.map(({ remaining }) => remaining)
      .reduce(sum, quantity<Stock>(0n));
  return exactAheadUses(opened, thereOf).map(({ material, inUsualRun, uses }) => ({
    material,
    inUsualRun,
    quantity: each(inUsualRun),
    uses: uses.map((use) => ({ as: use.as, quantity: each(use.inUsualRun) })),
  }));
}

function priceOn(basis: Basis, book: PriceBook, inUsualRun: Fraction): Price | null {
  switch (basis) {
    case "replacement":
      return book.replacement;
    case "average":
      return book.average;
    case "shelf":
      return shelfPrice(book, inUsualRun);
  }
}

function lineOf({ material, quantity, uses }: UsedByUnit, price: Price | null): CostLine {
  const cost = (taken: Fraction): Fraction | null => (price === null ? null : times(taken, price.each));
  return {
    material,
    quantity,
    cost: cost(quantity),
    uses: uses.map((use) => ({ ...use, cost: cost(use.quantity) })),
    price,
  };
}

/** The cost of those uses over all lines, or null where one of them has no price. @rule COST-6 */
function totalOf(lines: readonly CostLine[], counts: (use: CostUse) => boolean): Fraction | null {
  const costs: Fraction[] = [];
  for (const { uses } of lines) {
    for (const use of uses) {
      if (!counts(use)) continue;
      if (use.cost === null) return null;
      costs.push(use.cost);
    }
  }
  return total(costs);
}
