/** Invented buying problems of a workshop's size: every material from every supplier, at three prices. */
import type { Instance } from "../second/cheapest-basket";
import { diceFrom, pick, several } from "./random-dice";

export interface LargeBasket {
  readonly materials: number;
  readonly suppliers: number;
  /** How many of the suppliers offer each material. */
  readonly offersEach: number;
  readonly seed: number;
}

/** Prices of one material are alike, larger packs are cheaper by weight, and breaks take 3 to 15 % off. */
export function largeBasket({ materials, suppliers, offersEach, seed }: LargeBasket): Instance {
  const dice = diceFrom(seed);
  const cents = (amount: number) => BigInt(Math.ceil(amount)) * 10_000n;
  const packs = [50, 100, 250, 500, 1000];
  const wanted = several(materials, (at) => ({ id: `m${String(at)}`, need: dice.whole(60, 3000) }));
  return {
    materials: wanted.map(({ id, need }) => ({ id, need: BigInt(need) * 1_000_000n })),
    suppliers: several(suppliers, (at) => ({
      id: `s${String(at)}`,
      shipping: cents(dice.whole(4, 14) * 100),
      freeFrom: dice.whole(1, 100) <= 75 ? cents(dice.whole(6, 40) * 1000) : null,
      minimum: dice.whole(1, 100) <= 50 ? cents(dice.whole(2, 8) * 1000) : null,
    })),
    offers: wanted.flatMap(({ id }, material) => {
      const perGram = dice.whole(2, 60) / 10;
      const from = several(suppliers, (at) => at);
      return several(offersEach, (at) => {
        const supplier = from.splice(dice.whole(0, from.length - 1), 1)[0] ?? 0;
        const pack = pick(dice, packs);
        const price = perGram * pack * (1.25 - Math.log10(pack) / 10) * (dice.whole(90, 112) / 100);
        const first = dice.whole(2, 5);
        const [less, least] = [dice.whole(3, 8), dice.whole(9, 15)];
        return {
          id: `o${String(material)}-${String(at)}`,
          material: id,
          supplier: `s${String(supplier)}`,
          pack: BigInt(pack) * 1_000_000n,
          price: cents(price),
          breaks: [
            { packs: BigInt(first), price: cents((price * (100 - less)) / 100) },
            { packs: BigInt(first * 2 + 1), price: cents((price * (100 - least)) / 100) },
          ],
          minPacks: 1n,
          maxPacks: null,
        };
      });
    }),
  };
}
