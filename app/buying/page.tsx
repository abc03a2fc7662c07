import type { Metadata } from "next";
import Link from "next/link";
import { redirect } from "next/navigation";
import { randomUUID } from "node:crypto";
import type { ReactNode } from "react";
import { Opening } from "@/app/_ui/finding";
import { FirstDeed } from "@/app/_ui/first-deed";
import { differenceOf } from "@/lib/domain/buying/basket-difference";
import { byId } from "@/lib/domain/index-by-id";
import { runsInstead } from "@/lib/domain/run-instead";
import { clockShown } from "@/lib/edge/clock-shown";
import { addressWithoutEmptyFields } from "@/lib/edge/forms/buying-frame";
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
import { SearchStrip } from "./_parts/search-strip";
import { ToMake } from "./_parts/to-make";
import { WhyWords } from "./_parts/why-words";
import { pinnableOf, viewOf } from "./view-of";
import "./buying.css";

export const metadata: Metadata = { title: "Buying" };

type Search = Promise<Readonly<Record<string, string | readonly string[] | undefined>>>;

/** What the plan lacks, and the orders that fill it for the least money. */
export default async function BuyingPage({ searchParams }: { readonly searchParams: Search }): Promise<ReactNode> {
  const parameters = await searchParams;
  const shorter = addressWithoutEmptyFields(parameters);
  if (shorter !== null) redirect(shorter);
  const buying = await buyingForPage(parameters);
  if (buying === null) redirect("/");
  const { found, reading, faults } = buying;
  const { suppliers, materials, orders, settings } = found.workshop;
  if (materials.length === 0) return <NothingYet />;
  const view = viewOf(buying);
  const supplierOf = byId("supplier", suppliers);
  const { made, unsourced } = madeOrUnsourced(buying);
  return (
    <>
      <Opening title="Buying">
        <Finding buying={buying} view={view} />
      </Opening>
      <BuyingNotice deed={deedFrom(parameters)} view={view} workshop={found.workshop} />
      <HowFar buying={buying} />
      <CannotHold view={view} faults={faults} unsourced={unsourced} supplierOf={supplierOf} />
      <ToMake made={made} view={view} />
      <FrameForm
        reading={reading}
        suppliers={suppliers}
        pinnable={pinnableOf(buying)}
        horizonDays={settings.horizonDays}
        coverDays={settings.coverDays}
        currency={settings.currency}
      />
      <div className="buying">
        <Slips buying={buying} view={view} why={typeof parameters.why === "string" ? parameters.why : ""} />
        <div className="buying-side">
          <Sum buying={buying} view={view} />
          <OnTheWay orders={orders} view={view} supplierOf={supplierOf} materialOf={byId("material", materials)} />
        </div>
      </div>
    </>
  );
}

const NothingYet = (): ReactNode => (
  <>
    <Opening title="Buying">
      Nothing to buy for yet. Write down the first product and plan a run of it: what it lacks then stands here, at the
      least cost.
    </Opening>
    <FirstDeed href="/book/first">Write down the first product</FirstDeed>
  </>
);

/** What nobody offers: made here, or not to be had. @rule AHEAD-9 */
function madeOrUnsourced({ list, found: { workshop, plan, today } }: Buying) {
  const instead = runsInstead(workshop, plan.materials, today);
  return {
    made: list.unsourced.flatMap((material) => {
      const run = instead.get(material.id);
      return run === undefined ? [] : [{ material, instead: run }];
    }),
    unsourced: list.unsourced.filter(({ id }) => !instead.has(id)),
  };
}

interface PartOf {
  readonly buying: Buying;
  readonly view: BuyingView;
}

function Finding({ buying, view }: PartOf): ReactNode {
  const { chosen, faults, waiting, found } = buying;
  const { made, unsourced } = madeOrUnsourced(buying);
  const counted = chosen && chosen.basket.total - chosen.basket.worth;
  const byHand = chosen?.byHand?.basket;
  const isNothing = [chosen?.planned.orders ?? [], made, unsourced, waiting].every((list) => list.length === 0);
  if (isNothing && chosen !== null && found.workshop.runs.length === 0)
    return (
      <>
        No run is planned, so nothing needs to be bought. <Link href="/week">Plan a run</Link>, and what it lacks stands
        here.
      </>
    );
  return (
    <BuyingFinding
      view={view}
      basket={chosen?.planned ?? null}
      saved={byHand && counted !== null ? byHand.total - byHand.worth - counted : null}
      isWorthCounted={(chosen?.basket.worth ?? 0n) > 0n}
      chosen={chosen?.chosen ?? "least"}
      cutShort={chosen?.cutShort ?? null}
      notBought={faults.filter((fault) => "material" in fault).length + unsourced.length}
      toMake={made.length}
      waiting={waiting.length}
      lastDay={found.plan.lastDay}
    />
  );
}

function HowFar({ buying: { chosen, reading } }: Pick<PartOf, "buying">): ReactNode {
  if (chosen === null) return null;
  const state = chosen.chosen === "so far" ? "going on" : chosen.cutShort;
  const from = chosen.foundAt && clockShown(chosen.foundAt, new Date());
  return state && <SearchStrip asked={reading.asked} search={chosen.search} from={from} state={state} />;
}

function Sum({ buying: { chosen }, view }: PartOf): ReactNode {
  if (chosen === null || chosen.planned.orders.length === 0) return null;
  const { planned, byHand, basket } = chosen;
  return (
    <InAll
      view={view}
      basket={planned}
      byHand={byHand?.planned ?? null}
      difference={byHand && differenceOf(planned, byHand.planned)}
      worth={basket.worth}
    />
  );
}

interface SlipsOf extends PartOf {
  /** The offer whose line was asked about. */
  readonly why: string;
}

/** The orders, and what they are for. */
async function Slips({ buying, view, why }: SlipsOf): Promise<ReactNode> {
  const { chosen, list, waiting, faults, found } = buying;
  const { plan, workshop } = found;
  const orders = chosen?.planned.orders ?? [];
  const line = orders.flatMap(({ lines }) => lines).find(({ offer }) => offer.id === why);
  const words = chosen && line && <WhyWords line={line} reason={await whyOf(line, buying, chosen)} view={view} />;
  const lacking = new Set([
    ...[...list.purchases, ...waiting].map(({ material }) => material),
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
