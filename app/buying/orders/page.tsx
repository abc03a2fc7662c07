import type { Metadata } from "next";
import Link from "next/link";
import { redirect } from "next/navigation";
import type { ReactNode } from "react";
import { Opening } from "@/app/_ui/finding";
import { Ledger } from "@/app/_ui/ledger";
import { Sign } from "@/app/_ui/sign";
import { planForPage, type Planned } from "@/app/plan-for-page";
import { daysBetween } from "@/lib/domain/calendar";
import { byId } from "@/lib/domain/index-by-id";
import { goodsOf, isAwaited, progressOf, shippingOf } from "@/lib/domain/orders";
import type { Order } from "@/lib/domain/workshop";
import { counted, inWordsFirst } from "@/lib/edge/counted";
import { dayShown, daysShown, moneyShown } from "@/lib/edge/figures";
import { orderAddress } from "@/lib/edge/ledger-address";
import { isOverdue, PROGRESS_WORDS } from "@/lib/edge/order-words";
import { BuyingCrumb } from "./_parts/buying-crumb";
import "../buying.css";

export const metadata: Metadata = { title: "Orders" };

type Search = Promise<Readonly<Record<string, string | readonly string[] | undefined>>>;

const COLUMNS = [
  { name: "Supplier" },
  { name: "State" },
  { name: "Ordered", className: "not-on-phone" },
  { name: "Due" },
  { name: "In all", kind: "number" },
] as const;

/** Every order from its draft to its last delivery: what is due, what is overdue, what became of the others. */
export default async function OrdersPage({ searchParams }: { readonly searchParams: Search }): Promise<ReactNode> {
  const [found, { did }] = await Promise.all([planForPage(), searchParams]);
  if (found === null) redirect("/");
  const { orders } = found.workshop;
  const [open, past] = [orders.filter(isOpen), orders.filter((order) => !isOpen(order))];
  return (
    <>
      <Opening crumb={<BuyingCrumb />} title="Orders">
        <Finding orders={orders} found={found} />
      </Opening>
      <div role="status">
        {did === "dropped" && <p className="done">The draft is thrown away. It had changed no figure.</p>}
      </div>
      <Orders title="Drafts, and what is on the way" orders={open} found={found} />
      <Orders title="Received and given up" orders={past} found={found} />
    </>
  );
}

const isOpen = (order: Order): boolean => order.state === "drafted" || isAwaited(order);

function Finding({
  orders,
  found: { today },
}: {
  readonly orders: readonly Order[];
  readonly found: Planned;
}): ReactNode {
  if (orders.length === 0)
    return (
      <>
        Nothing was ordered yet. The <Link href="/buying">basket</Link> drafts an order for each supplier.
      </>
    );
  const [awaited, late] = [orders.filter(isAwaited), orders.filter((order) => isOverdue(order, today))];
  const latest = Math.max(...late.map(({ due }) => daysBetween(due, today)));
  const hasCome = late.some((order) => progressOf(order) === "partly received");
  const drafts = orders.filter(({ state }) => state === "drafted").length;
  return (
    <>
      {inWordsFirst(awaited.length)} {awaited.length === 1 ? "order is" : "orders are"} on the way
      {drafts > 0 && `, ${counted(drafts, "draft is", "drafts are")} not ordered yet`}.
      {late.length > 0 && (
        <span className="warn">
          {" "}
          {late.length === 1
            ? `One is ${daysShown(latest)} late: receive it, or give ${hasCome ? "up the rest" : "it up"}.`
            : `${inWordsFirst(late.length)} are late, up to ${daysShown(latest)}: receive them, or give them up.`}
        </span>
      )}
    </>
  );
}

interface Listed {
  readonly title: string;
  readonly orders: readonly Order[];
  readonly found: Planned;
}

function Orders({ title, orders, found: { workshop, today } }: Listed): ReactNode {
  if (orders.length === 0) return null;
  const supplierOf = byId("supplier", workshop.suppliers);
  return (
    <section className="block" aria-label={title}>
      <h2>{title}</h2>
      <Ledger caption={title} columns={COLUMNS}>
        {orders
          .toSorted((a, b) => Number(isOverdue(b, today)) - Number(isOverdue(a, today)) || a.due - b.due)
          .map((order) => (
            <tr key={order.id}>
              <th scope="row">
                <Link href={orderAddress(order.id)}>{supplierOf(order.supplier).name}</Link>
              </th>
              <td className="second-line">
                {isOverdue(order, today) ? (
                  <Sign sign="pennant" tone="wrong">
                    {PROGRESS_WORDS[progressOf(order)]}, {daysShown(daysBetween(order.due, today))} late
                  </Sign>
                ) : (
                  PROGRESS_WORDS[progressOf(order)]
                )}
              </td>
              <td className="not-on-phone">{order.state === "drafted" ? "not yet" : dayShown(order.placed, today)}</td>
              <td className="second-line">
                <span className="phone-only">due </span>
                {dayShown(order.due, today)}
              </td>
              <td className="number end">
                {moneyShown(goodsOf(order) + shippingOf(supplierOf(order.supplier), order), workshop.settings.currency)}
              </td>
            </tr>
          ))}
      </Ledger>
    </section>
  );
}
