/** Packs held to every rule and costed; and figures too large to be searched. */
import { describe, expect, test } from "vitest";
import type { BasketProblem } from "@/lib/domain/buying/basket-problem";
import { type BasketFault, checkedBasket } from "@/lib/domain/buying/checked-basket";
import { leastBasket } from "@/lib/domain/buying/least-basket";
import { LARGEST_FIGURE } from "@/lib/domain/quantity";
import { problemOfInstance } from "../helpers/random-baskets";

const COIN = 1_000_000n;

/** 10 of A; o1: packs of 3 at 5.00, from four on 4.00; o2: packs of 10 at 9.00, two at the least, five at the most. */
const problem: BasketProblem = problemOfInstance({
  materials: [{ id: "A", need: 10n }],
  suppliers: [
    { id: "s", shipping: 2n * COIN, freeFrom: 20n * COIN, minimum: 12n * COIN },
    { id: "t", shipping: 3n * COIN, freeFrom: null, minimum: 30n * COIN },
  ],
  offers: [
    {
      id: "o1",
      material: "A",
      supplier: "s",
      pack: 3n,
      price: 5n * COIN,
      breaks: [{ packs: 4n, price: 4n * COIN }],
      minPacks: 1n,
      maxPacks: null,
    },
    { id: "o2", material: "A", supplier: "t", pack: 10n, price: 9n * COIN, breaks: [], minPacks: 2n, maxPacks: 5n },
  ],
});

const checked = (packs: Readonly<Record<string, bigint>>) => checkedBasket(problem, new Map(Object.entries(packs)));

describe("[BUY-2, BUY-3] packs that keep every rule", () => {
  test.each([
    { says: "the break's price for every pack", packs: { o1: 4n }, total: 18n, shipping: [2n], left: 2n },
    { says: "free shipping from 20.00, reached", packs: { o1: 5n }, total: 20n, shipping: [0n], left: 5n },
    { says: "shipping for each supplier", packs: { o1: 4n, o2: 4n }, total: 18n + 39n, shipping: [2n, 3n], left: 42n },
  ])("$says", ({ packs, total, shipping, left }) => {
    const outcome = checked(packs);
    if (outcome.kind !== "holds") throw new Error("the packs broke a rule");
    expect(outcome.basket.total).toBe(total * COIN);
    expect(outcome.basket.orders.map((order) => order.shipping / COIN)).toEqual(shipping);
    expect(outcome.basket.leftOver.get("A")).toBe(left);
  });
});

describe("[BUY-4] packs that break one are told, with the figures", () => {
  test.each<{ packs: Record<string, bigint>; faults: readonly BasketFault[] }>([
    {
      packs: { o1: 3n },
      faults: [{ kind: "material short", material: "A", by: 1n }],
    },
    {
      packs: { o1: 2n },
      faults: [
        { kind: "material short", material: "A", by: 4n },
        { kind: "below minimum order", supplier: "s", by: 2n * COIN },
      ],
    },
    {
      packs: { o2: 1n },
      faults: [
        { kind: "packs below the least", offer: "o2", packs: 1n, least: 2n },
        { kind: "below minimum order", supplier: "t", by: 21n * COIN },
      ],
    },
    { packs: { o2: 6n }, faults: [{ kind: "packs above the most", offer: "o2", packs: 6n, most: 5n }] },
    { packs: { o1: 4n, gone: 1n }, faults: [{ kind: "no such offer", offer: "gone" }] },
  ])("$packs", ({ packs, faults }) => {
    expect(checked(packs)).toEqual({ kind: "broken", faults });
  });
});

test("[BUY-5] figures beyond what is searched exactly: the basket by hand stands, and nothing is called proven", () => {
  const price = LARGEST_FIGURE / 4n;
  const offers = ["o1", "o2"].map((id, at) => ({
    id,
    material: "A",
    supplier: "s",
    pack: 1n + BigInt(at),
    price: price - BigInt(at),
    breaks: [],
    minPacks: 1n,
    maxPacks: null,
  }));
  const large = problemOfInstance({
    materials: [{ id: "A", need: 3n }],
    suppliers: [{ id: "s", shipping: 1n, freeFrom: null, minimum: null }],
    offers,
  });
  const answer = leastBasket(large, { effort: 100_000 });
  if (answer.kind !== "basket") throw new Error("no basket");
  expect(answer.packs).toEqual(new Map([["o2", 2n]]));
  expect(answer.basket.total).toBe(2n * (price - 1n) + 1n);
  expect(answer.gap).toBe(answer.basket.total);
});

test("[BUY-5] packs of a microgram by the thousand million end in good time, proven or with a gap", () => {
  const need = 4_000_000_000n;
  const offers = ["o1", "o2", "o3"].map((id, at) => ({
    id,
    material: at === 2 ? "B" : "A",
    supplier: at === 0 ? "t" : "s",
    pack: BigInt(1 + (at % 2) * 6),
    price: BigInt(3 + at * 16),
    breaks: [],
    minPacks: 1n,
    maxPacks: null,
  }));
  const fine = problemOfInstance({
    materials: ["A", "B"].map((id) => ({ id, need })),
    suppliers: [
      { id: "s", shipping: 7n * COIN, freeFrom: need * 60n, minimum: need * 20n },
      { id: "t", shipping: 3n * COIN, freeFrom: need * 4n, minimum: need },
    ],
    offers,
  });
  const answer = leastBasket(fine, { effort: 2_000_000 });
  if (answer.kind !== "basket") throw new Error("no basket");
  // Seven of A cost 19 at the least, one of B 35.
  expect(answer.basket.total >= need * 35n + (need * 19n) / 7n).toBe(true);
});

test("[BUY-5] a problem without materials has an empty basket, which nothing is cheaper than", () => {
  const answer = leastBasket({ materials: [], suppliers: [], offers: [] }, { effort: 1 });
  expect(answer).toMatchObject({ kind: "basket", gap: null, basket: { total: 0n, orders: [] } });
});

test("[BUY-5] what a limit on packs leaves no basket for is proven to have none", () => {
  const [, o2] = problem.offers;
  if (!o2) throw new Error("no offer");
  // Two packs at the most are 18.00, and the supplier's minimum is 30.00.
  const limited = { ...problem, offers: [{ ...o2, maxPacks: o2.minPacks }] };
  expect(leastBasket(limited, { effort: 10_000 })).toEqual({ kind: "no basket", isProven: true });
});
