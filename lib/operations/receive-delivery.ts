import { lotIdOfLine } from "@/lib/domain/arrivals";
import { openUnder } from "@/lib/domain/bench/codes";
import type { Books } from "@/lib/domain/desk";
import { type Delivery, type DeliveryLine, receiveDelivery } from "@/lib/domain/ledger/receive-delivery";
import type { Receipt } from "@/lib/domain/ledger/receipt";
import { coinOf, type MicroUnits } from "@/lib/domain/money";
import { toCome } from "@/lib/domain/orders";
import { larger, quantity, type Stock, sum } from "@/lib/domain/quantity";
import type { Lot, Order } from "@/lib/domain/workshop";
import { type Asked, onlyLooking, onTheLedger } from "./on-the-ledger";

const NOTHING = quantity<Stock>(0n);

export interface ReceiveDelivery extends Asked, Pick<Delivery, "note" | "extras"> {
  /** Who sent it, where that was said. */
  readonly supplier: string | null;
  readonly lines: readonly LineReceived[];
}

export interface LineReceived extends DeliveryLine {
  readonly offer: string | null;
  /** The line on order that it settles, counted from 0, or null. */
  readonly order: { readonly id: string; readonly line: number } | null;
}

export type DeliveryOfWorkshopRefusal =
  | { readonly kind: "no such material"; readonly material: string }
  /** It was received or changed meanwhile. */
  | { readonly kind: "no such line on order"; readonly order: string; readonly line: number }
  /** A line that is still on order will come in under this id. @rule FILE-3 */
  | { readonly kind: "id of a line on order"; readonly lot: string }
  /** What comes out of a batch that is open will have it. @rule BENCH-10 */
  | { readonly kind: "code of a batch"; readonly lot: string };

/** What a delivery would come to, without receiving it. @rule LEDGER-9 */
export const lookAtDelivery = (asked: ReceiveDelivery) =>
  onTheLedger(asked, ({ books, records }, today) =>
    Promise.resolve(onlyLooking(decideDelivery(books, asked, today, records))),
  );

/** Receives a delivery: every line becomes a lot, and is counted on its order. @rule LEDGER-9, ORDER-2, ORDER-5 */
export const receive = (asked: ReceiveDelivery) =>
  onTheLedger(asked, ({ books, records }, today) => Promise.resolve(decideDelivery(books, asked, today, records)));

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
  const orders = withReceived(workshop.orders, asked.lines);
  const onOrder = new Set(
    orders.flatMap((order) =>
      order.lines.map((line, at) => (toCome(order, line) > 0n ? lotIdOfLine(order.id, at) : "")),
    ),
  );
  const clash = asked.lines.find(({ lot }) => onOrder.has(lot));
  if (clash) return { kind: "id of a line on order", lot: clash.lot } as const;
  const lots = [...workshop.lots, ...asked.lines.map((line) => lotOf(line, asked.day))];
  const receipts = asked.lines.map((line) => receiptOf(asked, line));
  return { ...decided, receipts, books: { ...books, workshop: { ...workshop, lots, orders } } };
}

function refusedByWorkshop({ workshop, desk }: Books, { lines }: ReceiveDelivery): DeliveryOfWorkshopRefusal | null {
  const materials = new Set(workshop.materials.map(({ id }) => id));
  for (const { lot, material, order } of lines) {
    if (openUnder(desk, lot) !== null) return { kind: "code of a batch", lot };
    if (!materials.has(material)) return { kind: "no such material", material };
    if (order === null) continue;
    const placed = workshop.orders.find(({ id }) => id === order.id);
    const line = placed?.lines[order.line];
    if (placed === undefined || line?.material !== material || toCome(placed, line) === 0n)
      return { kind: "no such line on order", order: order.id, line: order.line };
  }
  return null;
}

/** Orders with what came counted on their lines; a line of which less came than was ordered awaits the rest. @rule ORDER-2 */
export const withReceived = (
  orders: readonly Order[],
  came: readonly Pick<LineReceived, "order" | "quantity">[],
): readonly Order[] =>
  orders.map((order) => {
    const own = came.filter((line) => line.order?.id === order.id);
    if (own.length === 0) return order;
    const lines = order.lines.map((line, at) =>
      own
        .filter((each) => each.order?.line === at)
        .reduce(
          (counted, each) => ({ ...counted, received: larger(NOTHING, sum(counted.received, each.quantity)) }),
          line,
        ),
    );
    return { ...order, lines };
  });

const receiptOf = ({ key, supplier }: ReceiveDelivery, { lot, offer, order, packs, paid }: LineReceived): Receipt => ({
  lot,
  posting: key,
  supplier,
  offer,
  order,
  packs,
  paid,
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
