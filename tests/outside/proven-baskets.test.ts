/**
 * Twenty invented buying problems of 10 and 40 materials whose least costs two or three solvers proved independently of
 * each other (each file names them). No publication: they are held here because nothing of this project had a part in
 * the figures.
 */
import { describe, expect, test } from "vitest";
import { boughtByHand } from "@/lib/domain/buying/by-hand";
import { checkedBasket } from "@/lib/domain/buying/checked-basket";
import { leastBasket } from "@/lib/domain/buying/least-basket";
import { cents, PROVEN_BASKETS } from "../helpers/proven-baskets";

test("there are twenty, proven by two solvers or more", () => {
  expect(PROVEN_BASKETS).toHaveLength(20);
  expect(PROVEN_BASKETS.filter(({ proven }) => proven.provenBy.length < 2)).toEqual([]);
});

describe.each(PROVEN_BASKETS)("$file", ({ proven, problem }) => {
  test("[BUY-4, BUY-5] costs the least that is known, and is proven to", () => {
    const answer = leastBasket(problem, { effort: 100_000_000 });
    if (answer.kind !== "basket") throw new Error("no basket was found");
    expect(answer.basket.total).toBe(cents(proven.leastCost));
    expect(answer.gap).toBeNull();
  });

  test("[BUY-7] costs less than the lowest unit price of each material", () => {
    const byHand = boughtByHand(problem);
    const checked = byHand && checkedBasket(problem, byHand);
    if (checked?.kind !== "holds") throw new Error("the basket by hand broke a rule");
    expect(checked.basket.total >= cents(proven.leastCost)).toBe(true);
    expect(proven.lowestUnitPriceCost).toBeGreaterThanOrEqual(proven.leastCost);
  });
});
