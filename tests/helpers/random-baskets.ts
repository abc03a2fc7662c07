/** Invented basket problems: small enough to try everything on, and awkward on purpose. */
import type { BasketProblem } from "@/lib/domain/buying/basket-problem";
import type { MicroUnits } from "@/lib/domain/money";
import { quantity, type Packs, type Stock } from "@/lib/domain/quantity";
import type { Instance } from "../second/cheapest-basket";
import { chance, type Dice, pick, several } from "./random-dice";

export interface BasketSize {
  readonly materials: number;
  readonly suppliers: number;
  readonly offersEach: number;
  /** How many packs a need takes at the most. */
  readonly packsEach: number;
  readonly withMostPacks?: boolean;
}

/** Money in steps: whole coins mostly, sometimes millionths, so that sums do not fall together. */
const STEPS = [10_000n, 10_000n, 250_000n, 1n];

export function randomInstance(dice: Dice, size: BasketSize): Instance {
  const step = pick(dice, STEPS);
  const money = (least: number, most: number) => BigInt(dice.whole(least, most)) * step;
  const suppliers = several(dice.whole(1, size.suppliers), (at) => ({
    id: `s${String(at)}`,
    shipping: chance(dice, 75) ? money(1, 60) : 0n,
    freeFrom: chance(dice, 60) ? money(20, 150) : null,
    minimum: chance(dice, 45) ? money(10, 110) : null,
  }));
  const materials = several(dice.whole(1, size.materials), (at) => ({
    id: `m${String(at)}`,
    need: BigInt(dice.whole(1, 40 * size.packsEach)) * (chance(dice, 20) ? 1n : 1_000n) + (chance(dice, 20) ? 1n : 0n),
  }));
  const offers = materials.flatMap(({ id, need }, material) =>
    several(dice.whole(1, size.offersEach), (at) => {
      const packs = dice.whole(1, size.packsEach);
      const price = money(9, 90);
      return {
        id: `o${String(material)}-${String(at)}`,
        material: id,
        supplier: pick(dice, suppliers).id,
        pack: need / BigInt(packs) + 1n,
        price,
        breaks: several(dice.whole(0, 2), (place) => ({
          packs: BigInt(2 + place * 2 + dice.whole(0, 1)),
          // Now and then a break is dearer than what is before it: nothing says that it may not be.
          price: chance(dice, 90) ? ((price * BigInt(dice.whole(60, 99))) / 100n / step) * step || step : price + step,
        })),
        minPacks: chance(dice, 25) ? BigInt(dice.whole(2, 3)) : 1n,
        maxPacks: size.withMostPacks && chance(dice, 50) ? BigInt(dice.whole(1, 4)) : null,
      };
    }),
  );
  return { materials, suppliers, offers };
}

/** The same in the product's types. */
export function problemOfInstance({ materials, suppliers, offers }: Instance): BasketProblem {
  const money = (amount: bigint) => quantity<MicroUnits>(amount);
  const orNone = (amount: bigint | null) => (amount === null ? null : money(amount));
  return {
    materials: materials.map(({ id, need }) => ({ id, wanted: quantity<Stock>(need) })),
    suppliers: suppliers.map(({ id, shipping, freeFrom, minimum }) => ({
      id,
      shipping: money(shipping),
      shippingFreeFrom: orNone(freeFrom),
      minimumOrder: orNone(minimum),
    })),
    offers: offers.map(({ id, material, supplier, pack, price, breaks, minPacks, maxPacks }) => ({
      id,
      material,
      supplier,
      pack: quantity<Stock>(pack),
      price: money(price),
      breaks: breaks.map((each) => ({ packs: quantity<Packs>(each.packs), price: money(each.price) })),
      minPacks: quantity<Packs>(minPacks),
      maxPacks: maxPacks === null ? null : quantity<Packs>(maxPacks),
    })),
  };
}
