/** The basket as the report prints it. @rule REPORT-1, MONEY-4 */
import type { PlannedBasket, PlannedLine, PlannedOrder } from "@/lib/domain/buying/basket-of-plan";
import { isoDate } from "@/lib/domain/calendar";
import { byCodePoint } from "@/lib/domain/code-point-order";
import { whole } from "@/lib/domain/fraction";
import { decimalsOf, type MicroUnits } from "@/lib/domain/money";
import type { Workshop } from "@/lib/domain/workshop";
import type { FaultList } from "./fault-list";
import { type Figures, figures } from "./report-figures";
import type { BasketLineRow, BasketOrderRow, BasketRow } from "./report-rows";
import { quoted } from "./shown-value";

/** Orders by supplier id, their lines by offer id, what nobody offers in the workshop's order. */
export function basketRow(workshop: Workshop, basket: PlannedBasket, faults: FaultList): BasketRow {
  const decimals = decimalsOf(workshop.settings.currency);
  const placeOf = new Map(workshop.suppliers.map(({ id }, place) => [id, place]));
  const ofAll = figures("basket", { id: "basket" }, faults);
  const money = (print: Figures) => (figure: string, amount: MicroUnits) =>
    print.money(figure, whole(amount), decimals);
  return {
    total: money(ofAll)("the total", basket.total),
    optimal: basket.gap === null,
    gap: basket.gap === null ? null : money(ofAll)("what is not proven", basket.gap),
    unsourced: basket.unsourced.map(({ id }) => id),
    orders: [...basket.orders]
      .sort((a, b) => byCodePoint(a.supplier.id, b.supplier.id))
      .map((order) => {
        const path = `suppliers[${String(placeOf.get(order.supplier.id) ?? 0)}]`;
        const print = figures(path, order.supplier, faults);
        return orderRow(order, money(print), print);
      }),
  };
}

function orderRow(
  { supplier, goods, shipping, total, lines }: PlannedOrder,
  money: (figure: string, amount: MicroUnits) => string,
  print: Figures,
): BasketOrderRow {
  const inOrder = [...lines].sort((a, b) => byCodePoint(a.offer.id, b.offer.id));
  return {
    supplier: supplier.id,
    goods: money("the goods of its order", goods),
    shipping: money("the shipping of its order", shipping),
    total: money("the total of its order", total),
    lines: inOrder.map((line) => lineRow(line, money, print)),
  };
}

function lineRow(
  { offer, packs, cost, arrives, late }: PlannedLine,
  money: (figure: string, amount: MicroUnits) => string,
  print: Figures,
): BasketLineRow {
  return {
    offer: offer.id,
    packs: print.units(`the packs of offer ${quoted(offer.id)}`, packs),
    cost: money(`the cost of offer ${quoted(offer.id)}`, cost),
    arrives: isoDate(arrives),
    late,
  };
}
