/** An order that is kept, as it is written: in the packs of its offers, or each line as one pack. */
import { byId } from "@/lib/domain/index-by-id";
import { goodsOf, shippingOf } from "@/lib/domain/orders";
import type { Amount, DecimalText, Unit } from "@/lib/domain/quantity";
import type { Order, OrderLine, Workshop } from "@/lib/domain/workshop";
import type { WrittenLine, WrittenOrder } from "./order-text";
import { stockText } from "./written-figures";

export function writtenOrder(workshop: Workshop, order: Order): WrittenOrder {
  const supplier = byId("supplier", workshop.suppliers)(order.supplier);
  const [goods, shipping] = [goodsOf(order), shippingOf(supplier, order)];
  const lines = order.lines.map((line) => writtenLine(workshop, order, line));
  return { supplier, goods, shipping, total: goods + shipping, lines };
}

function writtenLine({ materials, offers }: Workshop, { due }: Order, line: OrderLine): WrittenLine {
  const material = byId("material", materials)(line.material);
  const packs = line.packs ?? 1n;
  const offered = offers.find(({ id }) => id === line.offer)?.pack;
  const pack =
    offered !== undefined && offered.quantity * packs === line.quantity
      ? offered.typed
      : amountIn(stockText(line.quantity % packs === 0n ? quotient(line, packs) : line.quantity, material.measure));
  const whole = line.cost % packs === 0n;
  return {
    offer: { id: line.offer ?? "", pack: { typed: pack } },
    material,
    packs,
    packPrice: whole ? line.cost / packs : line.cost,
    cost: line.cost,
    arrives: due,
  };
}

const quotient = (line: OrderLine, packs: bigint): OrderLine["quantity"] =>
  (line.quantity / packs) as OrderLine["quantity"];

/** A text of ours is a number, one space and a unit. */
function amountIn(text: string): Amount {
  const [number = "0", unit = "g"] = text.split(" ");
  return { number: number as DecimalText, unit: unit as Unit };
}
