/** What is on the shelf and what is on its way to it. */
import { lotIdOfLine } from "@/lib/domain/arrivals";
import { type Day, isoDate } from "@/lib/domain/calendar";
import { outstanding } from "@/lib/domain/orders";
import { quantity as quantityOf, type Stock } from "@/lib/domain/quantity";
import type { Lot, Order, OrderLine } from "@/lib/domain/workshop";
import type { FaultList } from "@/lib/edge/fault-list";
import { day, id, oneOf, orElse, packs, reference } from "@/lib/edge/fields";
import { amount, money } from "@/lib/edge/figure-fields";
import type { Json } from "@/lib/edge/json-tree";
import {
  complete,
  type Entry,
  type Index,
  indexById,
  readEntries,
  records,
  referredTo,
} from "@/lib/edge/record-reading";
import { quoted } from "@/lib/edge/shown-value";
import { measured } from "./amounts";
import { material, type MaterialIndex, materialNamed, subjectOf } from "./materials";
import type { SuppliersReading } from "./suppliers";

const LOT = { id, material, received: day, expires: orElse(day, null), remaining: amount, value: money };
const ORDER = {
  id,
  supplier: reference("supplier"),
  placed: day,
  due: day,
  state: orElse(oneOf(["drafted", "ordered", "given up"]), "ordered" as const),
  lines: records,
};
const ORDER_LINE = {
  material,
  quantity: amount,
  cost: money,
  expires: orElse(day, null),
  // It may be gone since.
  offer: orElse(id, null),
  packs: orElse(packs(1), null),
  received: orElse(amount, null),
};

export interface LotsReading {
  readonly lots: readonly Lot[];
  readonly index: Index<Entry<typeof LOT>>;
}

/**
 * The lots on the shelf.
 * @param today  undefined where it could not be read; then no lot is held against it
 */
export function readLots(
  list: readonly Json[] | undefined,
  materials: MaterialIndex,
  today: Day | undefined,
  faults: FaultList,
): LotsReading {
  const entries = readEntries(list, LOT, "lots", faults);
  const index = indexById(list, entries, faults);
  const lots = entries.flatMap(({ path, fields }) => {
    const of = materialNamed(materials, fields.material, path, faults);
    const remaining = measured<Stock>(fields.remaining, subjectOf(of), 0n, `${path}.remaining`, faults)?.quantity;
    if (today !== undefined && fields.received !== undefined && fields.received > today) {
      faults.tell(
        `${path}.received`,
        `${isoDate(fields.received)} is after today (${isoDate(today)}); what has not come yet is an order`,
      );
    }
    if (remaining === 0n && fields.value !== undefined && fields.value > 0n) {
      faults.tell(`${path}.value`, "must be 0, because nothing remains of the lot");
    }
    return complete({ ...fields, remaining }) ?? [];
  });
  return { lots, index };
}

export interface OrdersReading {
  readonly orders: readonly Order[];
  readonly index: Index<Entry<typeof ORDER>>;
}

/** The open orders, each with a line at least. */
export function readOrders(
  list: readonly Json[] | undefined,
  suppliers: SuppliersReading["index"],
  materials: MaterialIndex,
  faults: FaultList,
): OrdersReading {
  const entries = readEntries(list, ORDER, "orders", faults);
  const index = indexById(list, entries, faults);
  const orders = entries.flatMap(({ path, fields }) => {
    referredTo(suppliers, "supplier", fields.supplier, `${path}.supplier`, faults);
    if (fields.lines?.length === 0) faults.tell(`${path}.lines`, "an order needs at least one line");
    const lines = fields.lines && readLines(fields.lines, fields.due, materials, `${path}.lines`, faults);
    return complete({ ...fields, lines }) ?? [];
  });
  return { orders, index };
}

const readLines = (
  list: readonly Json[],
  due: Day | undefined,
  materials: MaterialIndex,
  path: string,
  faults: FaultList,
): readonly OrderLine[] =>
  readEntries(list, ORDER_LINE, path, faults).flatMap(({ path, fields }) => {
    const of = materialNamed(materials, fields.material, path, faults);
    const quantity = measured<Stock>(fields.quantity, subjectOf(of), 1n, `${path}.quantity`, faults)?.quantity;
    if (due !== undefined && fields.expires != null && fields.expires < due) {
      faults.tell(`${path}.expires`, `${isoDate(fields.expires)} is before the order is due (${isoDate(due)})`);
    }
    const received =
      fields.received === null
        ? quantityOf<Stock>(0n)
        : measured<Stock>(fields.received, subjectOf(of), 0n, `${path}.received`, faults)?.quantity;
    return complete({ ...fields, quantity, received }) ?? [];
  });

/** What is still to come of a line comes in as the lot `order/line`, so no lot may have that id. @rule FILE-3, PLAN-3 */
export function checkLotsAgainstOrders(
  lots: LotsReading["index"],
  { index, orders }: OrdersReading,
  faults: FaultList,
): void {
  const settled = settledLines(orders);
  for (const { path, fields } of lots.byId.values()) {
    const [, order = "", line = ""] = /^(.+)\/([1-9]\d*)$/s.exec(fields.id ?? "") ?? [];
    const entry = index.byId.get(order);
    if (entry === undefined || Number(line) > (entry.fields.lines?.length ?? 0)) continue;
    if (settled.has(fields.id ?? "")) continue;
    const comesIn = `${entry.path}.lines[${String(Number(line) - 1)}] comes in under it`;
    faults.tell(`${path}.id`, `repeated id ${quoted(fields.id ?? "")}: ${comesIn}`);
  }
}

/** The lines of which nothing is to come any more. A draft may still be ordered. */
const settledLines = (orders: readonly Order[]): ReadonlySet<string> =>
  new Set(
    orders.flatMap((order) =>
      order.lines.flatMap((line, at) =>
        order.state === "given up" || outstanding(line) === 0n ? [lotIdOfLine(order.id, at)] : [],
      ),
    ),
  );
