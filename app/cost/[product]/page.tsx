import type { Metadata } from "next";
import Link from "next/link";
import { notFound, redirect } from "next/navigation";
import type { ReactNode } from "react";
import { BASES, type ProductCost } from "@/lib/domain/plan-figures";
import { countShown, moneyShown } from "@/lib/edge/figures";
import { Choice } from "@/app/_ui/choice";
import { Opening } from "@/app/_ui/finding";
import { planForPage } from "../../plan-for-page";
import { setPrices } from "../actions";
import { figuresBefore } from "../figures-before";
import { type Asked, askedOf, BASIS_WORDS, productAddress, productIdOf, type Query, withBasis } from "../_parts/basis";
import { CostJar } from "../_parts/cost-jar";
import { type CostView, costView } from "../_parts/cost-view";
import { MadeUp } from "../_parts/made-up";
import { PaysAMonth } from "../_parts/pays-a-month";
import { PriceForm } from "../_parts/price-form";
import { onePriced, type Priced } from "../_parts/priced";
import { ProductFinding } from "../_parts/product-finding";
import type { Prices } from "../_parts/sold";
import { SwaySection } from "../_parts/sway-section";
import { WantedMargin } from "../_parts/wanted-margin";

interface Addressed {
  readonly params: Promise<{ readonly product: string }>;
  readonly searchParams: Promise<Query>;
}

/** The product that the address names, or null. */
async function addressed(params: Addressed["params"]): Promise<ProductCost | null> {
  const planned = await planForPage();
  if (planned === null) redirect("/");
  const id = productIdOf((await params).product);
  return planned.plan.costs.find(({ product }) => product.id === id) ?? null;
}

export async function generateMetadata({ params }: Addressed): Promise<Metadata> {
  const cost = await addressed(params);
  return { title: cost ? `What one ${cost.product.name} costs` : "No such product" };
}

export default async function ProductPage({ params, searchParams }: Addressed): Promise<ReactNode> {
  const cost = await addressed(params);
  const planned = await planForPage();
  if (cost === null || planned === null) notFound();
  const asked = askedOf(await searchParams);
  const view = costView(planned.workshop, cost, asked.basis, planned.today);
  const before = figuresBefore(view.settings, planned.plan.costs)(view.product.id, view.basis);
  return (
    <>
      <Opening
        crumb={<Crumb view={view} />}
        title={view.product.name}
        beside={<BasisChoice cost={cost} view={view} asked={asked} />}
      >
        <ProductFinding priced={onePriced(cost, view.basis, view.settings)} settings={view.settings} />
      </Opening>
      <div className="two-columns product">
        <MadeUpSection view={view} before={before} />
        <div className="beside">
          <CostJar view={view} />
          <PriceSection view={view} asked={asked} before={before} />
        </div>
        <SwaySection view={view} asked={asked} />
      </div>
    </>
  );
}

interface Shown {
  readonly view: CostView;
  /** As the page showed it before the last change; null where nothing has changed. */
  readonly before: Priced | null;
}

function MadeUpSection({ view, before }: Shown): ReactNode {
  const { perUnit } = view.cost;
  return (
    <section aria-labelledby="made-up">
      <h2 id="made-up">{perUnit ? `How ${moneyShown(perUnit, view.currency)} is made up` : "What it is made up of"}</h2>
      <MadeUp view={view} before={before?.cost.perUnit ?? null} />
      <p className="label foot">
        Priced for a usual run of {countShown(view.product.usualRun)}. Each figure is rounded once from the exact one,
        so the rows may differ from their total in the last digit. Costs are without tax that is reclaimed, and prices
        to buy at are without delivery.
      </p>
    </section>
  );
}

function PriceSection({ view, asked, before }: Shown & { readonly asked: Asked }): ReactNode {
  const { product, cost, settings } = view;
  const { currency, tax, paymentFee, paymentFeeFixed } = settings;
  return (
    <section className="block" aria-labelledby="price">
      <h2 id="price">Set the price</h2>
      <PriceForm
        now={{ prices: pricesOf(product), perUnit: cost.perUnit }}
        before={before && { prices: pricesOf(before.product), perUnit: before.cost.perUnit }}
        settings={{ currency, tax, paymentFee, paymentFeeFixed }}
        send={setPrices.bind(null, product.id, currency)}
      />
      <WantedMargin view={view} asked={asked} />
      <PaysAMonth view={view} asked={asked} />
    </section>
  );
}

const pricesOf = ({ priceToShops, priceToCustomers }: Prices): Prices => ({ priceToShops, priceToCustomers });

function Crumb({ view: { basis, formula, product } }: { readonly view: CostView }): ReactNode {
  return (
    <>
      <Link href={withBasis("/cost", basis)}>All products</Link> · formula {formula.name}, usual run of{" "}
      {countShown(product.usualRun)}
    </>
  );
}

function BasisChoice({
  cost: { byBasis },
  view,
  asked,
}: {
  readonly cost: ProductCost;
  readonly view: CostView;
  readonly asked: Asked;
}): ReactNode {
  return (
    <Choice
      name="Ingredient and packaging prices"
      options={BASES.map((basis) => {
        const { perUnit } = byBasis[basis];
        return {
          href: productAddress(view.product.id, { ...asked, basis }),
          label: `${BASIS_WORDS[basis]}, ${perUnit ? moneyShown(perUnit, view.currency) : "not known"}`,
          chosen: basis === view.basis,
        };
      })}
    />
  );
}
