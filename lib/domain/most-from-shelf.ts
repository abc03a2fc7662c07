/** The most that can be made from the shelf today, each product on its own. @rule MAKE-3 */
import { mostAhead } from "./ahead-needs";
import type { Day } from "./calendar";
import { mostOf } from "./feasibility";
import { isUsable } from "./lots";
import type { Growing } from "./needs";
import type { Prepared } from "./plan";
import { quantity, type Stock, type Units } from "./quantity";
import type { Material, Product } from "./workshop";

export interface MostFromShelf {
  readonly product: Product;
  readonly mostUnits: Units;
  readonly limiting: Material;
  /** What the shelf holds of the limiting material, usable today, in so many lots. */
  readonly there: Stock;
  readonly lots: number;
  /** What the product takes of it at least; null where that depends on what is made ahead, and was found by trying. */
  readonly least: Growing | null;
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
    (stock.lotsByMaterial.get(material.id) ?? []).filter((lot) => isUsable(lot, today));
  const usableOf = (material: Material): Stock =>
    quantity<Stock>(lotsOf(material).reduce((held, lot) => held + lot.quantity, 0n));
  return products.map((product) => {
    const opened = openedByProduct.get(product.id);
    const uses = usesByProduct.get(product.id) ?? [];
    const most = opened
      ? mostAhead(opened, product.usualRun, usableOf)
      : mostOf(uses.map((use) => ({ use, there: usableOf(use.material) })));
    const { limiting } = most;
    const least = opened ? null : (uses.find(({ material }) => material === limiting)?.least ?? null);
    return { product, ...most, there: usableOf(limiting), lots: lotsOf(limiting).length, least };
  });
}
