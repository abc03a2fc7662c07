/**
 * Laws of a frame that says whom and when: suppliers left out or held to, offers that alone may serve, days of arrival.
 * What it leaves to choose from is reckoned again here from the words of the rules, and every basket of that is tried.
 */
import { expect, test } from "vitest";
import { type BuyingFrame, OPEN_FRAME } from "@/lib/domain/buying/buying-frame";
import { boughtByHand } from "@/lib/domain/buying/by-hand";
import { shoppingListIn } from "@/lib/domain/buying/candidates";
import { checkedBasket } from "@/lib/domain/buying/checked-basket";
import { leastBasket } from "@/lib/domain/buying/least-basket";
import { problemOf } from "@/lib/domain/buying/problem-of-list";
import { daysAfter, isoDate } from "@/lib/domain/calendar";
import { plan } from "@/lib/domain/plan";
import { quantity } from "@/lib/domain/quantity";
import type { Workshop } from "@/lib/domain/workshop";
import { workshopOf } from "../helpers/bench";
import { day, formula, grams, inGrams, material, offer, product, run, supplier } from "../helpers/notation";
import { randomInstance } from "../helpers/random-baskets";
import { chance, type Dice, diceFrom, pick } from "../helpers/random-dice";
import { cheapestCost, type Instance } from "../second/cheapest-basket";

const SEEDS = 200;
const EFFORT = 3_000_000;
const TODAY = day("2026-11-25");

interface Bench {
  readonly instance: Instance;
  readonly workshop: Workshop;
  /** Days from today until a supplier's order comes, and until a material's only run. */
  readonly leads: ReadonlyMap<string, number>;
  readonly runs: ReadonlyMap<string, number>;
}

/** Nothing is on the shelf; one run needs each material, on a day of its own. */
function randomBench(dice: Dice): Bench {
  const instance = randomInstance(dice, { materials: 3, suppliers: 3, offersEach: 3, packsEach: 3 });
  const leads = new Map(instance.suppliers.map(({ id }) => [id, dice.whole(0, 12)]));
  const runs = new Map(instance.materials.map(({ id }) => [id, dice.whole(0, 14)]));
  const workshop = workshopOf({
    suppliers: instance.suppliers.map(({ id, shipping, freeFrom, minimum }) =>
      supplier(id, {
        leadDays: leads.get(id) ?? 0,
        leadCounts: "calendar",
        shipping: quantity(shipping),
        shippingFreeFrom: freeFrom === null ? null : quantity(freeFrom),
        minimumOrder: minimum === null ? null : quantity(minimum),
      }),
    ),
    materials: instance.materials.map(({ id }) => material(id)),
    offers: instance.offers.map((each) =>
      offer(each.id, each.material, inGrams(each.pack), "1", {
        supplier: each.supplier,
        price: quantity(each.price),
        breaks: each.breaks.map(({ packs, price }) => ({ packs: quantity(packs), price: quantity(price) })),
        minPacks: quantity(each.minPacks),
      }),
    ),
    formulas: instance.materials.map(({ id }) => formula(`f-${id}`, { [id]: "100" })),
    products: instance.materials.map(({ id, need }) => product(`p-${id}`, `f-${id}`, { fill: grams(inGrams(need)) })),
    runs: instance.materials.map(({ id }) =>
      run(`r-${id}`, `p-${id}`, isoDate(daysAfter(TODAY, runs.get(id) ?? 0)), 1),
    ),
  });
  return { instance, workshop, leads, runs };
}

function randomFrame(dice: Dice, { suppliers, offers, materials }: Instance): BuyingFrame {
  const some = (percent: number) => suppliers.filter(() => chance(dice, percent)).map(({ id }) => id);
  const pinned = materials.flatMap(({ id }) => {
    const own = offers.filter((each) => each.material === id);
    return chance(dice, 35) ? [pick(dice, own).id] : [];
  });
  return {
    ...OPEN_FRAME,
    cover: { kind: "horizon" },
    arrival: pick(dice, ["by the rules", "in time", "any day"]),
    leftOut: new Set(some(20)),
    heldTo: new Set(some(30)),
    chosen: new Set(pinned),
  };
}

/** Of one material's offers those that may serve; none where nobody may or nobody can. @rule BUY-1, BUY-10 */
function allowed({ instance, leads, runs }: Bench, materialId: string, frame: BuyingFrame): Instance["offers"] {
  const comes = (each: { readonly supplier: string }) => leads.get(each.supplier) ?? 0;
  const kept = instance.offers.filter((each) => each.material === materialId && !frame.leftOut.has(each.supplier));
  const alone = kept.filter(({ id }) => frame.chosen.has(id));
  const held = kept.filter((each) => frame.heldTo.has(each.supplier));
  const asked = alone.length > 0 ? alone : held.length > 0 ? held : kept;
  // It is lacking from its run on, and can be helped from the first day on which anything of it can come.
  const wantedOn = Math.max(runs.get(materialId) ?? 0, Math.min(...kept.map(comes)));
  const punctual = asked.filter((each) => comes(each) <= wantedOn);
  if (frame.arrival === "any day") return asked;
  if (frame.arrival === "in time" || punctual.length > 0) return punctual;
  return asked.filter((each) => comes(each) === Math.min(...asked.map(comes)));
}

test("[BUY-5] [BUY-7] [BUY-10] whoever is left out, held to or alone: what trying everything finds, proven, never above by hand", () => {
  const seen = { pinned: 0, dearer: 0, kept: 0, dropped: 0, cheaper: 0 };
  for (let seed = 0; seed < SEEDS; seed += 1) {
    const dice = diceFrom(seed + 70_000);
    const bench = randomBench(dice);
    const frame = randomFrame(dice, bench.instance);
    const offers = bench.instance.materials.flatMap(({ id }) => allowed(bench, id, frame));
    const served = bench.instance.materials.filter(({ id }) => offers.some((each) => each.material === id));
    const instance: Instance = { ...bench.instance, materials: served, offers };

    const { list, faults } = shoppingListIn(bench.workshop, plan(bench.workshop, TODAY), frame);
    const problem = problemOf(bench.workshop, list);
    const answer = leastBasket(problem, { effort: EFFORT });
    if (answer.kind !== "basket") throw new Error("without a limit on packs there is always a basket");
    expect({ seed, offers: problem.offers.map(({ id }) => id) }).toEqual({
      seed,
      offers: offers.map(({ id }) => id).sort(),
    });
    expect({ seed, total: answer.basket.total, gap: answer.gap }).toEqual({
      seed,
      total: cheapestCost(instance),
      gap: null,
    });
    const told = faults.filter((fault) => "material" in fault).length;
    expect({ seed, told }).toEqual({ seed, told: bench.instance.materials.length - served.length });

    const byHand = boughtByHand(problem);
    const checked = byHand && checkedBasket(problem, byHand);
    if (checked?.kind !== "holds") throw new Error("by hand breaks a rule");
    expect(answer.basket.total <= checked.basket.total).toBe(true);

    const open = shoppingListIn(bench.workshop, plan(bench.workshop, TODAY), { ...OPEN_FRAME, cover: frame.cover });
    const free = leastBasket(problemOf(bench.workshop, open.list), { effort: EFFORT });
    if (frame.chosen.size > 0) seen.pinned += 1;
    if (told > 0) seen.dropped += 1;
    else if (free.kind === "basket" && free.basket.total < answer.basket.total) seen.dearer += 1;
    if (answer.basket.total < checked.basket.total) seen.cheaper += 1;
    if (told === 0) seen.kept += 1;
  }
  // The dice throw every kind of frame often enough for the comparison to mean something.
  expect(seen.pinned).toBeGreaterThan(SEEDS / 4);
  expect(seen.dearer).toBeGreaterThan(SEEDS / 10);
  expect(seen.kept).toBeGreaterThan(SEEDS / 3);
  expect(seen.dropped).toBeGreaterThan(SEEDS / 20);
  expect(seen.cheaper).toBeGreaterThan(SEEDS / 10);
});
