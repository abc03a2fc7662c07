/** Laws of the least-cost basket, on invented problems that are small enough to try everything on. */
import { describe, expect, test } from "vitest";
import { boughtByHand } from "@/lib/domain/buying/by-hand";
import { checkedBasket } from "@/lib/domain/buying/checked-basket";
import { componentsOf } from "@/lib/domain/buying/components";
import { withoutDominated } from "@/lib/domain/buying/dominated-offers";
import { leastBasket } from "@/lib/domain/buying/least-basket";
import { basketIn, firstReports } from "../agreement/agreement";
import { type BasketSize, problemOfInstance, randomInstance } from "../helpers/random-baskets";
import { chance, type Dice, diceFrom, pick, shuffled } from "../helpers/random-dice";
import { randomWorkshop } from "../helpers/random-workshop";
import { cheapestCost, type Instance } from "../second/cheapest-basket";

const EFFORT = 3_000_000;

const SIZES: readonly (BasketSize & { readonly seeds: number })[] = [
  { materials: 3, suppliers: 3, offersEach: 3, packsEach: 3, seeds: 250 },
  { materials: 2, suppliers: 2, offersEach: 4, packsEach: 5, seeds: 100 },
  { materials: 5, suppliers: 4, offersEach: 2, packsEach: 2, seeds: 100 },
  { materials: 3, suppliers: 3, offersEach: 3, packsEach: 3, withMostPacks: true, seeds: 100 },
];

describe.each(SIZES)("$seeds problems of up to $materials materials and $offersEach offers each", (size) => {
  test("[BUY-2, BUY-3, BUY-5] the basket costs what trying everything finds, and is proven", () => {
    for (let seed = 0; seed < size.seeds; seed += 1) {
      const instance = randomInstance(diceFrom(seed * 7 + size.materials), size);
      const least = cheapestCost(instance);
      const answer = leastBasket(problemOfInstance(instance), { effort: EFFORT });
      const total = answer.kind === "basket" ? answer.basket.total : null;
      expect({ seed, total, gap: answer.kind === "basket" ? answer.gap : null }).toEqual({
        seed,
        total: least,
        gap: null,
      });
      if (answer.kind === "no basket") expect(answer.isProven).toBe(true);
    }
  });
});

test("[BUY-7] no basket costs more than the one by hand", () => {
  let cheaper = 0;
  for (let seed = 0; seed < 200; seed += 1) {
    const size = { materials: 8, suppliers: 4, offersEach: 4, packsEach: 9 };
    const problem = problemOfInstance(randomInstance(diceFrom(seed), size));
    const byHand = boughtByHand(problem);
    if (byHand === null) throw new Error("without a limit on packs there is always a basket by hand");
    const checked = checkedBasket(problem, byHand);
    const answer = leastBasket(problem, { effort: 100_000 });
    if (checked.kind !== "holds" || answer.kind !== "basket") throw new Error("a basket broke a rule");
    expect(answer.basket.total <= checked.basket.total).toBe(true);
    if (answer.basket.total < checked.basket.total) cheaper += 1;
  }
  expect(cheaper).toBeGreaterThan(50);
});

test("[BUY-8] leaving offers out that another replaces, and parting the problem, never changes what a basket costs", () => {
  let [fewer, several] = [0, 0];
  for (let seed = 0; seed < 200; seed += 1) {
    const instance = withLikeOffers(randomInstance(diceFrom(seed + 5000), SMALL), diceFrom(seed));
    const problem = problemOfInstance(instance);
    const kept = withoutDominated(problem);
    const ids = new Set(kept.offers.map(({ id }) => id));
    const least = cheapestCost(instance);
    const reduced = { ...instance, offers: instance.offers.filter(({ id }) => ids.has(id)) };
    expect({ seed, cost: cheapestCost(reduced) }).toEqual({ seed, cost: least });
    if (reduced.offers.length < instance.offers.length) fewer += 1;

    const parts = componentsOf(problem).map(({ materials, suppliers, offers }) => ({
      materials: instance.materials.filter(({ id }) => materials.some((each) => each.id === id)),
      suppliers: instance.suppliers.filter(({ id }) => suppliers.some((each) => each.id === id)),
      offers: instance.offers.filter(({ id }) => offers.some((each) => each.id === id)),
    }));
    const costs = parts.map((part) => cheapestCost(part));
    const whole = costs.reduce((sum, cost) => (sum === null || cost === null ? null : sum + cost), 0n);
    expect({ seed, cost: whole }).toEqual({ seed, cost: least });
    if (parts.length > 1) several += 1;
  }
  expect(fewer).toBeGreaterThan(20);
  expect(several).toBeGreaterThan(20);
});

const SMALL: BasketSize = { materials: 2, suppliers: 3, offersEach: 2, packsEach: 2 };

/** Each offer once more, a little better or worse, from any supplier; and suppliers without thresholds more often. */
function withLikeOffers(instance: Instance, dice: Dice): Instance {
  const suppliers = instance.suppliers.map((supplier) =>
    chance(dice, 60)
      ? { ...supplier, shipping: chance(dice, 50) ? 0n : supplier.shipping, freeFrom: null, minimum: null }
      : supplier,
  );
  const likes = instance.offers.map((offer) => ({
    ...offer,
    id: `${offer.id}-like`,
    supplier: chance(dice, 60) ? offer.supplier : pick(dice, suppliers).id,
    pack: offer.pack + BigInt(dice.whole(0, 1)),
    price: chance(dice, 70) ? offer.price : offer.price + 10_000n,
    minPacks: chance(dice, 80) ? offer.minPacks : 2n,
  }));
  return { ...instance, suppliers, offers: [...instance.offers, ...likes] };
}

test("[BUY-6] the order of a file does not choose among baskets that cost the same", () => {
  let bought = 0;
  for (let seed = 0; seed < 60; seed += 1) {
    const file = randomWorkshop(seed);
    const dice = diceFrom(seed + 77);
    const mixed = {
      ...file,
      suppliers: shuffled(dice, file.suppliers),
      offers: shuffled(dice, file.offers),
      materials: shuffled(dice, file.materials),
    };
    const [one, other] = [file, mixed].map((each) => basketIn(firstReports(each).replacement).orders);
    expect(other).toEqual(one);
    bought += one?.length ?? 0;
  }
  expect(bought).toBeGreaterThan(30);
});
