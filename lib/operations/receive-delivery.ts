import { lotIdOfLine } from "@/lib/domain/arrivals";
import type { Books } from "@/lib/domain/desk";
import { type Delivery, type DeliveryLine, receiveDelivery } from "@/lib/domain/ledger/receive-delivery";
import { coinOf, type MicroUnits } from "@/lib/domain/money";
import { quantity } from "@/lib/domain/quantity";
import type { Lot, Order } from "@/lib/domain/workshop";
import { type Asked, onlyLooking, onTheLedger } from "./on-the-ledger";

export interface ReceiveDelivery extends Asked, Pick<Delivery, "note" | "extras"> {
  readonly lines: readonly LineReceived[];
}

export interface LineReceived extends DeliveryLine {
  /** The line on order that it settles, counted from 0, or null. */
  readonly order: { readonly id: string; readonly line: number } | null;
}

export type DeliveryOfWorkshopRefusal =
  | { readonly kind: "no such material"; readonly material: string }
  /** It was received or changed meanwhile. */
  | { readonly kind: "no such line on order"; readonly order: string; readonly line: number }
  /** A line that is still on order will come in under this id. @rule FILE-3 */
  | { readonly kind: "id of a line on order"; readonly lot: string };

/** What a delivery would come to, without receiving it. @rule LEDGER-9 */
export const lookAtDelivery = (asked: ReceiveDelivery) =>
  onTheLedger(asked, ({ books, records }, today) =>
    Promise.resolve(onlyLooking(decideDelivery(books, asked, today, records))),
  );

/** Receives a delivery: every line becomes a lot, and leaves its order. @rule LEDGER-9 */
export const receive = (asked: ReceiveDelivery) =>
  onTheLedger(
    asked,
    ({ books, records }, today) => Promise.resolve(decideDelivery(books, asked, today, records)),
    "orders",
  );

function decideDelivery(
  books: Books,
  asked: ReceiveDelivery,
  today: Delivery["today"],
  records: Parameters<typeof receiveDelivery>[1],
) {
  const { workshop } = books;
  const refusal = refusedByWorkshop(books, asked);
  if (refusal) return refusal;
  const decided = receiveDelivery({ ...asked, today }, records, coinOf(workshop.settings.currency));
  if (decided.kind !== "posted") return decided;
  const orders = withoutReceived(workshop.orders, asked.lines);
  const onOrder = new Set(orders.flatMap(({ id, lines }) => lines.map((_line, at) => lotIdOfLine(id, at))));
  const clash = asked.lines.find(({ lot }) => onOrder.has(lot));
  if (clash) return { kind: "id of a line on order", lot: clash.lot } as const;
  const lots = [...workshop.lots, ...asked.lines.map((line) => lotOf(line, asked.day))];
  return { ...decided, books: { ...books, workshop: { ...workshop, lots, orders } } };
}

function refusedByWorkshop({ workshop }: Books, { lines }: ReceiveDelivery): DeliveryOfWorkshopRefusal | null {
  const materials = new Set(workshop.materials.map(({ id }) => id));
  for (const { material, order } of lines) {
    if (!materials.has(material)) return { kind: "no such material", material };
    if (order === null) continue;
    const line = workshop.orders.find(({ id }) => id === order.id)?.lines[order.line];
    if (line?.material !== material) return { kind: "no such line on order", order: order.id, line: order.line };
  }
  return null;
}

/** Orders without the lines that came in; an order of which nothing is left is settled. */
const withoutReceived = (orders: readonly Order[], received: readonly LineReceived[]): readonly Order[] =>
  orders.flatMap((order) => {
    const came = new Set(received.flatMap((line) => (line.order?.id === order.id ? [line.order.line] : [])));
    if (came.size === 0) return [order];
    const lines = order.lines.filter((_line, at) => !came.has(at));
    return lines.length === 0 ? [] : [{ ...order, lines }];
  });

/** What is there of it follows from the posting. */
const lotOf = ({ lot, material, expires }: LineReceived, received: Lot["received"]): Lot => ({
  id: lot,
  material,
  received,
  expires,
  remaining: quantity<Lot["remaining"]>(0n),
  value: quantity<MicroUnits>(0n),
});
