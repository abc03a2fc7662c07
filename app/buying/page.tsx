import type { Metadata } from "next";
import { redirect } from "next/navigation";
import { randomUUID } from "node:crypto";
import type { ReactNode } from "react";
import { Opening } from "@/app/_ui/finding";
import { differenceOf } from "@/lib/domain/buying/basket-difference";
import { byId } from "@/lib/domain/index-by-id";
import { type Buying, buyingForPage, whyOf } from "./buying-for-page";
import { BuyingFinding } from "./_parts/buying-finding";
import type { BuyingView } from "./_parts/buying-view";
import { BuyingNotice } from "./_parts/buying-notice";
import { CannotHold } from "./_parts/cannot-hold";
import { deedFrom } from "./_parts/deed";
import { FrameForm } from "./_parts/frame-form";
import { InAll } from "./_parts/in-all";
import { NeedsList } from "./_parts/needs-list";
import { OnTheWay } from "./_parts/on-the-way";
import { OrderSlip } from "./_parts/order-slip";
import { OrderTools } from "./_parts/order-tools";
import { WhyWords } from "./_parts/why-words";
import "./buying.css";

export const metadata: Metadata = { title: "Buying" };

type Search = Promise<Readonly<Record<string, string | readonly string[] | undefined>>>;

/** What the plan lacks, and the orders that fill it for the least money. */
export default async function BuyingPage({ searchParams }: { readonly searchParams: Search }): Promise<ReactNode> {
  const parameters = await searchParams;
  const buying = await buyingForPage(parameters);
  if (buying === null) redirect("/");
  const { found, reading, list, faults, chosen } = buying;
  const view = viewOf(buying);
  const { planned: basket, byHand } = chosen;
  return (
    <>
      <Opening title="Buying">
        <BuyingFinding
          view={view}
          basket={basket}
          byHand={byHand.planned}
          chosen={chosen.chosen}
          cutShort={chosen.cutShort}
          notBought={faults.length + list.unsourced.length}
          lastDay={found.plan.lastDay}
        />
      </Opening>
      <BuyingNotice deed={deedFrom(parameters)} view={view} workshop={found.workshop} />
      <FrameForm
        reading={reading}
        suppliers={found.workshop.suppliers}
        horizonDays={found.workshop.settings.horizonDays}
        coverDays={found.workshop.settings.coverDays}
      />
      <CannotHold
        view={view}
        faults={faults}
        unsourced={list.unsourced}
        supplierOf={byId("supplier", found.workshop.suppliers)}
      />
      <div className="buying">
        <Slips buying={buying} view={view} why={typeof parameters.why === "string" ? parameters.why : ""} />
        <div className="buying-side">
          {basket.orders.length > 0 && (
            <InAll
              view={view}
              basket={basket}
              byHand={byHand.planned}
              difference={differenceOf(basket, byHand.planned)}
            />
          )}
          <OnTheWay
            orders={found.workshop.orders}
            view={view}
            supplierOf={byId("supplier", found.workshop.suppliers)}
            materialOf={byId("material", found.workshop.materials)}
          />
        </div>
      </div>
    </>
  );
}

function viewOf({ found, reading, list, chosen }: Buying): BuyingView {
  return {
    today: found.today,
    currency: found.workshop.settings.currency,
    asked: reading.asked,
    wanted: new Map(
      list.purchases.map(({ material, wanted, buyBy }) => [material.id, { quantity: wanted, buyBy }] as const),
    ),
    leftOver: chosen.basket.leftOver,
  };
}

interface SlipsOf {
  readonly buying: Buying;
  readonly view: BuyingView;
  /** The offer whose line was asked about. */
  readonly why: string;
}

/** The orders, and what they are for. */
async function Slips({ buying, view, why }: SlipsOf): Promise<ReactNode> {
  const { chosen, list, faults, found } = buying;
  const { plan, workshop } = found;
  const { orders } = chosen.planned;
  const line = orders.flatMap(({ lines }) => lines).find(({ offer }) => offer.id === why);
  const words = line && <WhyWords line={line} reason={await whyOf(line, buying)} view={view} />;
  const lacking = new Set([
    ...list.purchases.map(({ material }) => material),
    ...list.unsourced,
    ...faults.flatMap((fault) => ("material" in fault ? [fault.material] : [])),
  ]);
  const outlooks = plan.materials.filter(({ material }) => lacking.has(material));
  return (
    <div>
      {orders.map((order, at) => (
        <OrderSlip key={order.supplier.id} order={order} view={view} why={words ? { offer: why, words } : null}>
          <OrderTools
            order={order}
            workshop={workshop.settings.name}
            view={view}
            newId={randomUUID()}
            isFirst={at === 0}
          />
        </OrderSlip>
      ))}
      {outlooks.length > 0 && (
        <NeedsList outlooks={outlooks} productOf={byId("product", workshop.products)} view={view} />
      )}
    </div>
  );
}
