/** Orders from draft to delivery: what is still to come of them, and what a line of packs costs. @rule ORDER-1, ORDER-2 */
import { roundedHalfEven } from "./fraction";
import type { MicroUnits } from "./money";
import { LARGEST_FIGURE, type Packs, quantity, type Stock } from "./quantity";
import type { Offer, Order, OrderLine, Supplier } from "./workshop";

/** What a maker calls the state of an order. */
export type OrderProgress = "drafted" | "ordered" | "partly received" | "received" | "given up";

export function progressOf({ state, lines }: Pick<Order, "state" | "lines">): OrderProgress {
  if (state !== "ordered") return state;
  if (lines.every((line) => outstanding(line) === 0n)) return "received";
  return lines.some(({ received }) => received > 0n) ? "partly received" : "ordered";
}

/** What has not come of a line, whatever is still expected of its order. */
export const outstanding = ({ quantity: ordered, received }: OrderLine): Stock =>
  quantity<Stock>(received >= ordered ? 0n : ordered - received);

/** What is still to come of a line. A draft is not expected yet, and what was given up is expected no more. */
export const toCome = ({ state }: Pick<Order, "state">, line: OrderLine): Stock =>
  state === "ordered" ? outstanding(line) : quantity<Stock>(0n);

/** Whether something of the order is still to come. */
export const isAwaited = (order: Order): boolean => order.lines.some((line) => toCome(order, line) > 0n);

/** Whether it is a draft at the supplier, or something of it is still to come from there. */
export const isOpenAt = (order: Order, supplier: string): boolean =>
  order.supplier === supplier && (order.state === "drafted" || isAwaited(order));

/** What the part of a line that has not come costs, at the line's own price. */
export const costOutstanding = (line: OrderLine): MicroUnits =>
  quantity<MicroUnits>(roundedHalfEven({ over: line.cost * outstanding(line), under: line.quantity }));

/** Packs that have not come: what is outstanding in whole packs, or null where it is none. */
export function packsOutstanding(line: OrderLine): Packs | null {
  if (line.packs === null) return null;
  const over = outstanding(line) * line.packs;
  return over > 0n && over % line.quantity === 0n ? quantity<Packs>(over / line.quantity) : null;
}

/** What each pack of an offer costs where so many are taken. @rule BUY-2 */
export function packPriceAt({ price, breaks }: Offer, packs: Packs): MicroUnits {
  const reached = breaks.filter((each) => each.packs <= packs).sort((a, b) => (a.packs < b.packs ? 1 : -1));
  return reached[0]?.price ?? price;
}

/** A line of whole packs at what the offer asks for so many. */
export const lineOfPacks = (offer: Offer, packs: Packs): OrderLine => ({
  material: offer.material,
  quantity: quantity<Stock>(packs * offer.pack.quantity),
  cost: quantity<MicroUnits>(packs * packPriceAt(offer, packs)),
  expires: null,
  offer: offer.id,
  packs,
  received: quantity<Stock>(0n),
});

/** A line that the books cannot hold, since a figure of it would be above the largest. @rule QTY-6 */
export interface LineTooLarge {
  readonly offer: Offer;
  readonly of: "quantity" | "cost";
  /** µg, pieces or micro-units above the largest figure. */
  readonly by: bigint;
}

/** Whether so many packs come to more than a figure of the books can be: their quantity, or else what they cost. */
export function lineTooLarge(offer: Offer, packs: Packs): LineTooLarge | null {
  const line = lineOfPacks(offer, packs);
  if (line.quantity > LARGEST_FIGURE) return { offer, of: "quantity", by: line.quantity - LARGEST_FIGURE };
  return line.cost > LARGEST_FIGURE ? { offer, of: "cost", by: line.cost - LARGEST_FIGURE } : null;
}

/** Whether the offer still says what the line was written down with. @rule BUY-15 */
export function stillOffered(offers: readonly Offer[], supplier: string, line: OrderLine): boolean {
  if (line.offer === null || line.packs === null) return true;
  const offer = offers.find(({ id }) => id === line.offer);
  if (offer?.supplier !== supplier || line.packs < offer.minPacks) return false;
  const now = lineOfPacks(offer, line.packs);
  return now.material === line.material && now.quantity === line.quantity && now.cost === line.cost;
}

/** What the lines of an order cost together, before delivery. */
export const goodsOf = ({ lines }: Pick<Order, "lines">): MicroUnits =>
  quantity<MicroUnits>(lines.reduce<bigint>((goods, { cost }) => goods + cost, 0n));

/** Delivery of an order as its supplier asks it today. @rule BUY-3 */
export const shippingOf = ({ shipping, shippingFreeFrom }: Supplier, order: Pick<Order, "lines">): MicroUnits =>
  shippingFreeFrom !== null && goodsOf(order) >= shippingFreeFrom ? quantity<MicroUnits>(0n) : shipping;
