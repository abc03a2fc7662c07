/** What the demo's offers say of keeping and of their price, held to seed/WORKED.md. */
import { expect, test } from "vitest";
import { shoppingListOf } from "@/lib/domain/buying/candidates";
import { driftOf } from "@/lib/domain/landed";
import { dayText, readDemo } from "./demo-workshop";

const { workshop, plan } = readDemo();
const candidates = shoppingListOf(workshop, plan).purchases.flatMap((purchase) => purchase.candidates);

test.each([
  ["o-calendula-100g", "2026-12-16", "2027-12-16"],
  ["o-protein-250g", "2026-12-16", "2027-06-14"],
  ["o-btms-1kg", "2026-11-30", "2028-11-29"],
  ["o-jar-24", "2026-12-02", "-"],
])("[OFFER-1] %s comes %s if it is ordered today, and keeps to %s", (id, arrives, expires) => {
  const found = candidates.find(({ offer }) => offer.id === id);
  expect([dayText(found?.arrives ?? null), dayText(found?.expires ?? null)]).toEqual([arrives, expires]);
});

test("[OFFER-2] [OFFER-3] the prices that were confirmed long ago or never are worth asking for again", () => {
  const drifts = workshop.offers.flatMap((offer) => {
    const drift = driftOf(offer, [], plan.today);
    if (drift === null || drift.kind === "paid otherwise") return [];
    return drift.kind === "never confirmed" ? `${offer.id} never` : `${offer.id} ${String(drift.days)} days`;
  });
  expect(drifts).toEqual([
    "o-btms-1kg 209 days",
    "o-cetyl-5kg 289 days",
    "o-sunflower-5l 205 days",
    "o-sucrose-b never",
    "o-jar-24 191 days",
    "o-pouch-12 never",
    "o-box-50 never",
    "o-wax-1kg never",
    "o-gloves-100 never",
    "o-filter-10 never",
  ]);
});
