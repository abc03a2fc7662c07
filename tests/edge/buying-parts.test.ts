/** Parts of buying as they are drawn from plain data: what speaks against a price, and whose shape is whose. */
import { createElement } from "react";
import { renderToStaticMarkup } from "react-dom/server";
import { expect, test } from "vitest";
import type { BuyingView } from "@/app/buying/_parts/buying-view";
import { OrderSlip } from "@/app/buying/_parts/order-slip";
import { MarksOf } from "@/app/buying/_parts/paid-marks";
import { deliveryFrom } from "@/lib/domain/arrivals";
import { shoppingListOf } from "@/lib/domain/buying/candidates";
import { checkedBasket } from "@/lib/domain/buying/checked-basket";
import { plannedBasket } from "@/lib/domain/buying/basket-of-plan";
import { problemOf } from "@/lib/domain/buying/problem-of-list";
import { driftOf } from "@/lib/domain/landed";
import type { LotReceived } from "@/lib/domain/ledger/receipt";
import { byId } from "@/lib/domain/index-by-id";
import { plan } from "@/lib/domain/plan";
import { quantity } from "@/lib/domain/quantity";
import { readFrame } from "@/lib/edge/forms/buying-frame";
import { workshopOf } from "../helpers/bench";
import { day, g, grams, material, money, offer } from "../helpers/notation";

const today = day("2026-11-25");
const workshop = workshopOf({
  materials: ["A", "B", "C", "D"].map((id) => material(id, { safetyStock: grams("100") })),
  offers: [
    offer("a", "A", "100", "5.00", { confirmedOn: day("2026-10-01") }),
    offer("b", "B", "100", "5.00", { confirmedOn: day("2026-03-01") }),
    offer("c", "C", "100", "5.00"),
    offer("d", "D", "100", "5.00", { confirmedOn: day("2026-11-20") }),
  ],
});

/** A pack of each was paid 5.50 on 2 November. */
const received = ["a", "d"].map((id): LotReceived => ({
  lot: `L-${id}`,
  posting: id,
  supplier: "s",
  offer: id,
  order: null,
  packs: quantity(1n),
  paid: money("5.50"),
  material: id.toUpperCase(),
  day: day("2026-11-02"),
  quantity: quantity(g("100")),
  landed: money("5.50"),
}));

const planned = plan(workshop, today);
const list = shoppingListOf(workshop, planned);
const checked = checkedBasket(problemOf(workshop, list), new Map(workshop.offers.map(({ id }) => [id, 1n])));

test("[OFFER-3] a line says that its price has drifted, and an order how many of its prices were never confirmed", () => {
  if (checked.kind === "broken") throw new Error("the basket breaks a rule");
  const [order] = plannedBasket(workshop, list, { basket: checked.basket, gap: null }).orders;
  if (order === undefined) throw new Error("there is no order");
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
    drifts: new Map(
      workshop.offers.flatMap((each) => {
        const drift = driftOf(each, received, today);
        return drift === null ? [] : [[each.id, drift] as const];
      }),
    ),
  };
  const html = renderToStaticMarkup(createElement(OrderSlip, { order, view, why: null, children: null }));
  const words = html.replaceAll(/<[^>]*>/g, " ").replaceAll(/[\s\u00a0]+/g, " ");
  expect(words).toContain("Mon 2 Nov a pack was paid £5.50, and the offer says £5.00. What was paid .");
  expect(words).toContain("Confirmed Sun 1 Mar, 269 days ago: more than 180 days, so ask again.");
  // d was confirmed after that delivery, so that what was paid before counts no more.
  expect(words.match(/a pack was paid/g)).toHaveLength(1);
  expect(words).toContain("Nobody has written down when one of these prices was last confirmed.");
});

test("every supplier of a drawing has a shape of its own, whatever its colour", () => {
  const suppliers = Array.from({ length: 12 }, (_, at) => `Supplier ${String(at)}`);
  const html = renderToStaticMarkup(createElement(MarksOf, { suppliers }));
  const shapes = [...html.matchAll(/<path class="paid-mark paid-\d( paid-hollow)?" d="([^"]+)"/g)].map(
    ([, hollow = "", path = ""]) => path + hollow,
  );
  expect(shapes).toHaveLength(12);
  expect(new Set(shapes).size).toBe(12);
});
