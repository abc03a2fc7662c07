import Link from "next/link";
import type { ReactNode } from "react";
import type { Order } from "@/lib/domain/workshop";
import { dayShown, stockShown } from "@/lib/edge/figures";
import type { BuyingView } from "./buying-view";
import { moneyIn } from "./buying-view";

interface Awaited {
  readonly orders: readonly Order[];
  readonly view: BuyingView;
  readonly supplierOf: (id: string) => { readonly name: string };
  readonly materialOf: (id: string) => { readonly name: string; readonly measure: "mass" | "count" };
}

/** Orders that were placed and have not come. */
export function OnTheWay({ orders, view, supplierOf, materialOf }: Awaited): ReactNode {
  return (
    <section className="block" aria-labelledby="on-the-way">
      <h2 id="on-the-way">On the way</h2>
      {orders.length === 0 && <p className="small soft">Nothing is on order.</p>}
      <ul className="buying-lines">
        {orders
          .toSorted((a, b) => a.due - b.due)
          .map((order) => (
            <li key={order.id}>
              <b>{supplierOf(order.supplier).name}</b>
              <p className="small soft">
                {order.due < view.today ? "Was due" : "Due"} {dayShown(order.due, view.today)}, ordered{" "}
                {dayShown(order.placed, view.today)}.
              </p>
              {order.lines.map(({ material, quantity, cost }, at) => {
                const { name, measure } = materialOf(material);
                return (
                  <p key={at} className="small">
                    {name}, {stockShown(quantity, measure, "there")}, {moneyIn(view, cost)}
                  </p>
                );
              })}
            </li>
          ))}
      </ul>
      <p className="small">
        <Link href="/book/orders">Change them in the book</Link>
      </p>
    </section>
  );
}
