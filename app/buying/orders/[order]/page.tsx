import type { Metadata } from "next";
import { notFound, redirect } from "next/navigation";
import type { ReactNode } from "react";
import { Opening } from "@/app/_ui/finding";
import { planForPage } from "@/app/plan-for-page";
import { byId } from "@/lib/domain/index-by-id";
import { goodsOf, shippingOf } from "@/lib/domain/orders";
import { idOfSegment } from "@/lib/edge/ledger-address";
import { isOverdue, orderSays } from "@/lib/edge/order-words";
import { readReceivedFor } from "@/lib/store/ledger/ledger-answers";
import { BuyingCrumb } from "../_parts/buying-crumb";
import { DraftForms } from "../_parts/draft-forms";
import { LandedNote } from "../_parts/landed-note";
import { OrderLines } from "../_parts/order-lines";
import { OrderNotice } from "../_parts/order-notice";
import { OrderPaper } from "../_parts/order-paper";
import { OrderSteps } from "../_parts/order-steps";
import type { OrderView } from "../_parts/order-view";
import { Receipts } from "../_parts/receipts";
import "../../buying.css";

export const metadata: Metadata = { title: "An order" };

interface Page {
  readonly params: Promise<{ readonly order: string }>;
  readonly searchParams: Promise<Readonly<Record<string, string | readonly string[] | undefined>>>;
}

/** One order: what stands on it, what has come, and the next thing that can be done with it. */
export default async function OrderPage({ params, searchParams }: Page): Promise<ReactNode> {
  const [found, id, { did }] = [await planForPage(), idOfSegment((await params).order), await searchParams];
  if (found === null) redirect("/");
  const { workshop, today } = found;
  const order = workshop.orders.find((each) => each.id === id);
  if (order === undefined) notFound();
  const supplier = byId("supplier", workshop.suppliers)(order.supplier);
  const [goods, shipping] = [goodsOf(order), shippingOf(supplier, order)];
  const view: OrderView = { order, supplier, workshop, today, goods, shipping };
  const received = await readReceivedFor(order.id);
  return (
    <>
      <Opening crumb={<BuyingCrumb orders />} title={`Order from ${supplier.name}`}>
        <OrderSays order={order} today={today} />
      </Opening>
      <OrderNotice did={typeof did === "string" ? did : ""} order={order} />
      <OrderLines view={view} />
      <LandedNote view={view} />
      {order.state === "drafted" && <DraftForms view={view} />}
      <OrderSteps view={view} />
      <Receipts view={view} received={received} />
      <OrderPaper view={view} />
    </>
  );
}

/** How far it is, the last sentence in madder where it should have come. */
function OrderSays({ order, today }: Pick<OrderView, "order" | "today">): ReactNode {
  const says = orderSays(order, today);
  const last = says.lastIndexOf(". ") + 1;
  if (!isOverdue(order, today)) return says;
  return (
    <>
      {says.slice(0, last)} <span className="warn">{says.slice(last).trim()}</span>
    </>
  );
}
