import type { Metadata } from "next";
import Link from "next/link";
import { notFound, redirect } from "next/navigation";
import type { ReactNode } from "react";
import { BASES, type ProductCost } from "@/lib/domain/plan-figures";
import { countShown, moneyShown } from "@/lib/edge/figures";
import { Choice } from "@/app/_ui/choice";
import { Opening } from "@/app/_ui/finding";
import { planForPage } from "../../plan-for-page";
import { BASIS_WORDS, basisOf, productIdOf, productPath, type Query, withBasis } from "../_parts/basis";
import { CostJar } from "../_parts/cost-jar";
import { type CostView, costView } from "../_parts/cost-view";
import { MadeUp } from "../_parts/made-up";
import { PriceSlips } from "../_parts/price-slips";
import { onePriced } from "../_parts/priced";
import { ProductFinding } from "../_parts/product-finding";
import { WantedMargin } from "../_parts/wanted-margin";

interface Asked {
  readonly params: Promise<{ readonly product: string }>;
  readonly searchParams: Promise<Query>;
}

/** The product that the address names, or null. */
async function askedFor(params: Asked["params"]): Promise<ProductCost | null> {
  const planned = await planForPage();
  if (planned === null) redirect("/");
  const id = productIdOf((await params).product);
  return planned.plan.costs.find(({ product }) => product.id === id) ?? null;
}

export async function generateMetadata({ params }: Asked): Promise<Metadata> {
  const asked = await askedFor(params);
  return { title: asked ? `What one ${asked.product.name} costs` : "No such product" };
}

export default async function ProductPage({ params, searchParams }: Asked): Promise<ReactNode> {
  const asked = await askedFor(params);
  const planned = await planForPage();
  if (asked === null || planned === null) notFound();
  const query = await searchParams;
  const view = costView(planned.workshop, asked, basisOf(query), planned.today);
  const priced = onePriced(asked, view.basis, view.settings);
  const wanted = typeof query.margin === "string" ? query.margin.trim() : null;
  const { perUnit } = view.cost;
  return (
    <>
      <Opening
        crumb={<Crumb view={view} />}
        title={view.product.name}
        beside={<BasisChoice asked={asked} view={view} wanted={wanted} />}
      >
        <ProductFinding priced={priced} settings={view.settings} />
      </Opening>
      <div className="two-columns">
        <section aria-labelledby="made-up">
          <h2 id="made-up">
            {perUnit ? `How ${moneyShown(perUnit, view.currency)} is made up` : "What it is made up of"}
          </h2>
          <MadeUp view={view} />
          <p className="label foot">
            Priced for a usual run of {countShown(view.product.usualRun)}. Each figure is rounded once from the exact
            one, so the rows may differ from their total in the last digit. Costs are without tax that is reclaimed, and
            prices to buy at are without freight.
          </p>
        </section>
        <div className="beside">
          <CostJar view={view} />
          <section className="block" aria-labelledby="kept">
            <h2 id="kept">What is kept of the price</h2>
            <PriceSlips priced={priced} settings={view.settings} />
            <WantedMargin view={view} typed={wanted} />
          </section>
        </div>
      </div>
    </>
  );
}

function Crumb({ view: { basis, formula, product } }: { readonly view: CostView }): ReactNode {
  return (
    <>
      <Link href={withBasis("/cost", basis)}>All products</Link> · formula {formula.name}, usual run of{" "}
      {countShown(product.usualRun)}
    </>
  );
}

function BasisChoice({
  asked: { byBasis },
  view,
  wanted,
}: {
  readonly asked: ProductCost;
  readonly view: CostView;
  readonly wanted: string | null;
}): ReactNode {
  return (
    <Choice
      name="Ingredient and packaging prices"
      options={BASES.map((basis) => {
        const { perUnit } = byBasis[basis];
        return {
          href: withBasis(productPath(view.product.id), basis, wanted),
          label: `${BASIS_WORDS[basis]}, ${perUnit ? moneyShown(perUnit, view.currency) : "not known"}`,
          chosen: basis === view.basis,
        };
      })}
    />
  );
}
