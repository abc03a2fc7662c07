import type { Day } from "@/lib/domain/calendar";
import type { Books } from "@/lib/domain/desk";
import type { MicroUnits } from "@/lib/domain/money";
import { lastDayOfUse } from "@/lib/domain/buying/keeping";
import { isOpenAt, lineOfPacks, lineTooLarge, packPriceAt } from "@/lib/domain/orders";
import type { Packs } from "@/lib/domain/quantity";
import type { Offer, Order, OrderLine } from "@/lib/domain/workshop";
import { onTheBooks } from "./on-the-books";

/** An order as it was shown. */
export interface OrderToPlace {
  /** Made when the form is drawn. */
  readonly id: string;
  readonly supplier: string;
  readonly placed: Day;
  /** The day on which it comes. */
  readonly due: Day;
  /** A draft is not expected by the plan until the maker has ordered it. @rule ORDER-1 */
  readonly state: "drafted" | "ordered";
  readonly lines: readonly OrderedPacks[];
  /** The supplier's drafts and open orders when the form was drawn, by id. */
  readonly known: readonly string[];
}

export interface OrderedPacks {
  readonly offer: string;
  readonly packs: Packs;
  /** What one pack costs at so many, as it was shown. */
  readonly packPrice: MicroUnits;
}

export type PlaceOrderResult =
  /** Taking it back removes it. */
  | { readonly kind: "ordered"; readonly order: Order; readonly books: Books }
  /** The form was sent before, and this is what it kept; or a draft of the same packs is there. */
  | { readonly kind: "already ordered"; readonly order: Order }
  | { readonly kind: "ordered otherwise" }
  /** Another order at the supplier came into the books since the form was drawn, perhaps this one, from another tab. */
  | { readonly kind: "ordered meanwhile" }
  /** Something of it has come in, so that it is an open order no more. */
  | { readonly kind: "already received" }
  /** An offer is gone, or says something else than was shown. */
  | { readonly kind: "offer changed"; readonly offer: string }
  /** What would be ordered by an offer is more than the books can hold. */
  | { readonly kind: "too large" };

/** A line of packs with the last day on which they are expected to be of use. @rule ORDER-7 */
export const expectedLine = (offer: Offer, packs: Packs, due: Day): OrderLine => ({
  ...lineOfPacks(offer, packs),
  expires: lastDayOfUse(due, offer.shelfLifeDays),
});

/**
 * Keeps an order that the maker has placed, or a draft of one; sent twice, or from two tabs, it is one order.
 * @rule BUY-15, ORDER-1
 */
export const placeOrder = (asked: OrderToPlace) => onTheBooks((books) => decidePlaceOrder(books, asked));

export function decidePlaceOrder(books: Books, asked: OrderToPlace): PlaceOrderResult {
  const { workshop } = books;
  const there = workshop.orders.find(({ id }) => id === asked.id);
  if (there === undefined && hasCome(books, asked.id)) return { kind: "already received" };
  const lines: OrderLine[] = [];
  for (const packs of asked.lines) {
    const offer = workshop.offers.find(({ id }) => id === packs.offer);
    if (offer === undefined || !stillSays(offer, packs, asked.supplier))
      return there ? { kind: "ordered otherwise" } : { kind: "offer changed", offer: packs.offer };
    if (lineTooLarge(offer, packs.packs)) return { kind: "too large" };
    lines.push(expectedLine(offer, packs.packs, asked.due));
  }
  const { id, supplier, placed, due, state } = asked;
  const order: Order = { id, supplier, placed, due, state, lines };
  if (there) return isSame(there, order) ? { kind: "already ordered", order: there } : { kind: "ordered otherwise" };
  const open = workshop.orders.filter((each) => isOpenAt(each, supplier));
  const draft = state === "drafted" ? open.find((each) => isSame(each, { ...order, due: each.due })) : undefined;
  if (draft) return { kind: "already ordered", order: draft };
  if (open.some((each) => !asked.known.includes(each.id))) return { kind: "ordered meanwhile" };
  return {
    kind: "ordered",
    order,
    books: { ...books, workshop: { ...workshop, orders: [...workshop.orders, order] } },
  };
}

export type TakeOrderBackResult =
  { readonly kind: "taken back"; readonly order: Order; readonly books: Books } | { readonly kind: "not there" };

/** Removes an open order, as if it had not been placed. @rule BUY-15 */
export const takeOrderBack = (id: string) => onTheBooks((books) => decideTakeOrderBack(books, id));

export function decideTakeOrderBack(books: Books, id: string): TakeOrderBackResult {
  const { workshop } = books;
  const order = workshop.orders.find((each) => each.id === id);
  if (order === undefined || hasCome(books, id)) return { kind: "not there" };
  const orders = workshop.orders.filter((each) => each !== order);
  return { kind: "taken back", order, books: { ...books, workshop: { ...workshop, orders } } };
}

/** Something of it was received; stores from before that was counted know a lot `order/line` at most. */
const hasCome = ({ workshop }: Books, id: string): boolean =>
  workshop.lots.some((lot) => lot.id.startsWith(`${id}/`)) ||
  workshop.orders.some((order) => order.id === id && order.lines.some(({ received }) => received > 0n));

const stillSays = (offer: Offer, { packs, packPrice }: OrderedPacks, supplier: string): boolean =>
  offer.supplier === supplier && packs >= offer.minPacks && packPriceAt(offer, packs) === packPrice;

const isSame = (a: Order, b: Order): boolean =>
  a.supplier === b.supplier &&
  a.placed === b.placed &&
  a.due === b.due &&
  a.state === b.state &&
  a.lines.length === b.lines.length &&
  a.lines.every((line, at) => {
    const other = b.lines[at];
    return line.material === other?.material && line.quantity === other.quantity && line.cost === other.cost;
  });
