/** A shop that lacks so much, from so many, that its basket is not found at once: a large basket as a workshop. */
import { quantity } from "@/lib/domain/quantity";
import type { Parts } from "./bench";
import { largeBasket } from "./large-baskets";
import { inGrams, grams, material, money, offer, supplier } from "./notation";

const pounds = (micros: bigint) => money((Number(micros) / 1e6).toFixed(6));

/** Every material is below its safety stock and nothing else happens: what is wanted is that stock. */
export function largeShop(): Parts {
  const dice = largeBasket({ materials: 40, suppliers: 5, offersEach: 5, seed: 3 });
  return {
    suppliers: dice.suppliers.map(({ id, shipping, freeFrom, minimum }) =>
      supplier(id, {
        shipping: pounds(shipping),
        shippingFreeFrom: freeFrom === null ? null : pounds(freeFrom),
        minimumOrder: minimum === null ? null : pounds(minimum),
      }),
    ),
    materials: dice.materials.map(({ id, need }) => material(id, { safetyStock: grams(inGrams(need)) })),
    offers: dice.offers.map((each) =>
      offer(each.id, each.material, inGrams(each.pack), "1", {
        supplier: each.supplier,
        price: pounds(each.price),
        breaks: each.breaks.map(({ packs, price }) => ({ packs: quantity(packs), price: pounds(price) })),
      }),
    ),
  };
}
