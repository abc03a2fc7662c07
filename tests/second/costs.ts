/** What one unit costs, in the second implementation. */
import { add, addAll, byCodePoint, costText, divide, type Exact, exact, money, multiply, quantityText } from "./exact";
import type { FileMaterial, FileProduct, WorkshopFile } from "./file-shape";
import { minutesOf, type Uses } from "./needs";
import { offerPrice, pricedOffer } from "./projection";
import { heldBy, lotsHere, usable } from "./shelf";

export type CostBasis = "replacement" | "shelf" | "average";

const lotValue = (file: WorkshopFile, id: string): Exact => money(file.lots.find((lot) => lot.id === id)?.value);

function averagePrice(file: WorkshopFile, material: FileMaterial, today: number): Exact | null {
  const lots = usable(lotsHere(file), material, today);
  const held = heldBy(lots);
  return held === 0n ? null : divide(addAll(lots.map((lot) => lotValue(file, lot.id))), exact(held));
}

function replacementPrice(file: WorkshopFile, material: FileMaterial): Exact | null {
  const offer = pricedOffer(file, material);
  return offer === undefined ? null : offerPrice(file, offer);
}

/** The value of what `wanted` would draw today, topped up at `otherwise`, over what is wanted. */
function shelfPrice(
  file: WorkshopFile,
  material: FileMaterial,
  today: number,
  wanted: Exact,
  otherwise: Exact | null,
): Exact | null {
  let [lacking, value] = [wanted, exact(0n)];
  for (const lot of usable(lotsHere(file), material, today).filter((each) => each.left > 0n)) {
    const isAll = lacking[0] >= lot.left * lacking[1];
    const drawn = isAll ? exact(lot.left) : lacking;
    value = add(value, multiply(lotValue(file, lot.id), divide(drawn, exact(lot.left))));
    lacking = add(lacking, exact(-drawn[0], drawn[1]));
  }
  if (lacking[0] === 0n) return divide(value, wanted);
  return otherwise === null ? null : divide(add(value, multiply(lacking, otherwise)), wanted);
}

function priceOf(file: WorkshopFile, material: FileMaterial, today: number, basis: CostBasis, wanted: Exact) {
  const average = averagePrice(file, material, today);
  const replacement = replacementPrice(file, material) ?? average;
  switch (basis) {
    case "replacement":
      return replacement;
    case "shelf":
      return shelfPrice(file, material, today, wanted, replacement);
    case "average":
      return average ?? replacement;
  }
}

/** One row of the report's costs; `uses` are those of the product's usual run. */
export function costRow(
  file: WorkshopFile,
  today: number,
  product: FileProduct,
  uses: ReadonlyMap<FileMaterial, Uses>,
  basis: CostBasis,
) {
  const usualRun = exact(BigInt(product.usualRun));
  const text = (amount: Exact | null) => (amount === null ? null : costText(amount, file.workshop.currency));
  const priced = [...uses]
    .sort(([a], [b]) => byCodePoint(a.id, b.id))
    .map(([material, used]) => {
      const quantity = divide(add(used.ingredient, used.packaging), usualRun);
      const price = priceOf(file, material, today, basis, add(used.ingredient, used.packaging));
      return { material, used, quantity, price };
    });
  const sumOf = (part: "ingredient" | "packaging"): Exact | null => {
    const parts = priced.filter(({ used }) => used[part][0] > 0n);
    if (parts.some(({ price }) => price === null)) return null;
    return addAll(parts.map(({ used, price }) => multiply(divide(used[part], usualRun), price ?? exact(0n))));
  };
  const [ingredients, packaging] = [sumOf("ingredient"), sumOf("packaging")];
  const hours = divide(minutesOf(product), exact(60n));
  const labour = multiply(hours, money(file.workshop.labourPerHour));
  const overhead = multiply(hours, money(file.workshop.overheadPerHour));
  const unpriced = priced.filter(({ price }) => price === null).map(({ material }) => material.id);
  return {
    product: product.id,
    basis,
    perUnit: text(
      ingredients === null || packaging === null ? null : addAll([ingredients, packaging, labour, overhead]),
    ),
    ingredients: text(ingredients),
    packaging: text(packaging),
    labour: text(labour),
    overhead: text(overhead),
    error: unpriced.length === 0 ? null : unpriced,
    lines: priced.map(({ material, quantity, price }) => ({
      material: material.id,
      quantity: quantityText(quantity, material.measure),
      cost: text(price === null ? null : multiply(quantity, price)),
    })),
  };
}
