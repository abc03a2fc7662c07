/** What a maker sees where the search fails altogether, is ended, or runs out of time. */
import { createElement } from "react";
import { renderToStaticMarkup } from "react-dom/server";
import { beforeEach, expect, test, vi } from "vitest";
import { BuyingFinding } from "@/app/buying/_parts/buying-finding";
import type { BuyingView } from "@/app/buying/_parts/buying-view";
import { OPEN_FRAME } from "@/lib/domain/buying/buying-frame";
import { plan } from "@/lib/domain/plan";
import { readFrame } from "@/lib/edge/forms/buying-frame";
import { type BasketInFrame, basketInFrame } from "@/lib/operations/basket-in-frame";
import { solvedBasket } from "@/lib/solver/solved-basket";
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
  currency: workshop.settings.currency,
  asked: readFrame({}, workshop).asked,
  wanted: new Map(),
  leftOver: new Map(),
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
      notBought: 0,
      waiting: 0,
      lastDay: planned.lastDay,
    }),
  );
  return html.replaceAll(/<[^>]*>/g, "");
}

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
  search.mockReturnValue(new Promise(() => undefined));
  const found = await asked(null, 1);
  expect(found.chosen).toMatchObject({ chosen: "so far", cutShort: null });
  expect(found.chosen?.planned.total).toBe(money("14.00"));
  expect(said(found)).toContain("the search for a cheaper one goes on.");
});
