/** Laws of the least-cost basket in a frame: leftovers that are worth something, a cap, and packs that must keep. */
import { expect, test } from "vitest";
import type { BasketProblem } from "@/lib/domain/buying/basket-problem";
import { checkedBasket } from "@/lib/domain/buying/checked-basket";
import { goneOutOfDate } from "@/lib/domain/buying/gone-out-of-date";
import { type Keeping, lostOf } from "@/lib/domain/buying/keeping";
import { countedCost, leastBasket } from "@/lib/domain/buying/least-basket";
import { type Day, daysAfter } from "@/lib/domain/calendar";
import type { MicroUnits } from "@/lib/domain/money";
import { quantity, type Stock } from "@/lib/domain/quantity";
import { type BasketSize, problemOfInstance, randomInstance } from "../helpers/random-baskets";
import { chance, type Dice, diceFrom, pick, several } from "../helpers/random-dice";
import { cheapestCost, type Instance } from "../second/cheapest-basket";

const EFFORT = 3_000_000;
const SMALL: BasketSize = { materials: 3, suppliers: 3, offersEach: 3, packsEach: 3 };
const TODAY = 20_000 as Day;

const stock = (value: bigint) => quantity<Stock>(value);

/** Leftovers of most materials are worth something: now and then much, so that more is bought for them. */
function withWorth(instance: Instance, dice: Dice): Instance {
  const materials = instance.materials.map((material) => {
    if (chance(dice, 20)) return material;
    const step = material.need / BigInt(dice.whole(2, 6)) + 1n;
    return {
      ...material,
      leftOver: { step, worth: BigInt(dice.whole(1, 60)) * 100_000n, most: BigInt(dice.whole(1, 3)) },
    };
  });
  return { ...instance, materials };
}

function problemWithWorth(instance: Instance, cap: bigint | null): BasketProblem {
  const problem = problemOfInstance(instance);
  return {
    ...problem,
    cap: cap === null ? null : quantity<MicroUnits>(cap),
    materials: problem.materials.map((material, at) => {
      const leftOver = instance.materials[at]?.leftOver;
      if (!leftOver) return material;
      const { step, worth, most } = leftOver;
      return { ...material, leftOver: { step: stock(step), worth: quantity<MicroUnits>(worth), most } };
    }),
  };
}

test("[BUY-17] with leftovers that are worth something the basket counts for what trying everything finds, proven", () => {
  let others = 0;
  for (let seed = 0; seed < 300; seed += 1) {
    const instance = withWorth(randomInstance(diceFrom(seed + 9000), SMALL), diceFrom(seed));
    const problem = problemWithWorth(instance, null);
    const answer = leastBasket(problem, { effort: EFFORT });
    if (answer.kind !== "basket") throw new Error("no basket");
    expect({ seed, counted: countedCost(answer.basket), gap: answer.gap }).toEqual({
      seed,
      counted: cheapestCost(instance),
      gap: null,
    });
    const bare = leastBasket(problemOfInstance(instance), { effort: EFFORT });
    if (bare.kind === "basket" && bare.basket.total < answer.basket.total) others += 1;
  }
  expect(others).toBeGreaterThan(50);
});

test("[BUY-17] within a cap the basket is the least that trying everything finds, proven; above, the least cash", () => {
  let [bound, proven, above] = [0, 0, 0];
  for (let seed = 0; seed < 150; seed += 1) {
    const dice = diceFrom(seed + 31);
    const instance = withWorth(randomInstance(diceFrom(seed + 9000), SMALL), diceFrom(seed));
    const free = leastBasket(problemWithWorth(instance, null), { effort: EFFORT });
    const least = cheapestCost({ ...instance, materials: instance.materials.map(({ id, need }) => ({ id, need })) });
    if (free.kind !== "basket" || least === null) throw new Error("no basket");
    const cap =
      least + ((free.basket.total - least) * BigInt(dice.whole(0, 100))) / 100n - (chance(dice, 30) ? 1n : 0n);
    const answer = leastBasket(problemWithWorth(instance, cap), { effort: EFFORT });
    if (answer.kind !== "basket") throw new Error("no basket");
    if (cap < least) {
      above += 1;
      expect({ seed, cash: answer.basket.total }).toEqual({ seed, cash: least });
      continue;
    }
    const best = cheapestCost(instance, cap) ?? 0n;
    const counted = countedCost(answer.basket);
    const isTold = counted - (answer.gap ?? 0n) <= best && counted >= best;
    expect({ seed, isTold, isWithin: answer.basket.total <= cap }).toEqual({ seed, isTold: true, isWithin: true });
    if (free.basket.total > cap) bound += 1;
    if (free.basket.total > cap && answer.gap === null) proven += 1;
  }
  expect(bound).toBeGreaterThan(20);
  expect(proven).toBe(bound);
  expect(above).toBeGreaterThan(10);
});

/** A shelf of one material and runs on it; offers come on several days and keep for several times. */
function randomKeeping(dice: Dice, need: bigint): Omit<Keeping, "mostLost"> {
  const lastDay = daysAfter(TODAY, dice.whole(5, 20));
  const dayFrom = (least: number) => daysAfter(TODAY, dice.whole(least, 20));
  return {
    today: TODAY,
    lastDay,
    lots: several(dice.whole(0, 3), (at) => {
      const comes = chance(dice, 40) ? dayFrom(1) : null;
      return {
        id: `L${String(at)}`,
        comes,
        received: comes ?? daysAfter(TODAY, -dice.whole(0, 3)),
        expires: chance(dice, 70) ? dayFrom(0) : null,
        quantity: stock(need / BigInt(dice.whole(2, 5)) + 1n),
      };
    }),
    draws: several(dice.whole(1, 4), () => ({ day: dayFrom(0), need: stock(need / BigInt(dice.whole(1, 4)) + 1n) }))
      .filter(({ day }) => day <= lastDay)
      .sort((a, b) => a.day - b.day),
  };
}

const randomKeeps = (dice: Dice) => {
  const arrives = daysAfter(TODAY, dice.whole(0, 6));
  return { arrives, expires: chance(dice, 75) ? daysAfter(arrives, dice.whole(0, 15)) : null };
};

test("[BUY-16] what goes out of date is the same day by day as by the projection, and never less where more is bought", () => {
  let lostAny = 0;
  for (let seed = 0; seed < 1_500; seed += 1) {
    const dice = diceFrom(seed + 400);
    const keeping = { ...randomKeeping(dice, 1000n), mostLost: stock(0n) };
    const bought = several(dice.whole(1, 3), () => ({
      keeps: randomKeeps(dice),
      pack: stock(BigInt(dice.whole(50, 600))),
      packs: BigInt(dice.whole(1, 4)),
    }));
    const lost = (lots: typeof bought) =>
      lostOf(
        keeping,
        lots.map(({ keeps, pack, packs }) => ({ ...keeps, quantity: stock(pack * packs) })),
      );
    expect({ seed, lost: goneOutOfDate(keeping, bought) }).toEqual({ seed, lost: lost(bought) });
    const more = bought.map((each, at) => (at === 0 ? { ...each, packs: each.packs + 1n } : each));
    expect(lost(more) >= lost(bought)).toBe(true);
    if (lost(bought) > 0n) lostAny += 1;
  }
  expect(lostAny).toBeGreaterThan(300);
});

test("[BUY-16] where packs must keep, the basket costs what trying everything finds, proven", () => {
  let [dearer, none] = [0, 0];
  for (let seed = 0; seed < 300; seed += 1) {
    const dice = diceFrom(seed + 77);
    const { instance, problem } = mustKeep(randomInstance(diceFrom(seed + 12_000), SMALL), dice);
    const answer = leastBasket(problem, { effort: EFFORT });
    const total = answer.kind === "basket" ? answer.basket.total : null;
    expect({ seed, total, gap: answer.kind === "basket" ? answer.gap : null }).toEqual({
      seed,
      total: cheapestCost(instance),
      gap: null,
    });
    if (answer.kind === "no basket") expect(answer.isProven).toBe(true);
    if (total === null) none += 1;
    const free = leastBasket(
      { ...problem, materials: problem.materials.map(({ id, wanted }) => ({ id, wanted })) },
      { effort: EFFORT },
    );
    if (free.kind === "basket" && total !== null && free.basket.total < total) dearer += 1;
  }
  expect(dearer).toBeGreaterThan(30);
  expect(none).toBeGreaterThan(3);
});

/** The problem with shelves and runs of its own, and the same for trying everything, by the day-by-day reckoning. */
function mustKeep(bare: Instance, dice: Dice): { readonly instance: Instance; readonly problem: BasketProblem } {
  const keepsByOffer = new Map(bare.offers.map(({ id }) => [id, randomKeeps(dice)]));
  const shelves = bare.materials.map(({ need }) => ({
    ...randomKeeping(dice, need),
    mostLost: stock(pick(dice, [0n, 0n, need / 3n, need])),
  }));
  const problem = problemOfInstance(bare);
  const materials = bare.materials.map((material, at) => {
    const own = problem.offers.filter((offer) => offer.material === material.id);
    const shelf = shelves[at];
    const mayBuy = (packs: readonly bigint[]) =>
      shelf === undefined ||
      goneOutOfDate(
        shelf,
        own.map((offer, place) => ({ ...offer, ...keepsOf(keepsByOffer, offer.id), packs: packs[place] ?? 0n })),
      ) <= shelf.mostLost;
    return { ...material, mayBuy };
  });
  return {
    instance: { ...bare, materials },
    problem: {
      ...problem,
      materials: problem.materials.map((material, at) => ({ ...material, keeping: shelves[at] ?? null })),
      offers: problem.offers.map((offer) => ({ ...offer, ...keepsOf(keepsByOffer, offer.id) })),
    },
  };
}

function keepsOf(keepsByOffer: ReadonlyMap<string, ReturnType<typeof randomKeeps>>, offer: string) {
  const keeps = keepsByOffer.get(offer);
  return keeps === undefined ? {} : { keeps };
}

test("[BUY-4, BUY-16] a basket of which too much goes out of date is not let through", () => {
  const { problem } = mustKeep(randomInstance(diceFrom(5), { ...SMALL, materials: 1, offersEach: 1 }), diceFrom(5));
  const [material] = problem.materials;
  const [offer] = problem.offers;
  if (!material || !offer) throw new Error("nothing to buy");
  const nothingDrawn = { today: TODAY, lastDay: daysAfter(TODAY, 9), lots: [], draws: [], mostLost: stock(7n) };
  const checked = checkedBasket(
    {
      ...problem,
      suppliers: problem.suppliers.map((supplier) => ({ ...supplier, minimumOrder: null })),
      materials: [{ id: material.id, wanted: stock(1n), keeping: nothingDrawn }],
      offers: [
        {
          ...offer,
          minPacks: quantity(1n),
          pack: stock(100n),
          keeps: { arrives: TODAY, expires: daysAfter(TODAY, 2) },
        },
      ],
    },
    new Map([[offer.id, 1n]]),
  );
  expect(checked).toEqual({ kind: "broken", faults: [{ kind: "goes out of date", material: material.id, by: 93n }] });
});
