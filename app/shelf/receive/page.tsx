import type { Metadata } from "next";
import Link from "next/link";
import { redirect } from "next/navigation";
import type { ReactNode } from "react";
import { joined } from "@/app/_ui/either";
import { Opening } from "@/app/_ui/finding";
import { FirstDeed } from "@/app/_ui/first-deed";
import { newId } from "@/app/_ui/new-id";
import { RecordForm } from "@/app/_ui/record-form";
import { planForPage } from "@/app/plan-for-page";
import { isoDate } from "@/lib/domain/calendar";
import { isAwaited } from "@/lib/domain/orders";
import type { Order, Workshop } from "@/lib/domain/workshop";
import { inWordsFirst } from "@/lib/edge/counted";
import { currencySign, dayShown } from "@/lib/edge/figures";
import { DELIVERY_FORM, valuesOfOrder } from "@/lib/edge/forms/delivery-form";
import { receiveAddress } from "@/lib/edge/ledger-address";
import { ShelfCrumb } from "../_parts/shelf-crumb";
import { deliveryChoices } from "../_parts/delivery-choices";
import { receiveDelivery } from "./actions";
import "../shelf.css";

export const metadata: Metadata = { title: "Receive a delivery" };

type Search = Promise<Readonly<Record<string, string | readonly string[] | undefined>>>;

/** Packs that came in become lots, with what they cost in the end; against an open order where there is one. */
export default async function ReceivePage({ searchParams }: { readonly searchParams: Search }): Promise<ReactNode> {
  const [found, asked] = await Promise.all([planForPage(), searchParams]);
  if (!found) redirect("/");
  const { workshop, desk, today } = found;
  const order = workshop.orders.find((each) => each.id === asked.order && isAwaited(each)) ?? null;
  const given = {
    id: newId(),
    day: isoDate(today),
    deliveryBy: "value",
    dutyBy: "value",
    ...(order && valuesOfOrder(workshop, order)),
  };
  return (
    <>
      <Opening crumb={<ShelfCrumb />} title="Receive a delivery">
        {workshop.materials.length === 0 ? (
          "What comes in is of a material, and there are none yet. Add the first, and receive it here."
        ) : (
          <WhatCame workshop={workshop} chosen={order} today={today} />
        )}
      </Opening>
      {order === null && <OpenOrders workshop={workshop} today={today} />}
      {workshop.materials.length === 0 ? (
        <FirstDeed href="/book/materials/new">Add a material</FirstDeed>
      ) : (
        <div className="receive-form">
          <RecordForm
            key={order?.id ?? ""}
            fields={DELIVERY_FORM}
            values={joined(given, DELIVERY_FORM)}
            choices={deliveryChoices(workshop, desk)}
            money={currencySign(workshop.settings.currency)}
            seen=""
            send={receiveDelivery}
            buttons={[
              { deed: "look", label: "Show what each line costs" },
              { deed: "post", label: "Receive it" },
            ]}
          />
        </div>
      )}
    </>
  );
}

interface Orders {
  readonly workshop: Workshop;
  readonly chosen: Order | null;
  readonly today: Parameters<typeof dayShown>[1];
}

const nameIn =
  ({ suppliers }: Workshop) =>
  (supplier: string): string =>
    suppliers.find(({ id }) => id === supplier)?.name ?? supplier;

/** Which order has come, or how many it may have been. */
function WhatCame({ workshop, chosen, today }: Orders): ReactNode {
  const orders = workshop.orders.filter(isAwaited);
  const nameOf = nameIn(workshop);
  if (chosen !== null)
    return (
      <>
        The order from <b>{nameOf(chosen.supplier)}</b>, due {dayShown(chosen.due, today)}: write the lot numbers and
        what was really paid, and take out what did not come. Each line becomes a lot of its own.
      </>
    );
  if (orders.length === 0) return <>Nothing is on order; write down what came. Each line becomes a lot of its own.</>;
  return (
    <>
      {inWordsFirst(orders.length)} {orders.length === 1 ? "order is" : "orders are"} open. Choose the one that came, or
      write down what did: each line becomes a lot of its own.
    </>
  );
}

/** Those that may have come, soonest due first. */
function OpenOrders({ workshop, today }: Omit<Orders, "chosen">): ReactNode {
  const orders = workshop.orders.filter(isAwaited).toSorted((a, b) => a.due - b.due);
  if (orders.length === 0) return null;
  const nameOf = nameIn(workshop);
  return (
    <ul className="open-orders" aria-label="Orders that may have come">
      {orders.map(({ id, supplier, due }) => (
        <li key={id}>
          <Link href={receiveAddress(id)}>
            {nameOf(supplier)}, due {dayShown(due, today)}
          </Link>
        </li>
      ))}
    </ul>
  );
}
