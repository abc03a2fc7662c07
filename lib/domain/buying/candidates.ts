/** What is to be bought, by which day, and from which offers. @rule BUY-1 */
import { arrivalOf, type Delivery, deliveryFrom } from "../arrivals";
import { type Day, daysAfter, later } from "../calendar";
import { byId } from "../index-by-id";
import type { Balance, MaterialOutlook, Plan } from "../plan-figures";
import type { Stock } from "../quantity";
import type { Material, Offer, Workshop } from "../workshop";

/** A material that the plan lacks and that somebody offers. */
export interface Purchase {
  readonly material: Material;
  readonly wanted: Stock;
  /** The day by which it should be there. */
  readonly buyBy: Day;
  /** At least one, in the file's order. */
  readonly candidates: readonly Candidate[];
}

/** An offer with the day on which it comes if it is ordered today. */
export interface Candidate {
  readonly offer: Offer;
  readonly arrives: Day;
  /** It comes after the day by which it should be there. */
  readonly late: boolean;
}

export interface ShoppingList {
  readonly purchases: readonly Purchase[];
  /** Materials that are to be bought and that nobody offers, in the file's order. */
  readonly unsourced: readonly Material[];
}

/** Everything that the plan says is to be bought, with the offers that may fill it, ordered on the plan's day. */
export function shoppingListOf(workshop: Workshop, plan: Plan): ShoppingList {
  const deliveryOf = deliveriesOf(workshop);
  const lacking = plan.materials.filter(({ toBuy }) => toBuy > 0n);
  return {
    purchases: lacking
      .filter(({ offersConsidered }) => offersConsidered.length > 0)
      .map((outlook) => purchaseOf(outlook, outlook.toBuy, plan, deliveryOf)),
    unsourced: lacking.flatMap(({ material, offersConsidered }) => (offersConsidered.length === 0 ? [material] : [])),
  };
}

/** Each supplier's days, by id. */
export function deliveriesOf({ suppliers, settings }: Workshop): (supplierId: string) => Delivery {
  const found = byId(
    "supplier",
    suppliers.map((supplier) => ({ id: supplier.id, delivery: deliveryFrom(supplier, settings.closedDays) })),
  );
  return (id) => found(id).delivery;
}

function purchaseOf(
  outlook: MaterialOutlook,
  wanted: Stock,
  { today, lastDay }: Pick<Plan, "today" | "lastDay">,
  deliveryOf: (supplierId: string) => Delivery,
): Purchase {
  const { material, balances, firstArrival, offersConsidered } = outlook;
  const safety: bigint = material.safetyStock?.quantity ?? 0n;
  const isBeyond = firstArrival > lastDay;
  const lowOn = isBeyond ? lastDay : (firstBelow(balances, safety, firstArrival, lastDay) ?? lastDay);
  const shortOn = isBeyond ? null : firstBelow(balances, 0n, firstArrival, lastDay);
  const buyBy = daysAfter(lowOn, -material.safetyDays);
  const candidates = offersConsidered.map((offer) => {
    const arrives = arrivalOf(deliveryOf(offer.supplier), today);
    return { offer, arrives, late: arrives > buyBy };
  });
  return { material, wanted, buyBy, candidates: inTime(candidates, buyBy, shortOn) };
}

/** Those that come by the day; else those that come before the shelf runs dry; else those that come first. @rule BUY-1 */
function inTime(offered: readonly Candidate[], buyBy: Day, shortOn: Day | null): readonly Candidate[] {
  const by = (day: Day) => offered.filter(({ arrives }) => arrives <= day);
  const punctual = by(buyBy);
  if (punctual.length > 0) return punctual;
  const beforeShort = shortOn === null ? offered : by(shortOn);
  return beforeShort.length > 0 ? beforeShort : by(Math.min(...offered.map(({ arrives }) => arrives)) as Day);
}

/** The first day from `from` to `to` with a balance below the level. */
function firstBelow(balances: readonly Balance[], level: bigint, from: Day, to: Day): Day | null {
  for (const [index, { day, balance }] of balances.entries()) {
    const next = balances[index + 1];
    if (balance >= level || day > to || (next && next.day <= from)) continue;
    return later(day, from);
  }
  return null;
}
