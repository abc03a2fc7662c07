/** Figures worked by hand from the rules; no published source. */
import { expect, test } from "vitest";
import { differenceOf, deciderOf, withoutOffer } from "@/lib/domain/buying/basket-difference";
import { plannedBasket, type PlannedBasket } from "@/lib/domain/buying/basket-of-plan";
import type { BasketProblem } from "@/lib/domain/buying/basket-problem";
import { shoppingListOf } from "@/lib/domain/buying/candidates";
import type { ShoppingList } from "@/lib/domain/buying/shopping-list";
import { type BuyingFrame, framed, heldToTime } from "@/lib/domain/buying/frame";
import { leastBasket } from "@/lib/domain/buying/least-basket";
import { problemOf } from "@/lib/domain/buying/problem-of-list";
import { isoDate } from "@/lib/domain/calendar";
import { plan } from "@/lib/domain/plan";
import type { Workshop } from "@/lib/domain/workshop";
import { workshopOf } from "@/tests/helpers/bench";
import { day, formula, inGrams, lot, material, money, offer, product, run, supplier } from "@/tests/helpers/notation";

const today = day("2026-11-25");
const asSet: BuyingFrame = { cover: "as set", leftOut: [], mustBeInTime: false };

/** Runs of 1, 2 and 4 units, 100 g of A each, on 1, 10 and 25 December; 50 g are here. One working day to get more. */
const workshop: Workshop = workshopOf({
  suppliers: [supplier("near"), supplier("far")],
  materials: [material("A")],
  offers: [offer("a", "A", "100", "3", { supplier: "near" }), offer("big", "A", "1000", "9", { supplier: "far" })],
  lots: [lot("L", "A", "50", "1")],
  formulas: [formula("f", { A: "100" })],
  products: [product("p", "f")],
  runs: [run("r1", "p", "2026-12-01", 1), run("r2", "p", "2026-12-10", 2), run("r3", "p", "2026-12-25", 4)],
});

const listIn = (frame: BuyingFrame, of: Workshop = workshop): ShoppingList => {
  const inFrame = framed(of, frame);
  return shoppingListOf(inFrame, plan(inFrame, today));
};
const wantedIn = (frame: BuyingFrame): readonly string[] =>
  listIn(frame).purchases.map(
    ({ wanted, candidates }) => `${inGrams(wanted)} from ${candidates.map(({ offer: { id } }) => id).join(" ")}`,
  );

test.each([
  // 700 g for all three, less the 50 g that are here
  { cover: null, wanted: "650 from a big" },
  // Ordered today it comes on Thursday 26 November; seven days of cover reach the run of 1 December alone
  { cover: 7, wanted: "50 from a big" },
  // Twenty days reach the run of 10 December too
  { cover: 20, wanted: "250 from a big" },
] as const)("[BUY-15] $cover days of cover ask for $wanted", ({ cover, wanted }) => {
  expect(wantedIn({ ...asSet, cover })).toEqual([wanted]);
});

test("[BUY-15] a frame as the workshop is set leaves it as it is, and no frame changes the workshop itself", () => {
  expect(framed(workshop, asSet)).toBe(workshop);
  const before = JSON.stringify(workshop.offers, (_, value: unknown) =>
    typeof value === "bigint" ? `${value}` : value,
  );
  framed(workshop, { cover: 7, leftOut: ["far"], mustBeInTime: true });
  expect(JSON.stringify(workshop.offers, (_, value: unknown) => (typeof value === "bigint" ? `${value}` : value))).toBe(
    before,
  );
});

test("[BUY-16] a supplier that is left out offers nothing; what only it offers nobody does", () => {
  expect(wantedIn({ ...asSet, leftOut: ["far"] })).toEqual(["650 from a"]);
  const none = listIn({ ...asSet, leftOut: ["far", "near"] });
  expect([none.purchases.length, none.unsourced.map(({ id }) => id)]).toEqual([0, ["A"]]);
});

test("[BUY-17] what cannot come in time is not bought, and is told with the days by which it is late", () => {
  // Three safety days before Tuesday 1 December is Saturday 28 November; four working days from Wednesday: 1 December
  const slow: Workshop = {
    ...workshop,
    suppliers: [supplier("near", { leadDays: 4 }), supplier("far", { leadDays: 4 })],
    materials: [material("A", { safetyDays: 3 })],
  };
  const { list, tooLate } = heldToTime(listIn(asSet, slow));
  expect(list.purchases).toEqual([]);
  expect(
    tooLate.map(
      ({ material: { id }, buyBy, arrives, days }) => `${id} ${isoDate(buyBy)} ${isoDate(arrives)} ${String(days)}`,
    ),
  ).toEqual(["A 2026-11-28 2026-12-01 3"]);
  const punctual = heldToTime(listIn(asSet));
  expect([punctual.list.purchases.length, punctual.tooLate.length]).toEqual([1, 0]);
});

const basketFor = (of: Workshop, problem: (list: ShoppingList) => BasketProblem | null): PlannedBasket => {
  const list = listIn(asSet, of);
  const wanted = problem(list);
  const answer = wanted && leastBasket(wanted, { effort: 100_000 });
  if (answer?.kind !== "basket") throw new Error("no basket");
  return plannedBasket(of, list, answer);
};

interface Deciding {
  readonly decider: string;
  readonly of: Workshop;
  readonly line: string;
  readonly more: string;
}

const withSuppliers = (
  near: Parameters<typeof supplier>[1],
  far: Parameters<typeof supplier>[1],
  offers = workshop.offers,
): Workshop => ({
  ...workshop,
  suppliers: [supplier("near", near), supplier("far", far)],
  offers,
});
const breaksAt7 = offer("a", "A", "100", "3", {
  supplier: "near",
  breaks: [{ packs: 7n as never, price: money("1") }],
});

test.each<Deciding>([
  // 650 g: 1 × 1 kg at 9, or 7 × 100 g at 3 = 21
  { decider: "price", of: workshop, line: "big", more: "12" },
  // 7 × 100 g at 1 = 7 from seven packs on, or 9: without the break 21 would lose
  { decider: "price break", of: withSuppliers({}, {}, [breaksAt7, ...workshop.offers.slice(1)]), line: "a", more: "2" },
  // 9 and nothing for delivery, or 7 and 5 for delivery
  {
    decider: "delivery",
    of: withSuppliers({ shipping: money("5") }, {}, [breaksAt7, ...workshop.offers.slice(1)]),
    line: "big",
    more: "3",
  },
])("[BUY-18] $decider decides for $line by $more", ({ decider, of, line: id, more }) => {
  const chosen = basketFor(of, (list) => problemOf(of, list));
  const other = basketFor(of, (list) => withoutOffer(problemOf(of, list), id));
  const line = chosen.orders.flatMap(({ lines }) => lines).find(({ offer: { id: taken } }) => taken === id);
  if (line === undefined) throw new Error(`${id} was not taken`);
  const difference = differenceOf(chosen, other);
  expect([deciderOf(line, difference), difference.more]).toEqual([decider, money(more)]);
  const parts = difference.materials.reduce<bigint>((sum, each) => sum + each.more, difference.moreDelivery);
  expect(parts).toBe(difference.more);
});

test("[BUY-18] where nothing else serves a material there is no next best", () => {
  const problem = problemOf(workshop, listIn({ ...asSet, leftOut: ["far"] }));
  expect(withoutOffer(problem, "a")).toBeNull();
});
