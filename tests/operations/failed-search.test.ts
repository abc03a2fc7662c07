/** What a maker sees where the search fails altogether, is ended, or runs out of time. */
import { createElement } from "react";
import { renderToStaticMarkup } from "react-dom/server";
import { beforeEach, expect, test, vi } from "vitest";
import { BuyingFinding } from "@/app/buying/_parts/buying-finding";
import type { BuyingView } from "@/app/buying/_parts/buying-view";
import { deliveryFrom } from "@/lib/domain/arrivals";
import type { PacksByOffer } from "@/lib/domain/buying/basket-problem";
import { OPEN_FRAME } from "@/lib/domain/buying/buying-frame";
import { shoppingListOf } from "@/lib/domain/buying/candidates";
import { checkedBasket } from "@/lib/domain/buying/checked-basket";
import { problemOf } from "@/lib/domain/buying/problem-of-list";
import type { MicroUnits } from "@/lib/domain/money";
import { byId } from "@/lib/domain/index-by-id";
import { plan } from "@/lib/domain/plan";
import { quantity } from "@/lib/domain/quantity";
import { readFrame } from "@/lib/edge/forms/buying-frame";
import { type BasketInFrame, basketInFrame } from "@/lib/operations/basket-in-frame";
import { forgetSearch } from "@/lib/operations/solved-once";
import { type SolvedBasket, solvedBasket } from "@/lib/solver/solved-basket";
import { workshopOf } from "../helpers/bench";
import { day, grams, material, money, offer, supplier } from "../helpers/notation";

// The search itself is tested with the solver; here it is made to fail, which it cannot be by a problem.
vi.mock("@/lib/solver/solved-basket");
const search = vi.mocked(solvedBasket);

const today = day("2026-11-25");
/** By hand 10.00 and 4.00 of delivery at s. */
const workshop = workshopOf({
  suppliers: [supplier("s", { shipping: money("4.00") }), supplier("t", { shipping: money("9.00") })],
  materials: [material("A", { safetyStock: grams("100") })],
  offers: [offer("a", "A", "50", "5.00"), offer("b", "A", "100", "12.00", { supplier: "t" })],
});
const planned = plan(workshop, today);
const view: BuyingView = {
  today,
  lastDay: planned.lastDay,
  deliveryOf: (supplier) => deliveryFrom(supplier, workshop.settings.closedDays),
  currency: workshop.settings.currency,
  asked: readFrame({}, workshop).asked,
  wanted: new Map(),
  leftOver: new Map(),
  orders: workshop.orders,
  productOf: byId("product", workshop.products),
  lasting: new Map(),
  drifts: new Map(),
};

const asked = (cap: string | null = null, waitMilliseconds = Infinity) =>
  basketInFrame(
    workshop,
    planned,
    { ...OPEN_FRAME, cap: cap === null ? null : money(cap) },
    { seconds: 1, waitMilliseconds },
  );

function said({ chosen }: BasketInFrame): string {
  const html = renderToStaticMarkup(
    createElement(BuyingFinding, {
      view,
      basket: chosen?.planned ?? null,
      saved: 0n,
      isWorthCounted: false,
      chosen: chosen?.chosen ?? "least",
      cutShort: chosen?.cutShort ?? null,
      toMake: 0,
      notBought: 0,
      waiting: 0,
      lastDay: planned.lastDay,
    }),
  );
  return html.replaceAll(/<[^>]*>/g, "");
}

const UNANSWERED = new Promise<SolvedBasket>(() => undefined);

/** What a search ends with: so many packs of b, out of time. */
const answeredWith = (packs: PacksByOffer, of = workshop): SolvedBasket => {
  const problem = problemOf(of, shoppingListOf(of, plan(of, today)));
  const checked = checkedBasket(problem, packs);
  if (checked.kind === "broken") throw new Error("the answer breaks a rule");
  const gap = quantity<MicroUnits>(5_000_000n);
  return { answer: { kind: "basket", basket: checked.basket, packs, gap }, cutShort: "out of time" };
};

beforeEach(() => {
  search.mockReset();
});

test("[BUY-9] a search that crashes leaves the basket by hand, marked as such, with nothing proven of it", async () => {
  search.mockRejectedValue(new Error("the thread fell over"));
  const found = await asked("1.00");
  expect(found.chosen).toMatchObject({ chosen: "by hand", cutShort: "failed" });
  expect([found.chosen?.planned.total, found.chosen?.planned.gap]).toEqual([money("14.00"), money("14.00")]);
  // Nothing is known of the least, so that no cap is called too low.
  expect(found.faults).toEqual([]);
  expect(said(found)).toBe(
    "One order, £14.00 with delivery. The search failed, so this is the basket by hand: the lowest unit price, one at a time.",
  );
});

test("[BUY-9] a search that does not answer leaves the basket by hand, and says that it goes on", async () => {
  search.mockReturnValue(UNANSWERED);
  const found = await asked(null, 1);
  expect(found.chosen?.foundAt).toBeNull();
  expect(found.chosen).toMatchObject({ chosen: "so far", cutShort: null });
  expect(found.chosen?.planned.total).toBe(money("14.00"));
  expect(said(found)).toContain("the search for a cheaper one goes on.");
});

/** By hand a for 10.00, shipped for 9.00; both of c together are free of shipping, which the search alone finds: 12.00. */
const shippingShop = (needed: string) =>
  workshopOf({
    suppliers: [
      supplier("s", { shipping: money("9.00") }),
      supplier("t", { shipping: money("9.00"), shippingFreeFrom: money("12.00") }),
    ],
    materials: [material("A", { safetyStock: grams(needed) })],
    offers: [offer("a", "A", "50", "5.00"), offer("c", "A", "50", "6.00", { supplier: "t" })],
  });

const inShop = (needed: string) => {
  const shop = shippingShop(needed);
  return basketInFrame(shop, plan(shop, today), OPEN_FRAME, { seconds: 1, waitMilliseconds: 1 });
};

test("[BUY-9] an earlier answer that still holds stands in with its time, while a search goes on and where it fails", async () => {
  const before = new Date();
  search.mockResolvedValueOnce(answeredWith(new Map([["c", 2n]]), shippingShop("100")));
  const first = await inShop("100");
  expect([first.chosen?.planned.total, first.chosen?.foundAt]).toEqual([money("12.00"), null]);

  // The books have changed: 90 g are lacking. What was found before fills them, and costs less than by hand.
  search.mockReturnValueOnce(UNANSWERED);
  const meanwhile = await inShop("90");
  expect(meanwhile.chosen).toMatchObject({ chosen: "so far", cutShort: null });
  expect(meanwhile.chosen?.planned.total).toBe(money("12.00"));
  expect((meanwhile.chosen?.foundAt ?? new Date(0)) >= before).toBe(true);
  // Nothing is known of what the search will find, and no more is claimed.
  expect(meanwhile.chosen?.planned.gap).toBe(money("12.00"));

  search.mockRejectedValueOnce(new Error("the thread fell over"));
  const failed = (await inShop("91")).chosen;
  expect(failed).toMatchObject({ chosen: "least", cutShort: "failed" });
  expect(failed?.foundAt).toBeInstanceOf(Date);
});

test("[BUY-9] an earlier answer that does not fill what is lacking now, or that is no cheaper, is not shown", async () => {
  search.mockResolvedValueOnce(answeredWith(new Map([["c", 2n]]), shippingShop("100")));
  await inShop("99");
  search.mockReturnValueOnce(UNANSWERED);
  expect((await inShop("140")).chosen?.foundAt).toBeNull();
  search.mockResolvedValueOnce(answeredWith(new Map([["c", 3n]]), shippingShop("150")));
  // What a search ends with is shown as found now, with the gap that it has.
  expect((await inShop("141")).chosen).toMatchObject({ foundAt: null, planned: { gap: money("5.00") } });
});

test("[BUY-9] searching again does not lose what was found before", async () => {
  search.mockResolvedValueOnce(answeredWith(new Map([["c", 2n]]), shippingShop("100")));
  const first = await inShop("98");
  await forgetSearch(first.chosen?.search.key ?? "");
  search.mockReturnValueOnce(UNANSWERED);
  const again = await inShop("98");
  expect([again.chosen?.chosen, again.chosen?.planned.total]).toEqual(["so far", money("12.00")]);
});
