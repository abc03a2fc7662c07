/** The most that can be made from the shelf today, each product on its own. @rule MAKE-3 */
import { mostAhead } from "./ahead-needs";
import type { Day } from "./calendar";
import { mostOf } from "./feasibility";
import { isUsable } from "./lots";
import { type MostWorking, mostWorking } from "./lots-drawn";
import type { Prepared } from "./plan";
import { quantity, type Stock } from "./quantity";
import type { Material, Product } from "./workshop";

export interface MostFromShelf extends MostWorking {
  readonly product: Product;
}

/**
 * What a run of each product would allow at most if it were made today, first, from the whole shelf.
 * @returns in the order of the products given; products draw on the same shelf, so two of them are not to be added up
 * @rule MAKE-3
 */
export function mostFromShelf(
  products: readonly Product[],
  { stock, usesByProduct, openedByProduct }: Pick<Prepared, "stock" | "usesByProduct" | "openedByProduct">,
  today: Day,
): readonly MostFromShelf[] {
  const lotsOf = (material: Material) =>
    (stock.lotsByMaterial.get(material.id) ?? [])
      .filter((lot) => isUsable(lot, today))
      .map((lot) => ({ lot, there: lot.quantity }));
  const usableOf = (material: Material): Stock =>
    quantity<Stock>(lotsOf(material).reduce((held, { there }) => held + there, 0n));
  return products.map((product) => {
    const opened = openedByProduct.get(product.id) ?? null;
    const uses = usesByProduct.get(product.id) ?? [];
    const most = opened
      ? mostAhead(opened, product.usualRun, usableOf)
      : mostOf(uses.map((use) => ({ use, there: usableOf(use.material) })));
    return { product, ...mostWorking({ product, ...most, opened, uses, lotsOf }) };
  });
}
