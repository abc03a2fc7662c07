import { deliveryFrom } from "@/lib/domain/arrivals";
import { lastingWith } from "@/lib/domain/buying/lasting";
import { byId, grouped } from "@/lib/domain/index-by-id";
import { driftOf } from "@/lib/domain/landed";
import { quantity, type Stock } from "@/lib/domain/quantity";
import type { Buying } from "./buying-for-page";
import type { BuyingView, WantedThen } from "./_parts/buying-view";
import type { Pinnable } from "./_parts/frame-further";

/** What the parts of the page are drawn from. */
export function viewOf({ found, reading, list, waiting, chosen, received }: Buying): BuyingView {
  const { plan, today, workshop } = found;
  const outlookOf = byId(
    "material",
    plan.materials.map((outlook) => ({ id: outlook.material.id, outlook })),
  );
  const lines = chosen?.planned.orders.flatMap((order) => order.lines) ?? [];
  const wantedOf = (purchases: Buying["waiting"], waits: boolean) =>
    purchases.map(({ material, wanted, least, onHand, buyBy, orderBy }): readonly [string, WantedThen] => [
      material.id,
      { quantity: wanted, least, onHand, buyBy, orderBy, waits },
    ]);
  return {
    today,
    lastDay: plan.lastDay,
    deliveryOf: (supplier) => deliveryFrom(supplier, workshop.settings.closedDays),
    currency: workshop.settings.currency,
    asked: reading.asked,
    wanted: new Map([...wantedOf(list.purchases, false), ...wantedOf(waiting, true)]),
    drifts: new Map(
      lines.flatMap(({ offer }) => {
        const drift = driftOf(offer, received, today);
        return drift === null ? [] : [[offer.id, drift] as const];
      }),
    ),
    leftOver: chosen?.basket.leftOver ?? new Map<string, Stock>(),
    orders: workshop.orders,
    productOf: byId("product", workshop.products),
    lasting: new Map(
      [...grouped(lines, ({ material }) => material.id)].flatMap(([id, own]) => {
        const bought = own.map(({ offer, packs, arrives, expires }) => ({
          arrives,
          expires,
          quantity: quantity<Stock>(packs * offer.pack.quantity),
        }));
        const lasting = lastingWith(outlookOf(id).outlook, bought, plan);
        return lasting === null ? [] : [[id, lasting] as const];
      }),
    ),
  };
}

/** Materials that are lacking and that more than one offer could fill, with those offers. */
export function pinnableOf({ found, list, waiting, faults }: Buying): readonly Pinnable[] {
  const lacking = new Set([
    ...[...list.purchases, ...waiting].map(({ material }) => material),
    ...faults.flatMap((fault) => ("material" in fault ? [fault.material] : [])),
  ]);
  return found.workshop.materials.flatMap((material): readonly Pinnable[] => {
    const offers = found.workshop.offers.filter((offer) => offer.material === material.id);
    return lacking.has(material) && offers.length > 1 ? [{ material, offers }] : [];
  });
}
