import Link from "next/link";
import type { ReactNode } from "react";
import { draftTheOrder } from "@/app/buying/actions";
import { MakeIt } from "@/app/_ui/make-it";
import { Press } from "@/app/_ui/press";
import { Sign } from "@/app/_ui/sign";
import { type Day, daysBetween } from "@/lib/domain/calendar";
import type { PlannedOrder } from "@/lib/domain/buying/basket-of-plan";
import { toCome } from "@/lib/domain/orders";
import type { MaterialOutlook } from "@/lib/domain/plan-figures";
import type { Order } from "@/lib/domain/workshop";
import { newOfferAddress } from "@/lib/edge/book-address";
import { counted, inARow } from "@/lib/edge/counted";
import { amountShown, countShown, dayShown, daysShown, moneyShown, stockShown } from "@/lib/edge/figures";
import { NO_BREAK } from "@/lib/edge/shown-digits";
import { orderFields } from "@/lib/edge/forms/order-form";
import { orderAddress, orderOfBasketAddress, receiveAddress } from "@/lib/edge/ledger-address";
import { materialAddress } from "@/lib/edge/material-address";
import { shortAmount } from "@/lib/edge/ribbon-sentence";
import { whose } from "@/lib/edge/whose";
import { planInsteadAddress } from "@/lib/edge/run-instead-words";
import { Docket, Strip } from "./docket";
import type { Today } from "./today";

interface OfMaterial {
  readonly outlook: MaterialOutlook;
  readonly of: Today;
  /** Whether the supplier's order stands in an earlier docket. */
  readonly again?: boolean;
}

/** A material to order: by when, what is there, when an order would come, and the supplier's whole order. */
export function OrderDocket({ outlook, of, again = false }: OfMaterial): ReactNode {
  const { material, orderBy, daysLate, firstArrival } = outlook;
  if (orderBy === null) return null;
  const order = orderFor(of, material.id);
  return (
    <Docket
      href={materialAddress(material.id)}
      name={material.name}
      sign={<OrderSign orderBy={orderBy} daysLate={daysLate ?? 0} today={of.today} />}
      strip={<Strip outlook={outlook} of={of} />}
      act={<OrderIt outlook={outlook} of={of} again={again} />}
    >
      {leftWords(outlook, of.today)}. Ordered today, the earliest comes {dayShown(firstArrival, of.today)}.{" "}
      {order !== undefined && !again && (
        <Link href={orderOfBasketAddress(order.supplier.id)} prefetch={false}>
          What is on {whose(order.supplier.name)} order
        </Link>
      )}
    </Docket>
  );
}

/** A material that is lacking and that nobody offers: made here, or an offer is to be found. */
export function NotOfferedDocket({ outlook, of }: OfMaterial): ReactNode {
  const { material, toBuy } = outlook;
  const instead = of.matters.instead.get(material.id);
  return (
    <Docket
      href={materialAddress(material.id)}
      name={material.name}
      sign={
        instead === undefined ? (
          <Sign sign="box" tone="wrong">
            no offer
          </Sign>
        ) : (
          <Sign sign="notch" tone="open">
            make it
          </Sign>
        )
      }
      strip={<Strip outlook={outlook} of={of} />}
      act={
        instead === undefined ? (
          <Link className="button" href={newOfferAddress(material.id)} prefetch={false}>
            Enter an offer of it
          </Link>
        ) : (
          instead.units > 0n && (
            <Link className="button" href={planInsteadAddress(instead)} prefetch={false}>
              Plan {countShown(instead.units)} {instead.units === 1n ? "unit" : "units"} of it
            </Link>
          )
        )
      }
    >
      {leftWords(outlook, of.today)}. {instead === undefined ? "Buy" : "Make"}{" "}
      {stockShown(toBuy, material.measure, "lacking")}.{" "}
      {instead === undefined ? "No supplier offers it." : <MakeIt instead={instead} today={of.today} />}
    </Docket>
  );
}

/** `820 g left; below the safety stock from Tue 13 Oct` */
function leftWords(outlook: MaterialOutlook, today: Day): string {
  const { material, onHand, shortOn, belowSafetyOn } = outlook;
  const left = `${stockShown(onHand, material.measure, "there")} left`;
  if (shortOn !== null)
    return `${left}; short by ${stockShown(shortAmount(outlook), material.measure, "lacking")} ${shortOn <= today ? "already" : `on ${dayShown(shortOn, today)}`}`;
  return belowSafetyOn === null || belowSafetyOn <= today
    ? `${left}, below the safety stock`
    : `${left}; below the safety stock from ${dayShown(belowSafetyOn, today)}`;
}

function OrderSign({
  orderBy,
  daysLate,
  today,
}: {
  readonly orderBy: Day;
  readonly daysLate: number;
  readonly today: Day;
}): ReactNode {
  return daysLate > 0 ? (
    <Sign sign="pennant" tone="wrong">
      {daysShown(daysLate)} late
    </Sign>
  ) : (
    <Sign sign="notch" tone="open">
      {orderBy === today ? "last day" : `by ${dayShown(orderBy, today)}`}
    </Sign>
  );
}

/** The order of the basket that brings the material. */
export const orderFor = ({ basket }: Pick<Today, "basket">, material: string): PlannedOrder | undefined =>
  basket?.orders.find(({ lines }) => lines.some((line) => line.material.id === material));

/** A supplier's whole order is drafted at once, since its minimum and its delivery are the order's, not the material's. */
function OrderIt({ outlook, of, again = false }: OfMaterial): ReactNode {
  const { workshop, today } = of;
  const { material } = outlook;
  const draft = workshop.orders.find(
    (order) => order.state === "drafted" && order.lines.some((line) => line.material === material.id),
  );
  if (draft !== undefined)
    return (
      <Link className="button" href={orderAddress(draft.id)} prefetch={false}>
        Go on with the draft of {dayShown(draft.placed, today)}
      </Link>
    );
  const order = orderFor(of, material.id);
  if (order === undefined)
    return (
      <Link className="button" href="/buying" prefetch={false}>
        See what to buy
      </Link>
    );
  if (again) {
    const packs = order.lines
      .filter((line) => line.material.id === material.id)
      .map((line) => `${countShown(line.packs)}${NO_BREAK}×${NO_BREAK}${amountShown(line.offer.pack.typed)}`);
    return (
      <Link className="button plain" href={orderOfBasketAddress(order.supplier.id)} prefetch={false}>
        {inARow(packs)} on {whose(order.supplier.name)} order
      </Link>
    );
  }
  const [line] = order.lines;
  if (line === undefined) throw new Error("an order without a line");
  return (
    <Press
      act={draftTheOrder}
      carried={{
        ...orderFields(order, {
          newId: of.newOrderId(order.supplier.id),
          today,
          due: line.arrives,
          orders: workshop.orders,
        }),
        state: "drafted",
        frame: "",
      }}
    >
      Draft {whose(order.supplier.name)} order, {moneyShown(order.total, workshop.settings.currency)}
    </Press>
  );
}

/** An order that should be here. */
export function DueDocket({ order, of }: { readonly order: Order; readonly of: Today }): ReactNode {
  const { workshop, today } = of;
  const supplier = workshop.suppliers.find(({ id }) => id === order.supplier)?.name ?? order.supplier;
  const awaited = order.lines.filter((line) => toCome(order, line) > 0n);
  const wanted = new Set(awaited.map(({ material }) => material));
  const names = workshop.materials.filter(({ id }) => wanted.has(id)).map(({ name }) => name);
  const late = daysBetween(order.due, today);
  return (
    <Docket
      href={orderAddress(order.id)}
      name={`Order from ${supplier}`}
      sign={
        late > 0 ? (
          <Sign sign="pennant" tone="wrong">
            due {daysShown(late)} ago
          </Sign>
        ) : (
          <Sign sign="ring" tone="open">
            due today
          </Sign>
        )
      }
      act={
        <Link className="button" href={receiveAddress(order.id)} prefetch={false}>
          Receive {counted(awaited.length, "line", "lines")}
          <span className="unseen"> from {supplier}</span>
        </Link>
      }
    >
      Ordered {dayShown(order.placed, today)}: {inARow(names.slice(0, MOST_NAMED))}
      {names.length > MOST_NAMED && ` and ${counted(names.length - MOST_NAMED, "more", "more")}`}.
    </Docket>
  );
}

const MOST_NAMED = 3;
