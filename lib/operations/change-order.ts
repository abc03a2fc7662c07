/** What a maker does with an order between its draft and its last delivery, each in one transaction. @rule ORDER-1 to ORDER-4 */
import type { Day } from "@/lib/domain/calendar";
import type { Books } from "@/lib/domain/desk";
import { isAwaited, lineTooLarge, stillOffered } from "@/lib/domain/orders";
import { type Packs, quantity } from "@/lib/domain/quantity";
import type { Offer, Order, OrderLine } from "@/lib/domain/workshop";
import { onTheBooks } from "./on-the-books";
import { expectedLine } from "./place-order";

type Changed = { readonly kind: "changed"; readonly order: Order; readonly books: Books };

/** It is as asked already: the form was sent twice. */
type AsAsked = { readonly kind: "as asked" };
type NotThere = { readonly kind: "not there" };
/** Another tab was quicker: the order stands in another state than the form was drawn from. */
type Otherwise = { readonly kind: "state changed"; readonly order: Order };

export interface PacksOfDraft {
  readonly id: string;
  /** For each line of the draft, in their order; none takes the line out. */
  readonly packs: readonly bigint[];
  /** As the form was drawn: what the packs were. */
  readonly from: readonly bigint[];
}

export type ChangePacksResult =
  | Changed
  | AsAsked
  | NotThere
  | Otherwise
  | { readonly kind: "offer gone"; readonly line: number }
  | { readonly kind: "too few packs"; readonly line: number; readonly least: Packs }
  | { readonly kind: "too many packs"; readonly line: number }
  | { readonly kind: "nothing left" };

/** Other packs of a draft, at what its offers ask for them today. @rule ORDER-3 */
export const changePacks = (asked: PacksOfDraft) => onTheBooks((books) => decideChangePacks(books, asked));

export function decideChangePacks(books: Books, { id, packs, from }: PacksOfDraft): ChangePacksResult {
  const order = orderNamed(books, id);
  if (order === undefined) return { kind: "not there" };
  const now = order.lines.map((line) => line.packs ?? 0n);
  if (order.state !== "drafted" || !isSame(now, from)) {
    return isSame(now, packs) && order.state === "drafted" ? { kind: "as asked" } : { kind: "state changed", order };
  }
  const lines: OrderLine[] = [];
  for (const [at, line] of order.lines.entries()) {
    const count = quantity<Packs>(packs[at] ?? 0n);
    if (count === 0n) continue;
    const offer = books.workshop.offers.find((each) => each.id === line.offer && each.supplier === order.supplier);
    if (offer === undefined) return { kind: "offer gone", line: at };
    if (count < offer.minPacks) return { kind: "too few packs", line: at, least: offer.minPacks };
    if (lineTooLarge(offer, count)) return { kind: "too many packs", line: at };
    lines.push(expectedLine(offer, count, order.due));
  }
  if (lines.length === 0) return { kind: "nothing left" };
  return changed(books, { ...order, lines });
}

const isSame = (a: readonly bigint[], b: readonly bigint[]): boolean =>
  a.length === b.length && a.every((each, at) => each === b[at]);

export type ChangeStateResult =
  | Changed
  | AsAsked
  | NotThere
  | Otherwise
  /** An offer asks something else than the draft says. @rule BUY-15 */
  | { readonly kind: "offer changed"; readonly line: number };

/** The maker has ordered a draft: from now on the plan expects it. @rule ORDER-2 */
export const orderDraft = (asked: { readonly id: string; readonly placed: Day; readonly due: Day }) =>
  onTheBooks((books): ChangeStateResult => {
    const order = orderNamed(books, asked.id);
    if (order === undefined) return { kind: "not there" };
    if (order.state === "ordered" && order.due === asked.due) return { kind: "as asked" };
    if (order.state !== "drafted") return { kind: "state changed", order };
    const line = order.lines.findIndex((each) => !stillOffered(books.workshop.offers, order.supplier, each));
    if (line >= 0) return { kind: "offer changed", line };
    const lines = order.lines.map((each) => expectedOn(asked.due, each, books.workshop.offers));
    return changed(books, { ...order, state: "ordered", placed: asked.placed, due: asked.due, lines });
  });

/** The line as it is expected if it comes on that day; one without an offer stays. */
function expectedOn(due: Day, line: OrderLine, offers: readonly Offer[]): OrderLine {
  const offer = offers.find(({ id }) => id === line.offer);
  return offer === undefined || line.packs === null ? line : expectedLine(offer, line.packs, due);
}

/** What has not come of an order is not expected any more, or is again. @rule ORDER-4 */
export const giveUpRest = ({ id, to }: { readonly id: string; readonly to: "given up" | "ordered" }) =>
  onTheBooks((books): ChangeStateResult => {
    const order = orderNamed(books, id);
    if (order === undefined) return { kind: "not there" };
    if (order.state === to) return { kind: "as asked" };
    if (order.state === "drafted" || (to === "given up" && !isAwaited(order))) return { kind: "state changed", order };
    return changed(books, { ...order, state: to });
  });

export type DropDraftResult =
  { readonly kind: "dropped"; readonly order: Order; readonly books: Books } | NotThere | Otherwise;

/** Throws a draft away. An order that was placed is given up instead, and stays. @rule ORDER-3 */
export const dropDraft = (id: string) =>
  onTheBooks((books): DropDraftResult => {
    const order = orderNamed(books, id);
    if (order === undefined) return { kind: "not there" };
    if (order.state !== "drafted") return { kind: "state changed", order };
    const orders = books.workshop.orders.filter((each) => each !== order);
    return { kind: "dropped", order, books: { ...books, workshop: { ...books.workshop, orders } } };
  });

const orderNamed = ({ workshop }: Books, id: string): Order | undefined =>
  workshop.orders.find((order) => order.id === id);

function changed(books: Books, order: Order): Changed {
  const orders = books.workshop.orders.map((each) => (each.id === order.id ? order : each));
  return { kind: "changed", order, books: { ...books, workshop: { ...books.workshop, orders } } };
}
