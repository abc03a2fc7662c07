/** What is bought so that nothing goes out of date, held by its result: the workshop planned again with it received. */
import { expect, test } from "vitest";
import { type BuyingFrame, OPEN_FRAME } from "@/lib/domain/buying/buying-frame";
import { shoppingListIn } from "@/lib/domain/buying/candidates";
import { leastBasket } from "@/lib/domain/buying/least-basket";
import { problemOf } from "@/lib/domain/buying/problem-of-list";
import type { Purchase } from "@/lib/domain/buying/shopping-list";
import { plan } from "@/lib/domain/plan";
import { quantity, type Stock } from "@/lib/domain/quantity";
import type { Lot, Workshop } from "@/lib/domain/workshop";
import type { MicroUnits } from "@/lib/domain/money";
import { readWorkshopFile } from "@/lib/edge/workshop-file";
import { day } from "../helpers/notation";
import { chance, diceFrom } from "../helpers/random-dice";
import { randomWorkshop, REAL_TODAY } from "../helpers/random-workshop";

const FRAME: BuyingFrame = { ...OPEN_FRAME, mustKeep: true };

/** The workshop of a seed; most offers say how long they keep. */
function workshopOf(seed: number): Workshop {
  const dice = diceFrom(seed + 50);
  const read = readWorkshopFile(Buffer.from(JSON.stringify(randomWorkshop(seed))), day(REAL_TODAY));
  if (!("workshop" in read)) throw new Error("an invented workshop was refused");
  const shelfLifeDays = () => (chance(dice, 80) ? dice.whole(0, 40) : null);
  return {
    ...read.workshop,
    offers: read.workshop.offers.map((offer) => ({ ...offer, shelfLifeDays: shelfLifeDays() })),
  };
}

/** What the smallest packs force: the least that one candidate leaves, alone and in its fewest packs. */
function forced(workshop: Workshop, { material, wanted, candidates }: Purchase): bigint {
  const lost = candidates.map((candidate) => {
    const pack = candidate.offer.pack.quantity;
    const needed = (wanted + pack - 1n) / pack;
    const packs = needed > candidate.offer.minPacks ? needed : candidate.offer.minPacks;
    return lostWith(workshop, material.id, [{ ...candidate, bought: packs * pack }]);
  });
  return lost.reduce((a, b) => (a < b ? a : b));
}

type Received = Pick<Purchase["candidates"][number], "arrives" | "expires"> & { readonly bought: bigint };

const today = (workshop: Workshop) => workshop.settings.today ?? day(REAL_TODAY);

/** What the plan writes off of these, put on the shelf as lots that come on their day. */
function lostWith(workshop: Workshop, material: string, received: readonly Received[]): bigint {
  const from = today(workshop);
  const orders = received.map(({ arrives, expires, bought }, at) => ({
    id: `\u{10FFFE}${String(at)}`,
    supplier: workshop.suppliers[0]?.id ?? "",
    state: "ordered" as const,
    placed: from,
    due: arrives,
    lines: [
      {
        material,
        quantity: quantity<Stock>(bought),
        cost: quantity<MicroUnits>(0n),
        expires,
        offer: null,
        packs: null,
        received: quantity<Stock>(0n),
      },
    ],
  }));
  // What comes on the plan's own day is on the shelf already: an order due today would be expected on a later one.
  const isHere = (order: (typeof orders)[number]) => order.due <= from;
  const lots = orders.filter(isHere).flatMap(({ id, lines }) =>
    lines.map((line): Lot => ({
      id,
      material,
      received: from,
      expires: line.expires,
      remaining: line.quantity,
      value: line.cost,
    })),
  );
  const again = plan(
    {
      ...workshop,
      lots: [...workshop.lots, ...lots],
      orders: [...workshop.orders, ...orders.filter((order) => !isHere(order))],
    },
    from,
  );
  const outlook = again.materials.find((each) => each.material.id === material);
  return (outlook?.expiring ?? []).reduce(
    (sum, { lot, quantity: lost }) => (lot.startsWith("\u{10FFFE}") ? sum + lost : sum),
    0n,
  );
}

test("[BUY-16] planned again with the basket received, nothing bought is written off but what the smallest packs force", () => {
  let [bought, wouldBeLost, told] = [0, 0, 0];
  for (let seed = 0; seed < 150; seed += 1) {
    const workshop = workshopOf(seed);
    const planned = plan(workshop, today(workshop));
    const { list, faults } = shoppingListIn(workshop, planned, FRAME);
    told += faults.filter(({ kind }) => kind === "out of date before use").length;
    const answer = leastBasket(problemOf(workshop, list), { effort: 1_000_000 });
    if (answer.kind === "no basket") continue;
    for (const purchase of list.purchases) {
      const received = purchase.candidates.flatMap(({ offer, arrives, expires }) => {
        const packs = answer.packs.get(offer.id);
        return packs === undefined ? [] : [{ arrives, expires, bought: packs * offer.pack.quantity }];
      });
      const lost = lostWith(workshop, purchase.material.id, received);
      expect({ seed, material: purchase.material.id, isHeld: lost <= forced(workshop, purchase) }).toEqual({
        seed,
        material: purchase.material.id,
        isHeld: true,
      });
      bought += 1;
    }
    const free = shoppingListIn(workshop, planned, OPEN_FRAME).list;
    const loose = leastBasket(problemOf(workshop, free), { effort: 1_000_000 });
    if (loose.kind === "no basket") continue;
    for (const { material, candidates } of free.purchases) {
      const received = candidates.flatMap(({ offer, arrives, expires }) => {
        const packs = loose.packs.get(offer.id);
        return packs === undefined ? [] : [{ arrives, expires, bought: packs * offer.pack.quantity }];
      });
      if (lostWith(workshop, material.id, received) > 0n) wouldBeLost += 1;
    }
  }
  expect(bought).toBeGreaterThan(30);
  expect(wouldBeLost).toBeGreaterThan(10);
  expect(told).toBeGreaterThan(3);
});
