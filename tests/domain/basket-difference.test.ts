/** Figures worked by hand from the rules; no published source. */
import { expect, test } from "vitest";
import { differenceOf, withoutOffer } from "@/lib/domain/buying/basket-difference";
import { plannedBasket, type PlannedBasket } from "@/lib/domain/buying/basket-of-plan";
import type { BasketProblem } from "@/lib/domain/buying/basket-problem";
import { shoppingListOf } from "@/lib/domain/buying/candidates";
import { leastBasket } from "@/lib/domain/buying/least-basket";
import { problemOf } from "@/lib/domain/buying/problem-of-list";
import { plan } from "@/lib/domain/plan";
import { workshopOf } from "@/tests/helpers/bench";
import { day, formula, material, money, offer, product, run, supplier } from "@/tests/helpers/notation";

/** A run of 10 × 100 g, half of it A and half of it B: 500 g of each are to be bought. */
const workshop = workshopOf({
  suppliers: [supplier("near", { shipping: money("5") }), supplier("far")],
  materials: [material("A"), material("B")],
  offers: [
    offer("a", "A", "100", "2", { supplier: "near" }),
    offer("big", "A", "500", "12", { supplier: "far" }),
    offer("b", "B", "500", "3", { supplier: "far" }),
  ],
  formulas: [formula("f", { A: "50", B: "50" })],
  products: [product("p", "f")],
  runs: [run("r", "p", "2026-12-01", 10)],
});
const list = shoppingListOf(workshop, plan(workshop, day("2026-11-25")));
const problem = problemOf(workshop, list);

function basketFor(wanted: BasketProblem | null): PlannedBasket {
  const answer = wanted && leastBasket(wanted, { effort: 100_000 });
  if (answer?.kind !== "basket") throw new Error("no basket");
  return plannedBasket(workshop, list, answer);
}

test("[BUY-7] [BUY-12] two baskets differ by what each material and the delivery cost more, and by nothing else", () => {
  // All from far: 12 + 3 = 15. Without its big pack: 5 × 2 + 5 for delivery, and 3 for B: 18
  const difference = differenceOf(basketFor(problem), basketFor(withoutOffer(problem, "big")));
  expect([difference.more, difference.moreDelivery]).toEqual([money("3"), money("5")]);
  expect(
    difference.materials.map(({ material: { id }, here, there, more }) => [
      id,
      here[0]?.offer.id,
      there[0]?.offer.id,
      more,
    ]),
  ).toEqual([["A", "big", "a", -money("2")]]);
});

test("[BUY-7] a basket does not differ from itself", () => {
  const basket = basketFor(problem);
  expect(differenceOf(basket, basket)).toEqual({ more: 0n, moreDelivery: 0n, materials: [] });
});

test("[BUY-12] where nothing else serves a material there is no next best", () => {
  expect(withoutOffer(problem, "b")).toBeNull();
  expect(withoutOffer(problem, "big")?.offers.map(({ id }) => id)).toEqual(["a", "b"]);
});
