/** What a material's projection says to a buyer: short, by when, how much, order by. @rule PLAN-5 to PLAN-9 */
import { arrivalOf, type Delivery, latestOrderDay } from "./arrivals";
import { type Day, daysAfter, daysBetween, earlier } from "./calendar";
import { isUsable, type ShelfLot } from "./lots";
import type { Balance, MaterialOutlook } from "./plan-figures";
import { pricedOffer } from "./prices";
import type { Projection } from "./projection";
import { quantity, type Stock } from "./quantity";
import type { Material, Offer } from "./workshop";

export interface Frame {
  readonly today: Day;
  readonly lastDay: Day;
  readonly coverDays: number;
}

/**
 * @param offers     of the material, in the file's order
 * @param deliveryOf by supplier id
 */
export function outlookOf(
  material: Material,
  lots: readonly ShelfLot[],
  projection: Projection,
  offers: readonly Offer[],
  deliveryOf: (supplierId: string) => Delivery,
  { today, lastDay, coverDays }: Frame,
): MaterialOutlook {
  const { balances } = projection;
  const safety: bigint = material.safetyStock?.quantity ?? 0n;
  const priced = pricedOffer(offers);
  const offersConsidered = priced?.preferred ? offers.filter((offer) => offer.supplier === priced.supplier) : offers;
  const firstArrival = offersConsidered
    .map((offer) => arrivalOf(deliveryOf(offer.supplier), today))
    .reduce<Day | null>((first, day) => (first === null ? day : earlier(first, day)), null);

  const shortOn = balances.find(({ balance }) => balance < 0n)?.day ?? null;
  const belowSafetyOn = balances.find(({ balance }) => balance < safety)?.day ?? null;
  const neededBy = belowSafetyOn === null ? null : daysAfter(belowSafetyOn, -material.safetyDays);
  const orderBy = neededBy === null || priced === null ? null : latestOrderDay(deliveryOf(priced.supplier), neededBy);
  const coverFrom = earlier(firstArrival ?? today, lastDay);
  const coverTo = earlier(daysAfter(coverFrom, coverDays), lastDay);
  return {
    material,
    onHand: quantity<Stock>(lots.reduce((held, lot) => (isUsable(lot, today) ? held + lot.quantity : held), 0n)),
    shortOn,
    belowSafetyOn,
    shortBy: quantity<Stock>(mostBelow(safety, balances, today, lastDay)),
    toBuy: quantity<Stock>(mostBelow(safety, balances, coverFrom, coverTo)),
    pricedOffer: priced,
    offersConsidered,
    firstArrival: firstArrival ?? today,
    neededBy,
    orderBy,
    daysLate: orderBy === null ? null : Math.max(0, daysBetween(orderBy, today)),
    expiring: projection.expiring,
    balances,
    events: projection.events,
    ladder: projection.ladder,
  };
}

/** The most by which the balance is below the safety stock on any day of the window, at least zero. @rule PLAN-8 */
export function mostBelow(safety: bigint, balances: readonly Balance[], from: Day, to: Day): bigint {
  let most = 0n;
  for (const [index, { day, balance }] of balances.entries()) {
    const next = balances[index + 1];
    if (day > to || (next && next.day <= from)) continue;
    if (safety - balance > most) most = safety - balance;
  }
  return most;
}
