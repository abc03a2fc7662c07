/** What is to be bought, by which day, and from which offers. @rule BUY-1, BUY-10 */
import { arrivalOf, type Delivery, deliveryFrom } from "../arrivals";
import { type Day, daysAfter, earlier, later } from "../calendar";
import { byId } from "../index-by-id";
import { mostBelow } from "../outlook";
import { leastLeft } from "../to-buy";
import { plan as planOf } from "../plan";
import type { Balance, MaterialOutlook, Plan } from "../plan-figures";
import { quantity, type Stock } from "../quantity";
import type { Material, Offer, Workshop } from "../workshop";
import { type BuyingFrame, type Cover, framed, type FramedList, OPEN_FRAME, type OpenPurchase } from "./buying-frame";
import { lastDayOfUse } from "./keeping";
import type { Candidate, ShoppingList } from "./shopping-list";

/** Everything that the plan says is to be bought, with the offers that may fill it, ordered on the plan's day. */
export const shoppingListOf = (workshop: Workshop, plan: Plan): ShoppingList =>
  shoppingListIn(workshop, plan, OPEN_FRAME).list;

/**
 * The same in a maker's frame, and what the frame makes impossible. Who is left out offers nothing, so the workshop is
 * planned again without their offers: first arrivals and what is to be bought may change with them.
 * @rule BUY-10, BUY-11
 */
export function shoppingListIn(workshop: Workshop, plan: Plan, frame: BuyingFrame): FramedList {
  const kept = workshop.offers.filter(({ supplier }) => !frame.leftOut.has(supplier));
  const planned = frame.leftOut.size === 0 ? plan : planOf({ ...workshop, offers: kept }, plan.today);
  const deliveryOf = deliveriesOf(workshop);
  const lacking = planned.materials.flatMap((outlook) => {
    const wanted = wantedFor(outlook, planned, frame.cover, workshop);
    return wanted > 0n ? [{ outlook, wanted }] : [];
  });
  const isOffered = ({ outlook }: { readonly outlook: MaterialOutlook }) => outlook.offersConsidered.length > 0;
  const open = lacking.filter(isOffered).map(({ outlook, wanted }) => {
    const considered = [...outlook.offersConsidered, ...heldToBesides(outlook, kept, frame)];
    const least = leastLeft(outlook, { ...planned, coverDays: coverDaysOf(frame.cover, workshop) });
    return { ...purchaseOf(outlook, considered, wanted, planned, deliveryOf), least, onHand: outlook.onHand };
  });
  const unoffered = lacking.filter((each) => !isOffered(each)).map(({ outlook }): Material => outlook.material);
  return framed(open, unoffered, frame, workshop, planned);
}

/** What the plan says is to be bought, or what would be for another number of days. @rule PLAN-8, BUY-10 */
function wantedFor(
  { material, balances, firstArrival, toBuy }: MaterialOutlook,
  plan: Plan,
  cover: Cover,
  workshop: Workshop,
): Stock {
  if (cover.kind === "workshop") return toBuy;
  const from = earlier(firstArrival, plan.lastDay);
  const to = earlier(daysAfter(from, coverDaysOf(cover, workshop)), plan.lastDay);
  return quantity<Stock>(mostBelow(material.safetyStock?.quantity ?? 0n, balances, from, to));
}

/** The days that a purchase is to cover, the horizon's all at the most. */
function coverDaysOf(cover: Cover, { settings: { coverDays, horizonDays } }: Workshop): number {
  switch (cover.kind) {
    case "workshop":
      return coverDays ?? horizonDays;
    case "horizon":
      return horizonDays;
    case "days":
      return cover.days;
  }
}

/** Offers that the maker holds to count, also where the book prefers another supplier. @rule BUY-10 */
const heldToBesides = (
  { material, offersConsidered }: MaterialOutlook,
  offers: readonly Offer[],
  { chosen, heldTo }: BuyingFrame,
): readonly Offer[] =>
  offers.filter(
    (offer) =>
      offer.material === material.id &&
      (chosen.has(offer.id) || heldTo.has(offer.supplier)) &&
      !offersConsidered.includes(offer),
  );

/** Each supplier's days, by id. */
function deliveriesOf({ suppliers, settings }: Workshop): (supplierId: string) => Delivery {
  const found = byId(
    "supplier",
    suppliers.map((supplier) => ({ id: supplier.id, delivery: deliveryFrom(supplier, settings.closedDays) })),
  );
  return (id) => found(id).delivery;
}

function purchaseOf(
  outlook: MaterialOutlook,
  considered: readonly Offer[],
  wanted: Stock,
  { today, lastDay }: Pick<Plan, "today" | "lastDay">,
  deliveryOf: (supplierId: string) => Delivery,
): Omit<OpenPurchase, "least" | "onHand"> {
  const { material, balances, firstArrival } = outlook;
  const safety: bigint = material.safetyStock?.quantity ?? 0n;
  const isBeyond = firstArrival > lastDay;
  const lowOn = isBeyond ? lastDay : (firstBelow(balances, safety, firstArrival, lastDay) ?? lastDay);
  const shortOn = isBeyond ? null : firstBelow(balances, 0n, firstArrival, lastDay);
  const buyBy = daysAfter(lowOn, -material.safetyDays);
  const offered = considered.map((offer) => {
    const arrives = arrivalOf(deliveryOf(offer.supplier), today);
    return { offer, arrives, late: arrives > buyBy, expires: lastDayOfUse(arrives, offer.shelfLifeDays) };
  });
  const orderBy = outlook.orderBy ?? today;
  return { material, wanted, buyBy, orderBy, outlook, offered, byTheRules: (some) => inTime(some, buyBy, shortOn) };
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
