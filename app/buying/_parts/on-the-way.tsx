import Link from "next/link";
import type { ReactNode } from "react";
import { Sign } from "@/app/_ui/sign";
import { daysBetween } from "@/lib/domain/calendar";
import { costOutstanding, isAwaited, toCome } from "@/lib/domain/orders";
import type { Order } from "@/lib/domain/workshop";
import { counted } from "@/lib/edge/counted";
import { orderAddress } from "@/lib/edge/ledger-address";
import { dayShown, daysShown, stockShown } from "@/lib/edge/figures";
import type { BuyingView } from "./buying-view";
import { moneyIn } from "./buying-view";

interface Awaited {
  readonly orders: readonly Order[];
  readonly view: BuyingView;
  readonly supplierOf: (id: string) => { readonly name: string };
  readonly materialOf: (id: string) => { readonly name: string; readonly measure: "mass" | "count" };
}

/** What is still to come of the orders that were placed, and the drafts. */
export function OnTheWay({ orders: all, view, supplierOf, materialOf }: Awaited): ReactNode {
  const orders = all.filter(isAwaited);
  const drafts = all.filter(({ state }) => state === "drafted").length;
  return (
    <section className="block" aria-labelledby="on-the-way">
      <h2 id="on-the-way">On the way</h2>
      {orders.length === 0 && <p className="small soft">Nothing is on order.</p>}
      <ul className="buying-lines">
        {orders
          .toSorted((a, b) => a.due - b.due)
          .map((order) => (
            <li key={order.id}>
              <b>
                <Link href={orderAddress(order.id)}>{supplierOf(order.supplier).name}</Link>
              </b>
              <p className="small soft">
                {order.due < view.today ? "Was due" : "Due"} {dayShown(order.due, view.today)}, ordered{" "}
                {dayShown(order.placed, view.today)}.
              </p>
              {order.due < view.today && (
                <p className="small">
                  <Sign sign="pennant" tone="wrong">
                    {daysShown(daysBetween(order.due, view.today))} late
                  </Sign>
                </p>
              )}
              {order.lines.map((line, at) => {
                const { name, measure } = materialOf(line.material);
                const rest = toCome(order, line);
                if (rest === 0n) return null;
                return (
                  <p key={at} className="small">
                    {name}, {stockShown(rest, measure, "there")}, {moneyIn(view, costOutstanding(line))}
                  </p>
                );
              })}
            </li>
          ))}
      </ul>
      <p className="small">
        <Link href="/buying/orders">All orders{drafts > 0 && `, with ${counted(drafts, "draft", "drafts")}`}</Link>
      </p>
    </section>
  );
}
